//! Scenarios of a drive that the tests of many rooms stand on. Their numbers are chosen.

use super::{Scenario, Value};
use crate::chain::Dimension;
use crate::chain::sample::WORKED;

/// A drive of 44 and 16 teeth at 200 W, its wheels in line unless more is stated.
pub(crate) const POWERED: [(&str, f64); 6] = [
    ("driver_teeth", 44.0),
    ("driven_teeth", 16.0),
    ("centre_distance_mm", 440.0),
    ("watts", 200.0),
    ("turns_per_minute", 90.0),
    ("slack_n", 20.0),
];

/// A chain of these sizes in a drive of these numbers.
pub(crate) fn with(sizes: &[(Dimension, f64)], drive: &[(&str, f64)]) -> Scenario {
    let mut value =
        Value::object([("format", Value::from(1.0)), ("title", Value::text("A drive"))]);
    for (dimension, mm) in sizes {
        value.put(&format!("chain.{}", dimension.key()), Value::from(*mm));
    }
    for (key, number) in drive {
        value.put(&format!("drive.{key}"), Value::from(*number));
    }
    Scenario::read(&value).expect("a drive")
}

/// The chain of the worked figures in the drive of [`POWERED`], its wheels so far aside, mm.
pub(crate) fn aside(offset_mm: f64) -> Scenario {
    with(&WORKED, &[&POWERED[..], &[("offset_mm", offset_mm)]].concat())
}
