//! Two chains side by side.

use super::{Answered, plain};
use js_sys::Array;
use lightgap::compare::{Figures, figures, pairs, spans};
use lightgap::picture::{GhostAsked, GhostDesk};
use lightgap::scenario::{Corner, Scenario};
use lightgap_wasm::cross::{member, taken};
use wasm_bindgen::JsValue;

/// The figures of the chain that is held, kept while only the other changes.
#[derive(Default)]
pub struct Desk {
    held: Option<(String, Scenario, Figures)>,
    ghost: GhostDesk,
}

impl Desk {
    /// `{question, a, corner}`: the figures of a question for the scenario beside those of `a`, a
    /// scenario too; without `a`, its own alone. The corner is one of the limits, or the middle.
    /// `{over}`, a question: its figures at the tightest and the loosest chain of the limits.
    /// `{ghost, a}`: the outlines of `a` over the picture of the scenario, as leaves.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
        let ghost = member(asked, "ghost");
        if ghost.is_object() {
            let a = Scenario::read(&taken(&member(asked, "a"))?)?;
            return plain(&self.ghost.leaves(&a, scenario, &wanted(&ghost)));
        }
        if let Some(question) = member(asked, "over").as_string() {
            return plain(&spans(&question, scenario));
        }
        let text = |key| member(asked, key).as_string().unwrap_or_default();
        let (question, corner) = (text("question"), text("corner"));
        let a = self.held(&question, &corner, &member(asked, "a"))?;
        plain(&pairs(&a, &figures(&question, scenario, Corner::of_key(&corner))))
    }

    /// The figures of the chain that is held; none without one.
    fn held(
        &mut self,
        question: &str,
        corner: &str,
        a: &JsValue,
    ) -> Result<Figures, Vec<lightgap::error::Error>> {
        if !a.is_object() {
            return Ok(Vec::new());
        }
        let a = Scenario::read(&taken(a)?)?;
        let of = [question, corner].join(" ");
        if let Some((known, held, told)) = &self.held
            && *known == of
            && *held == a
        {
            return Ok(told.clone());
        }
        let told = figures(question, &a, Corner::of_key(corner));
        self.held = Some((of, a, told.clone()));
        Ok(told)
    }
}

/// What a page asks of a ghost; a number that is missing is nought.
fn wanted(ghost: &JsValue) -> GhostAsked {
    /// No text is smaller, pixels, and no picture larger.
    const LEAST_PX: f64 = 4.0;
    const MOST_PX: f64 = 8000.0;
    let number =
        |of: &JsValue, key: &str| member(of, key).as_f64().filter(|n| n.is_finite()).unwrap_or(0.0);
    let text = |of: &JsValue, key: &str| member(of, key).as_string().unwrap_or_default();
    let gives = |key| member(ghost, key).is_truthy();
    let room = member(ghost, "held");
    let views = member(ghost, "views");
    let views = if Array::is_array(&views) { Array::from(&views) } else { Array::new() };
    let place = |view: JsValue| {
        let origin_px = ["x_px", "y_px"].map(|key| number(&view, key));
        (text(&view, "view"), origin_px, number(&view, "px_per_mm"))
    };
    GhostAsked {
        mode: text(ghost, "how"),
        share: number(ghost, "at"),
        room: room.is_object().then(|| (number(&room, "offset_mm"), number(&room, "yaw_rad"))),
        times: number(ghost, "times"),
        corner: Corner::of_key(&text(ghost, "corner")),
        springy: [gives("a_springy"), gives("springy")],
        worn_mm: ["a_worn_mm", "worn_mm"].map(|key| number(ghost, key)),
        size_px: ["width_px", "height_px"].map(|key| number(ghost, key).clamp(LEAST_PX, MOST_PX)),
        text_px: number(ghost, "text_px").clamp(LEAST_PX, 100.0),
        views: views.iter().map(place).collect(),
        name: text(ghost, "name"),
    }
}
