//! Question 3: what a crooked line costs.

use super::{Answered, plain};
use lightgap::scenario::Scenario;
use lightgap::stage::LineDesk;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// The strands that were solved last, kept while only the offset changes.
#[derive(Default)]
pub struct Desk {
    line: LineDesk,
}

impl Desk {
    /// `{curve}`, the key of a variant: what growing offsets cost it, as
    /// `{variant, free_mm, onset_mm, end_mm, samples}`. Without one: what the offset of the scenario
    /// costs, and the strand between its wheels. `null` without a drive, or where no chain can be
    /// built.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
        match member(asked, "curve").as_string() {
            Some(variant) => plain(&self.line.curve(scenario, &variant)),
            None => plain(&self.line.state(scenario)),
        }
    }
}
