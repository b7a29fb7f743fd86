//! Dimension lines of open gaps, each with its number.

use super::{ASIDE_EM, HALF_FIGURE_EM, NARROWEST_EM, OUTSIDE_EM, arrows_stand_inside, draw_span};
use crate::contact::{Contact, End, Joint, Kind};
use crate::plane::Point;
use crate::posing::{ContactState, Mark, Mode, Seen};
use crate::scene::compose::Staged;
use crate::scene::item::{Align, Id, Layer, Size};
use crate::scene::mark::{Spot, spot_of};
use crate::scene::role::Role;
use crate::scene::sketch::{Patch, Sketch};
use crate::scene::{Grip, Holds, View, grip};

/// A number that hides less metal than this is clear, square em.
const HIDDEN_EM2: f64 = 0.1;
/// A number that hides more than this is left out, unless it is asked for, square em.
const BEARABLE_EM2: f64 = 0.7;
/// A gap taller than this holds its number, em.
const TALL_EM: f64 = 1.4;

/// Every gap that is worth a dimension line.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    let mut drawn = Drawn::default();
    for marked in staged.posed.contacts {
        if let Some(spot) = spot_of(staged, marked).filter(|_| is_worth_it(staged, marked)) {
            draw_gap(sketch, &mut drawn, staged, (marked, &spot));
        }
    }
}

/// Any open gap that is pointed at, and the gaps that the first joint has left: between the plates
/// at the far end (at the near end too when the far one touches), and beside the pin when no pin
/// touches but plates do.
fn is_worth_it(staged: &Staged, marked: &ContactState) -> bool {
    let contact = &marked.contact;
    if marked.mark != Mark::Open || staged.staging.lit == Some(Id::Contact(*contact)) {
        return marked.mark == Mark::Open;
    }
    let mode = staged.staging.mode;
    let touching = staged.posed.contacts.iter().filter(|s| s.mark != Mark::Open);
    let touches = |kind, end: Option<End>| {
        touching.clone().any(|s| {
            let here = s.contact.joint == Joint::First && s.seen == Seen::Plan;
            here && s.contact.kind == kind && end.is_none_or(|end| s.contact.end == end)
        })
    };
    let far = contact.end == End::Far;
    let first = contact.joint == Joint::First && marked.seen == Seen::Plan;
    first
        && mode.is_plan()
        && mode != Mode::Load
        && match contact.kind {
            Kind::PlateFace => far || touches(Kind::PlateFace, Some(End::Far)),
            Kind::PinBore => {
                far && !contact.inner
                    && mode != Mode::Aside
                    && touches(Kind::PlateFace, None)
                    && !touches(Kind::PinBore, None)
            }
            _ => false,
        }
}

/// What dimension lines and their numbers take, so that no line runs through a number.
#[derive(Default)]
struct Drawn {
    lines: Vec<Patch>,
    numbers: Vec<Patch>,
}

/// Small places along a dimension line, one beside the other.
fn along(spot: &Spot) -> impl Iterator<Item = Patch> {
    const STEP_EM: f64 = 0.25;
    const HALF_EM: f64 = 0.1;
    let way = (spot.other - spot.at).normalize_or(spot.out);
    let past = if arrows_stand_inside(spot.at, spot.other) { 0.0 } else { OUTSIDE_EM };
    let (from, to) = (spot.at - past * way, spot.other + past * way);
    let steps = libm::ceil(from.distance(to) / STEP_EM).max(1.0);
    (0..=steps as u32).map(move |i| Patch::around(from.lerp(to, f64::from(i) / steps), HALF_EM))
}

/// Draws a gap's dimension line with its number; one that would run through another number, or whose
/// number has no place, is left out unless it is asked for.
fn draw_gap(
    sketch: &mut Sketch,
    drawn: &mut Drawn,
    staged: &Staged,
    (marked, spot): (&ContactState, &Spot),
) {
    let gap = spot.at.distance(spot.other);
    let lit = staged.staging.lit == Some(Id::Contact(marked.contact));
    if gap < NARROWEST_EM && !lit {
        return;
    }
    let before = drawn.lines.len();
    drawn.lines.extend(along(spot));
    let crosses = |number: &Patch| along(spot).any(|place| place.meets(number));
    let id = Id::Contact(marked.contact);
    let mut number = String::new();
    staged.lexicon.write_figure(&mut number, marked.gap_mm.max(0.0));
    let place = place_for(sketch, &drawn.lines, staged, spot, (&marked.contact, &number));
    let Some((at, align)) = place.filter(|_| lit || !drawn.numbers.iter().any(crosses)) else {
        drawn.lines.truncate(before);
        return;
    };
    draw_span(sketch, id, spot.at, spot.other);
    let what = (id, Layer::Dimensions, Role::Figure);
    let place = sketch.text(what, at, (align, Size::Small), |out| out.push_str(&number));
    drawn.numbers.push(place);
    add_end(sketch, staged, marked, spot);
}

/// The ring at the end of a dimension line that a hand can pull at, on the part that moves with the
/// gap.
fn add_end(sketch: &mut Sketch, staged: &Staged, marked: &ContactState, spot: &Spot) {
    let (Seen::Plan, Some(_)) = (marked.seen, marked.contact.kind.pair()) else { return };
    let Some(meeting) = staged.drawing.meeting(&marked.contact) else { return };
    let (end, from) = match meeting.moves_at_the_corner() {
        true => (spot.other, spot.at),
        false => (spot.at, spot.other),
    };
    let way = (end - from).normalize_or(spot.out);
    let line_end = if arrows_stand_inside(from, end) { 0.0 } else { OUTSIDE_EM };
    let at = end + (line_end + grip::END_EM) * way;
    let at_mm = staged.drawing.layout().plan().projection().inverse(end);
    let (holds, view, radius_em) = (Holds::End(marked.contact), View::Plan, grip::END_EM);
    grip::add_end(sketch, staged, Grip { holds, view, at_mm, at, radius_em });
}

/// A place for the number of a gap: in the gap where it is tall enough, else past the arrows, else
/// beside; on no dimension line.
fn place_for(
    sketch: &Sketch,
    lines: &[Patch],
    staged: &Staged,
    spot: &Spot,
    (contact, number): (&Contact, &str),
) -> Option<(Point, Align)> {
    let lit = staged.staging.lit == Some(Id::Contact(*contact));
    let sheet = staged.drawing.layout().sheet;
    let edge = Point::new(sheet.width_em, sheet.height_em);
    let middle = 0.5 * (spot.at + spot.other) + Point::new(0.0, HALF_FIGURE_EM);
    let upright = spot.out.y.abs() > spot.out.x.abs();
    let beside = |way: f64| {
        let align = if way < 0.0 { Align::End } else { Align::Start };
        let line = if upright { 0.0 } else { 0.5 * spot.at.distance(spot.other) + OUTSIDE_EM };
        (middle + Point::new(way * (line + ASIDE_EM), 0.0), align)
    };
    let plan = staged.drawing.layout().plan();
    let plate = plan.em_per_mm * staged.drawing.chain().outer_plate_mm;
    let past = |up: f64| {
        let end = if up * (spot.other.y - spot.at.y) > 0.0 { spot.other } else { spot.at };
        let inside = arrows_stand_inside(spot.at, spot.other);
        let line = if inside { OUTSIDE_EM } else { OUTSIDE_EM + 2.0 * grip::END_EM };
        let arrows = if upright { line.max(plate) } else { 0.0 };
        let clear = arrows + HALF_FIGURE_EM + 0.5 * ASIDE_EM;
        (end + Point::new(0.0, up * clear + HALF_FIGURE_EM), Align::Middle)
    };
    let tall = upright && spot.at.distance(spot.other) > TALL_EM;
    let (inward, outside) = (-contact.side.sign(), -contact.end.sign());
    let choices = match (tall, upright) {
        (true, _) => [beside(inward), beside(-inward), past(outside)],
        (false, true) => [past(outside), beside(-inward), past(-outside)],
        (false, false) => [past(outside), past(-outside), beside(-inward)],
    };
    let cost = |&(at, align): &(Point, Align)| {
        let place = Patch::of_text(at, align, Size::Small, number);
        let on_a_line = !lit && lines.iter().any(|line| line.meets(&place));
        let fits = place.within(Point::ZERO, edge) && sketch.is_free(&place) && !on_a_line;
        fits.then(|| sketch.hidden_in_all(&place))
    };
    let costs = choices.map(|choice| cost(&choice).map(|cost| (cost, choice)));
    let clear = costs.iter().flatten().find(|(cost, _)| *cost < HIDDEN_EM2);
    let least = costs.iter().flatten().min_by(|a, b| a.0.total_cmp(&b.0));
    let bearable = least.filter(|(cost, _)| lit || *cost < BEARABLE_EM2);
    clear.or(bearable).map(|(_, choice)| *choice)
}
