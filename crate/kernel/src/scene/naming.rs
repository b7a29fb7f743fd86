//! Names of parts and sections, the scale bar, and the grip.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size, Tint};
use super::role::Role;
use super::sketch::{Patch, Sketch, width_em};
use super::{Circle, Grip, View};
use crate::chain::Construction;
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

/// A name under the plan section and a leader up to the part.
struct Name {
    body: Body,
    tint: Tint,
    part: Part,
    /// Where on the near plate the leader ends, in the body's axes, mm.
    on: Point,
    /// Where the name stands, em, and which end of it.
    x: f64,
    align: Align,
}

/// Room between a name and the sheet's edge, em.
const EDGE_EM: f64 = 0.4;

/// The names under the plan section: held link, inner link or its near plate, next link.
fn names(staged: &Staged) -> [Name; 3] {
    const INTO_PLATE: f64 = 0.7;
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let (plan, p, narrow) = (layout.plan(), s.pitch_mm, layout.sheet.narrow);
    let x = |mm: f64| plan.origin.x + plan.em_per_mm * mm;
    let outer = -0.5 * s.outer_spacing_mm - INTO_PLATE * s.outer_plate_mm;
    let inner = -0.5 * s.inner_width_mm - INTO_PLATE * s.inner_plate_mm;
    let held_x = -0.5 * break_mm(s, Link::OuterToLeft);
    let next_x = 0.5 * break_mm(s, Link::OuterToRight);
    let (tint, part) = match s.construction {
        Construction::Bushed => (Tint::Inner, Part::Inner),
        Construction::Collared => (Tint::InnerNear, Part::Near),
    };
    let name = |body, tint, part, on, x, align| Name { body, tint, part, on, x, align };
    let (left, right) = if narrow {
        (EDGE_EM, layout.sheet.width_em - EDGE_EM)
    } else {
        (x(layout.reach_mm.0), x(layout.reach_mm.1))
    };
    let on_inner = Point::new(0.5 * p, inner);
    [
        name(
            Body::HeldOuter,
            Tint::Held,
            Part::Held,
            Point::new(held_x, outer),
            left,
            Align::Start,
        ),
        name(Body::InnerNear, tint, part, on_inner, x(0.5 * p), Align::Middle),
        name(Body::NextOuter, Tint::Next, Part::Next, Point::new(next_x, outer), right, Align::End),
    ]
}

/// What has a name on the drawing.
#[derive(Clone, Copy)]
enum Part {
    Held,
    Inner,
    Far,
    Near,
    Next,
}

impl Part {
    /// The id of its name; a short one where the sheet is small.
    fn word(self, short: bool) -> &'static str {
        match (self, short) {
            (Self::Held, false) => "draw.name.held",
            (Self::Held, true) => "draw.name.held.short",
            (Self::Inner, false) => "draw.name.inner",
            (Self::Inner, true) => "draw.name.inner.short",
            (Self::Far, false) => "draw.name.far",
            (Self::Far, true) => "draw.name.far.short",
            (Self::Near, false) => "draw.name.near",
            (Self::Near, true) => "draw.name.near.short",
            (Self::Next, false) => "draw.name.next",
            (Self::Next, true) => "draw.name.next.short",
        }
    }
}

/// The letters of a part's name.
fn word_of<'a>(staged: &Staged<'a>, part: Part) -> &'a str {
    const SHORT_BELOW_EM: f64 = 28.0;
    staged.lexicon.word(part.word(staged.drawing.layout().sheet.width_em < SHORT_BELOW_EM))
}

fn draw_names(sketch: &mut Sketch, staged: &Staged) {
    let layout = staged.drawing.layout();
    let size = if layout.sheet.narrow { Size::SmallStrong } else { Size::Strong };
    let [mut held, mut inner, mut next] = names(staged);
    let row = layout.names_em;
    let width = |part: Part| width_em(word_of(staged, part), size);
    let needed = [held.part, inner.part, next.part].map(width).iter().sum::<f64>() + 3.0;
    let short = (needed - (next.x - held.x)).max(0.0);
    held.x = (held.x - 0.5 * short).max(EDGE_EM);
    next.x = (next.x + 0.5 * short).min(layout.sheet.width_em - EDGE_EM);
    let held_place = draw_name(sketch, staged, &held, size, row);
    let next_place = draw_name(sketch, staged, &next, size, row);
    let half = 0.5 * width(inner.part) + 0.6 * size.em();
    inner.x = inner.x.min(next_place.low.x - half).max(held_place.high.x + half);
    draw_name(sketch, staged, &inner, size, row);
    if staged.drawing.chain().construction == Construction::Collared {
        draw_far_name(sketch, staged, &inner, size);
    }
}

/// The name of the far plate, over the plan section, where it does not meet the caption.
fn draw_far_name(sketch: &mut Sketch, staged: &Staged, near: &Name, size: Size) {
    const KEPT_RIGHT_EM: f64 = 5.0;
    let layout = staged.drawing.layout();
    let on = Point::new(near.on.x, -near.on.y);
    let row = layout.captions[0].y;
    let x = layout.plan().origin.x + layout.plan().em_per_mm * on.x;
    let (body, tint, part, align) = (Body::InnerFar, Tint::Inner, Part::Far, Align::Middle);
    let name = Name { body, tint, part, on, x, align };
    let letters = word_of(staged, part);
    let place = Patch::of_text(Point::new(x, row), align, size, letters);
    if place.high.x < layout.sheet.width_em - KEPT_RIGHT_EM && sketch.is_free(&place) {
        draw_name(sketch, staged, &name, size, row);
    }
}

fn draw_name(sketch: &mut Sketch, staged: &Staged, name: &Name, size: Size, row: f64) -> Patch {
    const BELOW_EM: f64 = 0.35;
    const ABOVE_EM: f64 = 0.95;
    const DOT_EM: f64 = 0.14;
    let bodies = staged.bodies_on_sheet(staged.drawing.layout().plan());
    let id = Id::Body(name.body);
    let letters = word_of(staged, name.part);
    let (what, at) = ((id, Layer::Labels, Role::Name(name.tint)), Point::new(name.x, row));
    let place = sketch.text(what, at, (name.align, size), |out| out.push_str(letters));
    let on = bodies[name.body.index()].point(name.on);
    let clear = if on.y > row { BELOW_EM } else { -ABOVE_EM * size.em() };
    let from = Point::new(on.x.max(place.low.x).min(place.high.x), row + clear);
    sketch.line(id, Layer::Labels, Role::Leader, from, on);
    sketch.keep_off(from, on);
    sketch.circle(id, Layer::Labels, Role::LeaderDot, Circle { centre: on, radius: DOT_EM });
    place
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
    const CLEAR_EM: f64 = 0.65;
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let plan = layout.plan();
    let pin = plan.origin.x + plan.em_per_mm * s.pitch_mm;
    let before_cut = (layout.cuts_em().1 - CLEAR_EM - GRIP_EM - pin) / plan.em_per_mm;
    let reach = before_cut.min(TOWARDS_BREAK * break_mm(s, Link::OuterToRight));
    let (view, at_mm) = match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => {
            let next = staged.posed.plan.of(Body::NextOuter);
            (View::Plan, next.outward(Point::new(reach, 0.0)))
        }
        Mode::Bend => {
            (View::Elevation, staged.posed.side.of(Body::NextOuter).outward(Point::new(reach, 0.0)))
        }
        Mode::Twist => {
            const ABOVE_EM: f64 = 2.1;
            let scale = layout.view(View::End)?.em_per_mm;
            let up = 0.5 * s.inner_plate_height_mm + ABOVE_EM / scale;
            (View::End, staged.posed.across.of(Body::InnerFar).outward(Point::new(0.0, up)))
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
    const WAY_EM: f64 = 1.4;
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
