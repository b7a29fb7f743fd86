//! What answers the later questions, away from the page's own thread.
//!
//! A question is one file here with a function of a scenario and of what is asked; [`Labourer::answer`]
//! finds it by its id. Nothing here may draw or wait.
#![cfg_attr(not(target_arch = "wasm32"), allow(dead_code, reason = "only a page calls it"))]

mod caliper;
mod compare;
mod fit;
mod line;
mod mark;
mod reach;
mod report;
mod surface;
mod wear;
mod width;

use lightgap::error::{Error, Rule};
use lightgap::scenario::Scenario;
use lightgap_wasm::cross::{faults, object, taken};
use wasm_bindgen::prelude::*;

/// What a question gives: plain data, or what is wrong with what was asked.
type Answered = Result<JsValue, Vec<Error>>;

/// Makes a panic speak on the console before it stops.
fn main() {
    console_error_panic_hook::set_once();
}

/// One worker's head: what the questions keep between two calls.
#[wasm_bindgen]
#[derive(Default)]
pub struct Labourer {
    compare: compare::Desk,
    fit: fit::Desk,
    line: line::Desk,
    reach: reach::Desk,
}

#[wasm_bindgen]
impl Labourer {
    /// A worker that has solved nothing yet.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Answers a question of a scenario: `{answer}`, or `{faults}` with what cannot be asked.
    pub fn answer(&mut self, question: &str, scenario: &JsValue, asked: &JsValue) -> JsValue {
        if question == "mark" {
            return object([("answer", mark::answer(asked))]);
        }
        let scenario = taken(scenario).and_then(|file| Scenario::read(&file));
        let answered = scenario.and_then(|scenario| self.ask(question, &scenario, asked));
        match answered {
            Ok(answer) => object([("answer", answer)]),
            Err(found) => object([("faults", faults(&found))]),
        }
    }
}

impl Labourer {
    /// The question by its id.
    fn ask(&mut self, question: &str, scenario: &Scenario, asked: &JsValue) -> Answered {
        match question {
            "caliper" => caliper::answer(scenario, asked),
            "compare" => self.compare.answer(scenario, asked),
            "fit" => self.fit.answer(scenario, asked),
            "line" => self.line.answer(scenario, asked),
            "reach" => self.reach.answer(scenario, asked),
            "surface" => surface::answer(scenario, asked),
            "report" => report::answer(scenario),
            "wear" => wear::answer(scenario, asked),
            "width" => width::answer(scenario),
            unknown => Err(vec![Error::text("question", unknown, Rule::UnknownKey)]),
        }
    }
}

/// Plain data for the page.
fn plain(what: &impl serde::Serialize) -> Answered {
    Ok(lightgap_wasm::plain::plain(what))
}
