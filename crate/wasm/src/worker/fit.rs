//! Question 4: will every one fit?

use super::{Answered, plain};
use js_sys::Float64Array;
use lightgap::error::Error;
use lightgap::scenario::Scenario;
use lightgap::stage::{FitDesk, FitState, MatchView, TriedView, bought};
use lightgap::table::{limits_csv, with_limits};
use lightgap_wasm::cross::{member, object};
use wasm_bindgen::{JsCast, JsValue};

/// The sets that are being drawn.
#[derive(Default)]
pub struct Desk {
    fit: FitDesk,
}

/// A whole number of what is asked.
fn whole(asked: &JsValue, key: &str) -> Option<u64> {
    member(asked, key).as_f64().map(|number| number as u64)
}

impl Desk {
    /// By what is asked: `{run: [from, to]}` draws blocks of sets and packs them as one row of
    /// numbers; `{begin}` forgets what was drawn; `{add: row}` adds the row of the blocks that follow
    /// and says what all of them say; `{sets}` draws so many at once; `{set}` gives the sizes of one
    /// set by its number; `{classes}` sorts parts; `{times, bigger_mm}` makes a gap bigger and limits
    /// so many times as far; `{buy}`, `worst` or `rss`, gives the limits of the cheapest tolerances;
    /// `{paste}` reads a table of limits; `{copy}` writes it; nothing of these: what limits and demands
    /// add up to. `null` where it does not apply.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
        if let Some(from) = whole(&member(asked, "run"), "0") {
            let to = whole(&member(asked, "run"), "1").unwrap_or(from);
            let row = FitDesk::run(scenario, from, to);
            return Ok(row.map_or(JsValue::NULL, |row| Float64Array::from(row.as_slice()).into()));
        }
        if let Ok(row) = member(asked, "add").dyn_into::<Float64Array>() {
            return plain(&self.fit.add(&row.to_vec()));
        }
        if let Some(text) = member(asked, "paste").as_string() {
            return pasted(scenario, &text);
        }
        if let Some(times) = member(asked, "times").as_f64() {
            let bigger_mm = member(asked, "bigger_mm").as_f64().unwrap_or(0.0);
            return plain(&TriedView::of(scenario, bigger_mm, times));
        }
        if let Some(way) = member(asked, "buy").as_string() {
            return plain(&bought(scenario, way == "worst"));
        }
        if member(asked, "begin").is_truthy() {
            self.fit.begin(scenario);
            return Ok(JsValue::NULL);
        }
        if member(asked, "copy").is_truthy() {
            return Ok(limits_csv(scenario).into());
        }
        let (sets, set) = (whole(asked, "sets"), whole(asked, "set"));
        match (sets, set, whole(asked, "classes")) {
            (Some(sets), ..) => plain(&FitDesk::quick(scenario, sets)),
            (_, Some(set), _) => Ok(chain(scenario, set)),
            (.., Some(classes)) => plain(&MatchView::of(scenario, classes as u32)),
            _ => plain(&FitState::of(scenario)),
        }
    }
}

/// The sizes of a set by their keys.
fn chain(scenario: &Scenario, set: u64) -> JsValue {
    let sizes = FitDesk::set(scenario, set);
    sizes.map_or(JsValue::NULL, |sizes| {
        object(sizes.into_iter().map(|(key, mm)| (key, JsValue::from(mm))))
    })
}

/// The scenario with a pasted table's sizes and limits.
fn pasted(scenario: &Scenario, text: &str) -> Result<JsValue, Vec<Error>> {
    plain(&with_limits(scenario, text)?.write())
}
