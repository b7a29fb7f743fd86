//! A chain of one's own by caliper.

use super::{Answered, plain};
use lightgap::caliper::{Measured, Reading};
use lightgap::chain::Construction;
use lightgap::error::{Error, Rule};
use lightgap::picture::{CaliperState, readings_of};
use lightgap::scenario::Scenario;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// Pitches between the two rollers, and what a reading may be off, where nothing is said.
const PITCHES: f64 = 10.0;
const DOUBT_MM: f64 = 0.02;

/// `{readings, pitches, doubt_mm, construction, focus, width_px}`: the chain of eight readings, mm,
/// and the picture of the one in focus; faults by the keys of the readings. Without readings: those
/// that the scenario's own chain would give.
pub fn answer(scenario: &Scenario, asked: &JsValue) -> Answered {
    let number = |of: &JsValue, key: &str| member(of, key).as_f64();
    let pitches = number(asked, "pitches").unwrap_or(PITCHES);
    let doubt_mm = number(asked, "doubt_mm").unwrap_or(DOUBT_MM);
    let readings = member(asked, "readings");
    if !readings.is_object() {
        let like = Measured::like(scenario.chain.chain(), pitches, doubt_mm);
        return plain(&readings_of(&like));
    }
    let word = member(asked, "construction").as_string().unwrap_or_default();
    let unknown = || vec![Error::text("construction", &word, Rule::UnknownKey)];
    let measured = Measured {
        construction: Construction::of_key(&word).ok_or_else(unknown)?,
        readings_mm: Reading::ALL
            .map(|reading| number(&readings, reading.key()).unwrap_or(f64::NAN)),
        pitches,
        doubt_mm,
    };
    let focus = member(asked, "focus").as_string().and_then(|key| Reading::of_key(&key));
    let width_px = number(asked, "width_px").unwrap_or(0.0).clamp(160.0, 2000.0);
    plain(&CaliperState::of(&measured.chain()?, focus, width_px))
}
