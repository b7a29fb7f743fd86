//! What comes from outside, tried out: each trial takes any bytes, does with them what a page or a
//! command would, and panics when a promise is broken. The fuzzers of `fuzz/` look for bytes that do;
//! `fuzzed.rs` runs the trials on the kept corpus and on seeded changes of it.

mod mutate;
mod sliders;

pub use mutate::Changer;
pub use sliders::sliders;

use crate::numbers;
use lightgap::report::Report;
use lightgap::scenario::{Scenario, Value};
use lightgap::stage::Stage;
use lightgap::table::{limits_csv, with_limits};

/// Sets drawn in a trial at most: chance costs time in proportion, and does the same in every block.
const MOST_SETS: u32 = 500;
/// Pitches between the wheels of a drive that is solved at most.
const MOST_PITCHES: f64 = 12.0;

/// A trial by the name of its target.
pub type Trial = (&'static str, fn(&[u8]));

/// Every trial.
pub const TRIALS: [Trial; 5] = [
    ("scenario", scenario),
    ("lesson", lesson),
    ("table", table),
    ("address", address),
    ("sliders", sliders),
];

/// The bytes of a scenario file: refused with faults, or read, the same when written and read again,
/// and reported in ordinary numbers.
pub fn scenario(bytes: &[u8]) {
    let Some(scenario) = read(bytes) else { return };
    assert_eq!(
        Scenario::read(&scenario.write()).as_ref(),
        Ok(&scenario),
        "it comes back as it was"
    );
    report(scenario);
}

/// The bytes of a lesson: each of its steps leads to a scenario that reports, or is refused.
pub fn lesson(bytes: &[u8]) {
    const MOST_STEPS: usize = 9;
    let Some(mut scenario) = read(bytes) else { return };
    for step in std::mem::take(&mut scenario.lesson).into_iter().take(MOST_STEPS) {
        let mut whole = scenario.write();
        step.set.iter().for_each(|(path, value)| whole.put(path, value.clone()));
        if let Ok(next) = Scenario::read(&whole) {
            report(next.clone());
            scenario = next;
        }
    }
}

/// The bytes of a table of limits, pasted over the winch's: what is taken is written and read alike.
pub fn table(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let winch = Stage::default().scenario().clone();
    match with_limits(&winch, &text) {
        Ok(taken) => {
            let written = limits_csv(&taken);
            let again = with_limits(&taken, &written).expect("its own table is read");
            assert_eq!(limits_csv(&again), written);
        }
        Err(faults) => assert!(!faults.is_empty()),
    }
}

/// The bytes of an address: each field is done on a stage as the page does it, wanted or not.
pub fn address(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let mut stage = Stage::default();
    for (key, value) in text.trim_start_matches('#').split('&').filter_map(|f| f.split_once('=')) {
        let number = value.parse::<f64>().unwrap_or(f64::NAN);
        // What is refused leaves the last good chain.
        let _ = match key {
            "on" => value.split_once('_').map_or(Ok(()), |(n, how)| stage.adopt_size(n, how)),
            "how" => stage.show(value),
            "at" => {
                stage.scrub(number);
                Ok(())
            }
            "times" => {
                stage.widen(number);
                Ok(())
            }
            "springy" => {
                stage.set_springy(value == "1");
                Ok(())
            }
            "held" => {
                stage.room_to(number, 0.5 * number);
                Ok(())
            }
            _ if key.contains('.') => stage.set(key, Value::Number(number)),
            _ => stage.set(&format!("chain.{key}"), Value::Number(number)),
        };
    }
    sliders::hold(&stage);
    report(stage.scenario().clone());
}

/// Reads a scenario; faults are some, and not without end.
fn read(bytes: &[u8]) -> Option<Scenario> {
    const MOST_FAULTS: usize = 2000;
    let value: Value = serde_json::from_slice(bytes).ok()?;
    match Scenario::read(&value) {
        Ok(scenario) => Some(scenario),
        Err(faults) => {
            assert!((1..=MOST_FAULTS).contains(&faults.len()), "{} faults", faults.len());
            None
        }
    }
}

/// Reports a scenario, its costly parts cut short: every number is ordinary.
fn report(mut scenario: Scenario) {
    if let Some(sampling) = &mut scenario.sampling {
        sampling.sets = sampling.sets.min(MOST_SETS);
    }
    let pitch_mm = scenario.chain.chain().pitch_mm;
    let long = |apart_mm: f64| apart_mm > MOST_PITCHES * pitch_mm;
    if scenario.drive.as_ref().is_some_and(|drive| long(drive.wheels.centre_distance_mm)) {
        scenario.drive = None;
    }
    if !scenario.demands.is_empty() && scenario.sampling.is_none() {
        scenario.demands.clear();
    }
    for (path, number) in numbers(&Report::of(&scenario)) {
        let ordinary = number.is_finite() && (number != 0.0 || number.is_sign_positive());
        assert!(ordinary, "{path} is {number}");
    }
}
