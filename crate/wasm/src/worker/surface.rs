//! Question 7: how smooth is smooth.

use super::{Answered, plain};
use lightgap::error::{Error, Rule};
use lightgap::scenario::Scenario;
use lightgap::stage::RoughState;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// `{film_ratio}`: how near two faces are brought, from 0. `null` where no surface is asked for.
pub fn answer(scenario: &Scenario, asked: &JsValue) -> Answered {
    let film_ratio = member(asked, "film_ratio").as_f64().unwrap_or(1.0);
    if film_ratio >= 0.0 {
        return plain(&RoughState::of(scenario, film_ratio));
    }
    Err(vec![Error::number("film_ratio", film_ratio, Rule::NotNegative)])
}
