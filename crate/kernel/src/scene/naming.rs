//! Names of parts and sections, the scale bar, and the grip.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size, Tint};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use super::{Circle, Grip, View};
use crate::chain::outline::{Link, break_mm};
use crate::contact::Body;
use crate::decimal;
use crate::plane::Point;
use crate::posing::Mode;

/// Names, captions and the scale bar.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    draw_captions(sketch, staged);
    draw_names(sketch, staged);
    draw_bar(sketch, staged);
}

fn draw_captions(sketch: &mut Sketch, staged: &Staged) {
    let layout = staged.drawing.layout();
    for (placed, &at) in layout.views().iter().zip(&layout.captions) {
        let word = match (placed.view, layout.sheet.narrow) {
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

/// A name under the plan section and a leader up to the part.
struct Name {
    body: Body,
    tint: Tint,
    word: &'static str,
    /// Where on the near plate the leader ends, in the body's axes, mm.
    on: Point,
    /// Where the name stands, em, and which end of it.
    x: f64,
    align: Align,
}

fn names(staged: &Staged) -> [Name; 3] {
    const INTO_PLATE: f64 = 0.7;
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let (plan, p) = (layout.plan(), s.pitch_mm);
    let x = |mm: f64| plan.origin.x + plan.em_per_mm * mm;
    let outer = -0.5 * s.outer_spacing_mm - INTO_PLATE * s.outer_plate_mm;
    let inner = -0.5 * s.inner_width_mm - INTO_PLATE * s.inner_plate_mm;
    let held_x = -0.5 * break_mm(s, Link::OuterToLeft);
    let next_x = 0.5 * break_mm(s, Link::OuterToRight);
    [
        Name {
            body: Body::HeldOuter,
            tint: Tint::Held,
            word: "draw.name.held",
            on: Point::new(held_x, outer),
            x: x(layout.reach_mm.0).max(0.0),
            align: Align::Start,
        },
        Name {
            body: Body::InnerNear,
            tint: inner_tint(staged),
            word: "draw.name.inner",
            on: Point::new(0.5 * p, inner),
            x: x(0.5 * p),
            align: Align::Middle,
        },
        Name {
            body: Body::NextOuter,
            tint: Tint::Next,
            word: "draw.name.next",
            on: Point::new(next_x, outer),
            x: x(layout.reach_mm.1),
            align: Align::End,
        },
    ]
}

fn inner_tint(staged: &Staged) -> Tint {
    match staged.drawing.chain().construction {
        crate::chain::Construction::Bushed => Tint::Inner,
        crate::chain::Construction::Collared => Tint::InnerNear,
    }
}

fn draw_names(sketch: &mut Sketch, staged: &Staged) {
    const CLEAR_EM: f64 = 0.95;
    let layout = staged.drawing.layout();
    let bodies = staged.bodies_on_sheet(layout.plan());
    let size = if layout.sheet.narrow { Size::SmallStrong } else { Size::Strong };
    for name in names(staged) {
        let id = Id::Body(name.body);
        let at = Point::new(name.x, layout.names_em);
        let letters = staged.lexicon.word(name.word);
        let what = (id, Layer::Labels, Role::Name(name.tint));
        let place = sketch.text(what, at, (name.align, size), |out| out.push_str(letters));
        let on = bodies[name.body.index()].point(name.on);
        let from = Point::new(on.x.clamp(place.low.x, place.high.x), at.y - CLEAR_EM * size.em());
        sketch.line(id, Layer::Labels, Role::Leader, from, on);
        sketch.keep_off(from, on);
        const DOT_EM: f64 = 0.14;
        let dot = Circle { centre: on, radius: DOT_EM };
        sketch.circle(id, Layer::Labels, Role::LeaderDot, dot);
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
fn round_below(most: f64) -> f64 {
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

/// Radius of a grip, em.
const GRIP_EM: f64 = 1.55;

/// The grip that the mode offers: on the next outer link, on the inner link across, or none.
fn grip(staged: &Staged) -> Option<Grip> {
    const TOWARDS_BREAK: f64 = 0.86;
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let reach = TOWARDS_BREAK * break_mm(s, Link::OuterToRight);
    let (view, at_mm) = match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => {
            let next = staged.posed.plan.of(Body::NextOuter);
            (View::Plan, next.outward(Point::new(reach, 0.0)))
        }
        Mode::Bend => {
            (View::Elevation, staged.posed.side.of(Body::NextOuter).outward(Point::new(reach, 0.0)))
        }
        Mode::Twist => {
            let inner = staged.posed.across.of(Body::InnerFar);
            (View::End, inner.outward(Point::new(0.0, 0.5 * s.inner_plate_height_mm)))
        }
    };
    let placed = layout.view(view)?;
    let at = placed.projection().point(at_mm);
    Some(Grip { id: "next", view, at_mm, at, radius_em: GRIP_EM })
}

/// Keeps words and discs off the grip, and tells where it is.
pub(super) fn reserve_grip(sketch: &mut Sketch, staged: &Staged) {
    let apart = !staged.drawing.chain().goes_together();
    if let Some(grip) = grip(staged).filter(|_| !apart) {
        sketch.taken.push(Patch::around(grip.at, grip.radius_em));
        sketch.scene.grips.push(grip);
    }
}

/// The grip's disc with the two ways it can go.
pub(super) fn draw_grip(sketch: &mut Sketch) {
    const AWAY_EM: f64 = 0.55;
    const WAY_EM: f64 = 2.2;
    let Some(&grip) = sketch.scene.grips.first() else { return };
    let id = Id::Grip(grip.id);
    let along = if grip.view == View::End { Point::X } else { Point::Y };
    for way in [along, -along] {
        let (from, to) =
            (grip.at + grip.radius_em * way, grip.at + (grip.radius_em + WAY_EM) * way);
        sketch.line(id, Layer::Grips, Role::GripPath, from, to);
        sketch.arrow(id, Layer::Grips, to + AWAY_EM * way, way);
    }
    let circle = Circle { centre: grip.at, radius: grip.radius_em };
    sketch.circle(id, Layer::Grips, Role::Grip, circle);
    for way in [along, -along] {
        sketch.arrow(id, Layer::Grips, grip.at + 0.6 * grip.radius_em * way, way);
    }
}
