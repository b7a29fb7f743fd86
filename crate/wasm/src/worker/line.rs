//! Question 3: what a crooked line costs.

use super::{Answered, plain};
use js_sys::Array;
use lightgap::drive::Wanted;
use lightgap::picture::{RunAsked, RunDesk};
use lightgap::scenario::Scenario;
use lightgap::stage::LineDesk;
use lightgap_wasm::cross::member;
use wasm_bindgen::JsValue;

/// The strands that were solved last, kept while only the offset changes.
#[derive(Default)]
pub struct Desk {
    line: LineDesk,
    run: RunDesk,
}

impl Desk {
    /// `{curve}`, the key of a variant: what growing offsets cost it, as
    /// `{variant, free_mm, onset_mm, end_mm, samples}`. Without one: what the offset of the scenario
    /// costs, and the strand between its wheels; `{quick}`, that without other assumptions. `{gears}`, rows of teeth and their steps: what each
    /// pair of wheels costs. `{bow_mm}`: the chain laid on its side, about so long. `{run}`: the drive
    /// at a moment of its movement, in numbers and pictures. `null` without a
    /// drive, or where no chain can be built.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
        let gears = member(asked, "gears");
        if gears.is_object() {
            return plain(&LineDesk::gears(scenario, &wanted(&gears))?);
        }
        let run = member(asked, "run");
        if run.is_object() {
            return plain(&self.run.state(scenario, &moment(&run)));
        }
        if let Some(reach_mm) = member(asked, "bow_mm").as_f64() {
            return plain(&LineDesk::bow(scenario, reach_mm));
        }
        match member(asked, "curve").as_string() {
            Some(variant) => plain(&self.line.curve(scenario, &variant)),
            None if member(asked, "quick").as_bool() == Some(true) => {
                plain(&self.line.quick_state(scenario))
            }
            None => plain(&self.line.state(scenario)),
        }
    }
}

/// Rows of wheels as a page writes them; a number that is missing is not one.
fn wanted(gears: &JsValue) -> Wanted {
    let number = |key| member(gears, key).as_f64().unwrap_or(f64::NAN);
    let row = |key| {
        let row = member(gears, key);
        let list = if Array::is_array(&row) { Array::from(&row) } else { Array::new() };
        list.iter().map(|teeth| teeth.as_f64().unwrap_or(f64::NAN)).collect()
    };
    Wanted {
        front: row("front"),
        front_step_mm: number("front_step_mm"),
        back: row("back"),
        back_step_mm: number("back_step_mm"),
        aside_mm: number("aside_mm"),
        guides: row("guides"),
    }
}

/// A moment of a drive as a page asks for it, sizes in pixels; what is missing is nought.
fn moment(run: &JsValue) -> RunAsked {
    /// No picture is wider, and no text smaller, pixels.
    const WIDEST_PX: f64 = 4000.0;
    const LEAST_PX: f64 = 4.0;
    let number = |key| member(run, key).as_f64().filter(|number| number.is_finite()).unwrap_or(0.0);
    let wide = |key| number(key).clamp(40.0 * LEAST_PX, WIDEST_PX);
    RunAsked {
        travel_pitches: number("travel_pitches"),
        fold: member(run, "fold").as_f64().map(|fold| (fold as usize, number("share"))),
        joint: number("joint") as u32,
        stuck: member(run, "stuck").as_bool() == Some(true),
        width_px: wide("width_px"),
        close_px: wide("close_px"),
        text_px: number("text_px").clamp(LEAST_PX, 100.0),
    }
}
