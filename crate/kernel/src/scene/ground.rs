//! What stands still: the wall, the axes, the marks of the cuts.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::role::Role;
use super::sketch::Sketch;
use super::{Placed, View};
use crate::chain::outline::{Link, break_mm, pin_axis};
use crate::contact::Body;
use crate::plane::{Point, Step};

/// The wall that holds the first link, and where the sections are cut.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    for placed in staged.drawing.layout().views() {
        if placed.view != View::End {
            draw_wall(sketch, staged, placed);
        }
    }
    draw_cuts(sketch, staged);
}

/// A line with strokes behind it, a little left of where the held link is broken off.
fn draw_wall(sketch: &mut Sketch, staged: &Staged, placed: &Placed) {
    const GAP_EM: f64 = 0.75;
    const STROKE_EM: f64 = 0.6;
    const PITCH_EM: f64 = 0.75;
    let s = staged.drawing.chain().sizes();
    let half = match placed.view {
        View::Plan => 0.5 * s.outer_spacing_mm + s.outer_plate_mm,
        _ => 0.5 * s.outer_waist_mm,
    };
    let x = -break_mm(s, Link::OuterToLeft);
    let end = |y: f64| placed.projection().point(Point::new(x, y)) - Point::new(GAP_EM, 0.0);
    let (top, bottom) = (end(half), end(-half));
    let mut steps = vec![Step::Move(top), Step::Line(bottom)];
    let strokes = libm::floor((bottom.y - top.y) / PITCH_EM) as u32;
    for i in 0..=strokes {
        let from = Point::new(top.x, top.y + PITCH_EM * f64::from(i));
        steps.extend([Step::Move(from), Step::Line(from + Point::new(-STROKE_EM, STROKE_EM))]);
    }
    sketch.path(Id::Mark("wall"), Layer::Ground, Role::Wall, &steps);
    sketch.keep_off(top, bottom);
}

/// The axes of the pins and of the straight chain.
pub(super) fn draw_axes(sketch: &mut Sketch, staged: &Staged) {
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let plan = layout.plan();
    let bodies = staged.bodies_on_sheet(plan);
    for body in [Body::HeldOuter, Body::NextOuter] {
        let what = (Id::Body(body), Layer::Centre, Role::CentreLine);
        sketch.carry(what, &pin_axis(s), &bodies[body.index()]);
    }
    let along = [Step::Move(Point::ZERO), Step::Line(Point::new(layout.reach_mm.1, 0.0))];
    let what = (Id::Mark("axis"), Layer::Centre, Role::Axis);
    sketch.carry(what, &along, &plan.projection());
    for placed in layout.views().iter().filter(|placed| placed.view != View::Plan) {
        draw_crosses(sketch, staged, placed);
    }
}

/// A cross of centre lines on each pin seen from its end, or along the pin across.
fn draw_crosses(sketch: &mut Sketch, staged: &Staged, placed: &Placed) {
    const PAST: f64 = 0.62;
    let s = staged.drawing.chain().sizes();
    let bodies = staged.bodies_on_sheet(placed);
    let reach = PAST * s.pin_diameter_mm;
    let cross = |along: f64, up: f64| {
        let (along, up) = (Point::new(along, 0.0), Point::new(0.0, up));
        [Step::Move(-along), Step::Line(along), Step::Move(-up), Step::Line(up)]
    };
    if placed.view == View::End {
        let [Step::Move(low), _] = pin_axis(s) else { return };
        let what = (Id::Body(Body::HeldOuter), Layer::Centre, Role::CentreLine);
        let axis = [Step::Move(Point::new(low.y, 0.0)), Step::Line(Point::new(-low.y, 0.0))];
        return sketch.carry(what, &axis, &bodies[Body::HeldOuter.index()]);
    }
    for body in [Body::HeldOuter, Body::NextOuter] {
        let what = (Id::Body(body), Layer::Centre, Role::CentreLine);
        sketch.carry(what, &cross(reach, reach), &bodies[body.index()]);
    }
}

/// One end of a cut: where it is, which way one looks, its letter.
struct Cut {
    at: Point,
    look: Point,
    letter: &'static str,
}

fn draw_cuts(sketch: &mut Sketch, staged: &Staged) {
    let layout = staged.drawing.layout();
    let plan = layout.plan();
    let s = staged.drawing.chain().sizes();
    let (left, right) = layout.cuts_em();
    let mut cuts = Vec::new();
    if let Some(side) = layout.view(View::Elevation) {
        for x in [left, right] {
            cuts.push(Cut { at: Point::new(x, plan.origin.y), look: -Point::Y, letter: "b" });
            cuts.push(Cut { at: Point::new(x, side.origin.y), look: Point::Y, letter: "a" });
        }
    }
    if let Some(end) = layout.view(View::End) {
        let reach = 0.5 * s.pin_length_mm * plan.em_per_mm + PAST_PIN_EM;
        for y in [-reach, reach] {
            let at = plan.origin + Point::new(0.0, y);
            cuts.push(Cut { at, look: -Point::X, letter: "c" });
        }
        if layout.view(View::Elevation).is_none() {
            let reach = 0.5 * s.pin_length_mm * end.em_per_mm + PAST_PIN_EM;
            for x in [-reach, reach] {
                let at = end.origin + Point::new(x, 0.0);
                cuts.push(Cut { at, look: Point::Y, letter: "a" });
            }
        }
    }
    for cut in &cuts {
        draw_cut(sketch, staged, cut);
    }
}

/// How far past the pin's end a cut's mark stands, em.
const PAST_PIN_EM: f64 = 1.3;

/// A heavy stroke on the cut, an arrow that looks the way one looks, and the letter at its tail.
fn draw_cut(sketch: &mut Sketch, staged: &Staged, cut: &Cut) {
    const HALF_STROKE_EM: f64 = 0.5;
    const ARROW_EM: f64 = 1.15;
    const LETTER_EM: f64 = 0.55;
    let Cut { at, look, letter } = *cut;
    let id = Id::Mark("cut");
    let across = look.perp() * HALF_STROKE_EM;
    let tail = at - ARROW_EM * look;
    sketch.line(id, Layer::Labels, Role::Heavy, at - across, at + across);
    sketch.line(id, Layer::Labels, Role::Dimension, tail, at);
    sketch.arrow(id, Layer::Labels, at, look);
    let word = match letter {
        "a" => "draw.cut.a",
        "b" => "draw.cut.b",
        _ => "draw.cut.c",
    };
    const HALF_LETTER_EM: f64 = 0.32;
    let place = tail - LETTER_EM * look + Point::new(0.0, HALF_LETTER_EM);
    sketch.text(
        (id, Layer::Labels, Role::Figure),
        place,
        (Align::Middle, Size::SmallStrong),
        |out| {
            out.push_str(staged.lexicon.word(word));
        },
    );
}
