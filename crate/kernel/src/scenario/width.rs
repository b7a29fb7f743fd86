//! Width: how much narrower, what is kept, and how pins are held in their plates.

use super::fields::Fields;
use super::range::Range;
use super::value::Value;
use crate::chain::Sizes;
use crate::error::{Given, Rule};
use crate::width::{Keep, most_mm};

/// What is asked of a chain's width. Without a section of its own a chain is as wide as it is, its
/// pins pressed in by 0.02 mm and swollen by 0.005 mm: chosen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Width {
    /// How much narrower over the pins, mm.
    pub narrower_mm: f64,
    /// What a narrower chain keeps.
    pub keep: Keep,
    /// How much larger a pin is than its hole in the outer plate, mm on the diameter.
    pub press_mm: f64,
    /// How much riveting swells a pin at the outer plate's inner face, mm on the diameter.
    pub swelling_mm: f64,
    /// Over which length of the pin that falls to 37 %, mm; none takes the pin's radius.
    pub decay_mm: Option<f64>,
}

/// What may be kept.
const KEEPS: &[&str] = &["gaps", "plates"];
/// The defaults of a section: chosen.
const PRESS_MM: f64 = 0.02;
const SWELLING_MM: f64 = 0.005;
/// Neither a press fit nor a swelling is larger, mm.
const LARGEST_FIT_MM: f64 = 1.0;

impl Default for Width {
    fn default() -> Self {
        Self {
            narrower_mm: 0.0,
            keep: Keep::Gaps,
            press_mm: PRESS_MM,
            swelling_mm: SWELLING_MM,
            decay_mm: None,
        }
    }
}

impl Width {
    /// Reads a scenario's `width`; `sizes` is absent when the chain has faults.
    pub(super) fn read(fields: &mut Fields, sizes: Option<&Sizes>) -> Self {
        let fit = Range::from_zero(LARGEST_FIT_MM);
        let keep = match fields.word("keep", KEEPS) {
            Some("plates") => Keep::Plates,
            _ => Keep::Gaps,
        };
        let width = Self {
            narrower_mm: fields.number("narrower_mm", Range::from_zero(1000.0), Some(0.0)),
            keep,
            press_mm: fields.number("press_mm", fit, Some(PRESS_MM)),
            swelling_mm: fields.number("swelling_mm", fit, Some(SWELLING_MM)),
            decay_mm: fields.number_if_given("decay_mm", Range::above_zero(1000.0)),
        };
        if let Some(sizes) = sizes {
            width.refuse_impossible(fields, sizes);
        }
        width
    }

    /// Refuses more than the plates, or the side gap and a drawable overlap, can give.
    fn refuse_impossible(&self, fields: &Fields, sizes: &Sizes) {
        if self.narrower_mm <= 0.0 || fields.any_fault() {
            return;
        }
        let limit = most_mm(sizes, self.keep);
        if self.narrower_mm > limit {
            let of = match self.keep {
                Keep::Gaps => "what_plates_give",
                Keep::Plates => "what_gap_gives",
            };
            let rule = Rule::AtMostSize { limit, of };
            fields.fault("narrower_mm", Given::Number(self.narrower_mm), rule);
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_number("narrower_mm", self.narrower_mm);
        whole.put_text("keep", self.keep.key());
        whole.put_number("press_mm", self.press_mm);
        whole.put_number("swelling_mm", self.swelling_mm);
        whole.put_if_given("decay_mm", self.decay_mm);
        whole
    }
}
