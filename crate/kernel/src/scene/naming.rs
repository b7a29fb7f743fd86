//! Captions of the sections and the scale bar.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use super::{View, names};
use crate::decimal;
use crate::plane::Point;

/// Captions, names and the scale bar.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    draw_captions(sketch, staged);
    names::draw(sketch, staged);
    draw_bar(sketch, staged);
}

fn draw_captions(sketch: &mut Sketch, staged: &Staged) {
    let layout = staged.drawing.layout();
    for (placed, &at) in layout.views().iter().zip(&layout.captions) {
        let beside = placed.view == View::End && layout.views().len() == View::ALL.len();
        let word = match (placed.view, layout.sheet.narrow || beside) {
            (View::Plan, false) => "draw.view.plan",
            (View::Plan, true) => "draw.view.plan.short",
            (View::Elevation, false) => "draw.view.elevation",
            (View::Elevation, true) => "draw.view.elevation.short",
            (View::End, false) => "draw.view.end",
            (View::End, true) => "draw.view.end.short",
        };
        let what = (Id::Mark(placed.view.key()), Layer::Labels, Role::Note);
        let letters = staged.lexicon.word(word);
        sketch.text(what, at, (Align::Start, Size::Small), |out| out.push_str(letters));
    }
}

/// A bar of a round length, under the plan section on the right.
fn draw_bar(sketch: &mut Sketch, staged: &Staged) {
    const LONGEST_EM: f64 = 7.0;
    const TICK_EM: f64 = 0.35;
    const ASIDE_EM: f64 = 0.5;
    let layout = staged.drawing.layout();
    let unit_mm = staged.lexicon.length.mm();
    let length = round_below(LONGEST_EM / (layout.plan().em_per_mm * unit_mm));
    let width = length * unit_mm * layout.plan().em_per_mm;
    let id = Id::Mark("bar");
    let what = (id, Layer::Labels, Role::Figure);
    let decimals = if length < 1.0 { 2 } else { 0 };
    let place = sketch.text(what, layout.bar, (Align::End, Size::Small), |out| {
        decimal::write(out, length, decimals, staged.lexicon.separator);
        out.push(' ');
        out.push_str(staged.lexicon.word(staged.lexicon.length.word()));
    });
    let y = 0.5 * (place.low.y + place.high.y);
    let (right, tick) = (Point::new(place.low.x - ASIDE_EM, y), Point::new(0.0, TICK_EM));
    let left = right - Point::new(width, 0.0);
    sketch.line(id, Layer::Labels, Role::Heavy, left, right);
    for end in [left, right] {
        sketch.line(id, Layer::Labels, Role::Heavy, end - tick, end + tick);
    }
    sketch.taken.push(Patch { low: left - tick, high: right + tick });
}

/// The largest of 1, 2, 5 times a power of ten that is not above a positive number.
pub(super) fn round_below(most: f64) -> f64 {
    const STEPS: [f64; 3] = [5.0, 2.0, 1.0];
    const TEN: f64 = 10.0;
    let mut power = 1.0;
    while power > most {
        power /= TEN;
    }
    while power * TEN <= most {
        power *= TEN;
    }
    STEPS.into_iter().map(|step| step * power).find(|&round| round <= most).unwrap_or(power)
}
