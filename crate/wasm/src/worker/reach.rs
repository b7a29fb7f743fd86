//! Question 6: what can get in.

use super::{Answered, plain};
use lightgap::scenario::Scenario;
use lightgap::stage::EnterDesk;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// The pitch that was flexed last.
#[derive(Default)]
pub struct Desk {
    joint: EnterDesk,
}

impl Desk {
    /// `{share}`: how far the pitch is turned, the stop at 1 and -1. `null` where nothing is to get in,
    /// or the chain does not go together.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
        let share = member(asked, "share").as_f64().unwrap_or(0.0).clamp(-1.0, 1.0);
        plain(&self.joint.state(scenario, share))
    }
}
