use super::*;
use crate::scenario::Value;

/// A chain of half an inch in a drive of 44 and 16 teeth.
fn scenario(offset_mm: f64) -> Scenario {
    let mut value =
        Value::object([("format", Value::from(1.0)), ("title", Value::text("A drive"))]);
    let sizes = [
        ("pitch", 12.7),
        ("roller_diameter", 7.75),
        ("inner_width", 3.0),
        ("inner_plate", 1.0),
        ("pin_diameter", 3.6),
        ("bore", 3.63),
        ("outer_spacing", 5.4),
    ];
    sizes.iter().for_each(|(key, mm)| value.put(&format!("chain.{key}_mm"), Value::from(*mm)));
    let drive = [
        ("driver_teeth", 44.0),
        ("driven_teeth", 16.0),
        ("centre_distance_mm", 440.0),
        ("watts", 200.0),
        ("turns_per_minute", 90.0),
        ("slack_n", 20.0),
        ("offset_mm", offset_mm),
    ];
    drive.iter().for_each(|(key, number)| value.put(&format!("drive.{key}"), Value::from(*number)));
    Scenario::read(&value).expect("a drive")
}

#[test]
fn power_and_slack_make_the_tight_pull() {
    let line = ChainLine::of(&scenario(0.0)).expect("it goes together");
    assert!((line.running.tight_n - 258.6).abs() < 0.05, "{}", line.running.tight_n);
    assert_eq!(line.joints(), 34);
}

#[test]
fn the_teeth_take_up_the_first_of_an_offset() {
    const ROUNDING: f64 = 1e-12;
    let line = ChainLine::of(&scenario(0.0)).expect("it goes together");
    let float_mm = 0.07 * 3.0;
    assert!((line.float_mm() - float_mm).abs() < ROUNDING);
    assert!((line.free_mm() - (34.0 * 0.2 + float_mm)).abs() < ROUNDING);
    assert!(line.strand_offset_mm(float_mm).abs() < ROUNDING);
    assert!((line.strand_offset_mm(-5.0) + (5.0 - float_mm)).abs() < ROUNDING);
}

#[test]
fn a_chain_that_does_not_go_together_has_no_drive() {
    let stiff = scenario(0.0).with("chain.bore_mm", Value::from(3.59)).expect("it can be drawn");
    assert_eq!(ChainLine::of(&stiff), None);
}
