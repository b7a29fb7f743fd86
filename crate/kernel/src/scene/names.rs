//! Names of the parts, each with a leader to what it names.

use super::Circle;
use super::compose::Staged;
use super::item::{Align, Id, Layer, Size, Tint};
use super::role::Role;
use super::sketch::{Patch, Sketch, width_em};
use crate::chain::Construction;
use crate::chain::outline::{Link, break_mm};
use crate::contact::Body;
use crate::plane::Point;

/// A name beside the plan section and a leader to the part.
#[derive(Clone, Copy)]
struct Name {
    body: Body,
    tint: Tint,
    part: Part,
    /// Where on a plate the leader ends, in the body's axes, mm.
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
#[derive(Clone, Copy, PartialEq)]
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

/// Every name: under the plan section, or over it where a link that was pulled aside has come into
/// the row; the far plate of a collared link always over it.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    let [mut held, inner, mut next] = names(staged);
    let width = |part: Part| width_em(word_of(staged, part), size_of(staged));
    let needed = [held.part, inner.part, next.part].map(width).iter().sum::<f64>() + 3.0;
    let short = (needed - (next.x - held.x)).max(0.0);
    held.x = (held.x - 0.5 * short).max(EDGE_EM);
    next.x = (next.x + 0.5 * short).min(staged.drawing.layout().sheet.width_em - EDGE_EM);
    for name in [held, next, inner] {
        draw_name(sketch, staged, &name, &rows(name.part));
    }
    if staged.drawing.chain().construction == Construction::Collared {
        let on = Point::new(inner.on.x, -inner.on.y);
        let (body, tint, part) = (Body::InnerFar, Tint::Inner, Part::Far);
        draw_name(sketch, staged, &Name { body, tint, part, on, ..inner }, &[Row::Over]);
    }
}

/// Where a name may stand.
#[derive(Clone, Copy, PartialEq)]
enum Row {
    /// Under the plan section.
    Under,
    /// Over it, beside the section's caption.
    Over,
}

/// The rows in which a part's name may stand, the best one first: a plate of its own is named from
/// its own side alone.
fn rows(part: Part) -> Vec<Row> {
    match part {
        Part::Far => vec![Row::Over],
        Part::Near => vec![Row::Under],
        Part::Held | Part::Inner | Part::Next => vec![Row::Under, Row::Over],
    }
}

fn size_of(staged: &Staged) -> Size {
    if staged.drawing.layout().sheet.narrow { Size::SmallStrong } else { Size::Strong }
}

/// A name in the first row that has a free place for it; without one it is left out.
fn draw_name(sketch: &mut Sketch, staged: &Staged, name: &Name, rows: &[Row]) {
    let seats = rows.iter().find_map(|&row| Some((row, seat(sketch, staged, name, row)?)));
    let Some((row, at)) = seats else { return };
    let letters = word_of(staged, name.part);
    let what = (Id::Body(name.body), Layer::Labels, Role::Name(name.tint));
    let size = (name.align, size_of(staged));
    let place = sketch.text(what, at, size, |out| out.push_str(letters));
    let far = row == Row::Over && name.on.y < 0.0;
    let on = if far { Point::new(name.on.x, -name.on.y) } else { name.on };
    draw_leader(sketch, staged, &Name { on, ..*name }, place);
}

/// The free place of a row that is nearest to where a name had best stand: on no other words and on
/// no metal. The name at the right end and the near plate's go only to the left, and a name that may
/// stand over the section does so before it goes far.
fn seat(sketch: &Sketch, staged: &Staged, name: &Name, row: Row) -> Option<Point> {
    const STEP_EM: f64 = 0.5;
    const NEAR: u32 = 6;
    const FAR: u32 = 24;
    let layout = staged.drawing.layout();
    let y = if row == Row::Under { layout.names_em } else { layout.captions[0].y };
    let mut places = vec![Point::new(name.x, y)];
    let leftwards = matches!(name.part, Part::Next | Part::Near);
    let steps = if row == Row::Under && name.part != Part::Near { NEAR } else { FAR };
    for step in 1..=steps {
        let aside = Point::new(STEP_EM * f64::from(step), 0.0);
        places.push(places[0] - aside);
        places.extend((!leftwards).then_some(places[0] + aside));
    }
    places.into_iter().find(|&at| is_free(sketch, staged, name, row, at))
}

fn is_free(sketch: &Sketch, staged: &Staged, name: &Name, row: Row, at: Point) -> bool {
    /// Kept on the right of a narrow sheet's upper row for the total.
    const KEPT_RIGHT_EM: f64 = 6.2;
    let layout = staged.drawing.layout();
    let place = Patch::of_text(at, name.align, size_of(staged), word_of(staged, name.part));
    let kept = if layout.sheet.narrow && row == Row::Over { KEPT_RIGHT_EM } else { 0.0 };
    let right = layout.sheet.width_em - kept;
    place.within(Point::ZERO, Point::new(right, layout.sheet.height_em))
        && sketch.is_free(&place)
        && !sketch.metal.iter().chain(&sketch.pins).any(|metal| metal.meets(&place))
}

/// A thin line from a name to a dot on its part.
fn draw_leader(sketch: &mut Sketch, staged: &Staged, name: &Name, place: Patch) {
    const CLEAR_EM: f64 = 0.15;
    const DOT_EM: f64 = 0.14;
    let bodies = staged.bodies_on_sheet(staged.drawing.layout().plan());
    let id = Id::Body(name.body);
    let on = bodies[name.body.index()].point(name.on);
    let below = on.y > place.high.y;
    let y = if below { place.high.y + CLEAR_EM } else { place.low.y - CLEAR_EM };
    let from = Point::new(on.x.max(place.low.x).min(place.high.x), y);
    sketch.line(id, Layer::Labels, Role::Leader, from, on);
    sketch.keep_off(from, on);
    sketch.circle(id, Layer::Labels, Role::LeaderDot, Circle { centre: on, radius: DOT_EM });
}
