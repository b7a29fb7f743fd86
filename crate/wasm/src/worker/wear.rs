//! Question 5: what wear adds.

use super::{Answered, plain};
use lightgap::scenario::Scenario;
use lightgap::stage::WearState;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// What wear has added, at once; with `{friction: true}` only what the drive's offset costs as new and
/// worn, which takes longer. `null` where the chain does not go together, or has no drive to solve.
pub fn answer(scenario: &Scenario, asked: &JsValue) -> Answered {
    if member(asked, "friction").is_truthy() {
        return plain(&WearState::friction(scenario));
    }
    plain(&WearState::of(scenario))
}
