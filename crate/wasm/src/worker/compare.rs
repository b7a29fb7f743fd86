//! Two chains side by side.

use super::{Answered, plain};
use lightgap::compare::{Figures, figures, pairs};
use lightgap::scenario::{Corner, Scenario};
use lightgap_wasm::cross::{member, taken};
use wasm_bindgen::JsValue;

/// The figures of the chain that is held, kept while only the other changes.
#[derive(Default)]
pub struct Desk {
    held: Option<(String, Scenario, Figures)>,
}

impl Desk {
    /// `{question, a, corner}`: the figures of a question for the scenario beside those of `a`, a
    /// scenario too; without `a`, its own alone. The corner is one of the limits, or the middle.
    pub fn answer(&mut self, scenario: &Scenario, asked: &JsValue) -> Answered {
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
