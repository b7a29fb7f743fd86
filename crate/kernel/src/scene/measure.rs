//! Dimension lines: the gaps that matter and how far the chain has come. The lines are drawn where
//! the drawn chain is; the numbers are the true ones.

use super::View;
use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::mark::{Spot, spot_of};
use super::role::Role;
use super::sketch::{Patch, Sketch, width_em};
use crate::chain::outline::{Link, break_mm};
use crate::contact::{Body, Contact, End, Joint, Kind};
use crate::plane::{Arc, Point, Step};
use crate::posing::{ContactState, Mark, Mode, Seen};

/// A gap narrower than this on the sheet gets no dimension line, em.
const NARROWEST_EM: f64 = 0.5;
/// Between a line and its number, em.
const ASIDE_EM: f64 = 0.45;
/// A number that hides less metal than this is clear, square em.
const HIDDEN_EM2: f64 = 0.1;
/// A number that hides more than this is left out, unless it is asked for, square em.
const BEARABLE_EM2: f64 = 0.7;
/// A gap taller than this holds its number, em.
const TALL_EM: f64 = 1.4;
/// How far arrows that point at a gap from outside reach, em.
pub(super) const OUTSIDE_EM: f64 = 1.2;
/// From the middle of a number down to its line of writing, em.
const HALF_FIGURE_EM: f64 = 0.35;

/// All dimensions of the drawing.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    for marked in staged.posed.contacts {
        if let Some(spot) = spot_of(staged, marked).filter(|_| is_worth_it(staged, marked)) {
            draw_gap(sketch, staged, marked, &spot);
        }
    }
    match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => draw_total(sketch, staged),
        Mode::Bend => draw_fold(sketch, staged),
        Mode::Twist => draw_twist(sketch, staged),
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

fn draw_gap(sketch: &mut Sketch, staged: &Staged, marked: &ContactState, spot: &Spot) {
    let gap = spot.at.distance(spot.other);
    let lit = staged.staging.lit == Some(Id::Contact(marked.contact));
    if gap < NARROWEST_EM && !lit {
        return;
    }
    let id = Id::Contact(marked.contact);
    let mut number = String::new();
    staged.lexicon.write_figure(&mut number, marked.gap_mm.max(0.0));
    let Some((at, align)) = place_for(sketch, staged, spot, &marked.contact, &number) else {
        return;
    };
    draw_span(sketch, id, spot.at, spot.other);
    let what = (id, Layer::Dimensions, Role::Figure);
    sketch.text(what, at, (align, Size::Small), |out| out.push_str(&number));
}

/// A place for the number of a gap: in the gap where it is tall enough, else past the arrows, else
/// beside.
fn place_for(
    sketch: &Sketch,
    staged: &Staged,
    spot: &Spot,
    contact: &Contact,
    number: &str,
) -> Option<(Point, Align)> {
    let lit = staged.staging.lit == Some(Id::Contact(*contact));
    let sheet = staged.drawing.layout().sheet;
    let edge = Point::new(sheet.width_em, sheet.height_em);
    let middle = 0.5 * (spot.at + spot.other) + Point::new(0.0, HALF_FIGURE_EM);
    let beside = |way: f64| {
        let align = if way < 0.0 { Align::End } else { Align::Start };
        (middle + Point::new(way * ASIDE_EM, 0.0), align)
    };
    let plan = staged.drawing.layout().plan();
    let plate = plan.em_per_mm * staged.drawing.chain().outer_plate_mm;
    let upright = spot.out.y.abs() > spot.out.x.abs();
    let past = |up: f64| {
        let end = if up * (spot.other.y - spot.at.y) > 0.0 { spot.other } else { spot.at };
        let arrows = if upright { OUTSIDE_EM.max(plate) } else { 0.0 };
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
        let fits = place.within(Point::ZERO, edge) && sketch.is_free(&place);
        fits.then(|| sketch.hidden_in_all(&place))
    };
    let costs = choices.map(|choice| cost(&choice).map(|cost| (cost, choice)));
    let clear = costs.iter().flatten().find(|(cost, _)| *cost < HIDDEN_EM2);
    let least = costs.iter().flatten().min_by(|a, b| a.0.total_cmp(&b.0));
    let bearable = least.filter(|(cost, _)| lit || *cost < BEARABLE_EM2);
    clear.or(bearable).map(|(_, choice)| *choice)
}

/// A dimension line between two points: arrows inside where there is room, outside where not.
pub(super) fn draw_span(sketch: &mut Sketch, id: Id, from: Point, to: Point) {
    const ROOM_EM: f64 = 1.5;
    let way = (to - from).normalize_or(Point::Y);
    let layer = Layer::Dimensions;
    if from.distance(to) >= ROOM_EM {
        sketch.line(id, layer, Role::Dimension, from, to);
        sketch.arrow(id, layer, to, way);
        sketch.arrow(id, layer, from, -way);
    } else {
        sketch.line(id, layer, Role::Dimension, from - OUTSIDE_EM * way, to + OUTSIDE_EM * way);
        sketch.arrow(id, layer, to, -way);
        sketch.arrow(id, layer, from, way);
    }
}

/// The angle between two directions from a corner, as an arc with arrows; `false` where it is too
/// small to see.
fn draw_angle(sketch: &mut Sketch, id: Id, corner: Point, radius: f64, turns: (f64, f64)) -> bool {
    const LEAST_EM: f64 = 0.6;
    let (start_rad, sweep_rad) = (turns.0, turns.1 - turns.0);
    let length = radius * sweep_rad.abs();
    if length < LEAST_EM {
        return false;
    }
    let arc = Arc { centre: corner, radius, start_rad, sweep_rad };
    let steps = [Step::Move(arc.start()), Step::Arc(arc)];
    sketch.path(id, Layer::Dimensions, Role::Dimension, &steps);
    let out = sweep_rad.signum() * (arc.end() - corner).perp().normalize_or_zero();
    sketch.arrow(id, Layer::Dimensions, arc.end(), out);
    true
}

/// The body whose axis shows how far the chain has come, how far along it that axis goes, and the
/// true angle.
fn totalled(staged: &Staged) -> (Body, f64, f64) {
    let s = staged.drawing.chain().sizes();
    let moved = &staged.posed.moved;
    match staged.staging.mode {
        Mode::Lean => (Body::InnerFar, s.pitch_mm, moved.first_rad),
        _ => (Body::NextOuter, break_mm(s, Link::OuterToRight), moved.total_rad),
    }
}

/// How far the next outer link has turned in all, or how far it has gone aside without turning: an
/// arc or a dimension line just past the break, from the straight axis to the link's own.
fn draw_total(sketch: &mut Sketch, staged: &Staged) {
    const TURNED_RAD: f64 = 1e-6;
    const PAST_EM: f64 = 1.1;
    let plan = staged.drawing.layout().plan();
    let (body, reach, turned) = totalled(staged);
    let place = staged.posed.plan.of(body);
    let to = plan.projection().of_body(place);
    let past = if staged.drawing.layout().sheet.narrow { -0.5 * PAST_EM } else { PAST_EM };
    let reach = reach + past / plan.em_per_mm;
    let own = [Step::Move(Point::ZERO), Step::Line(Point::new(reach, 0.0))];
    let end = to.point(Point::new(reach, 0.0));
    let id = Id::Dimension("total");
    sketch.carry((id, Layer::Centre, Role::CentreLine), &own, &to);
    let level = Point::new(end.x, plan.origin.y);
    if turned.abs() > TURNED_RAD {
        let run = (end.y - level.y) / libm::tan(-place.yaw_rad);
        let corner = level - Point::new(run, 0.0);
        draw_angle(sketch, id, corner, run, (0.0, -place.yaw_rad));
        write_total(sketch, staged, turned, end);
    } else if (end.y - level.y).abs() > NARROWEST_EM {
        draw_span(sketch, id, level, end);
        write_total(sketch, staged, turned, end);
    }
}

/// The number of the total, to the right of the drawing; on a narrow sheet in its upper corner.
fn write_total(sketch: &mut Sketch, staged: &Staged, turned: f64, end: Point) {
    const LINE_EM: f64 = 1.15;
    const LETTER_EM: f64 = 3.1;
    let layout = staged.drawing.layout();
    let (plan, lexicon) = (layout.plan(), staged.lexicon);
    let aside = staged.staging.mode == Mode::Aside;
    let write = |out: &mut String| {
        if aside {
            lexicon.write_length(out, staged.posed.moved.offset_mm.abs());
        } else {
            lexicon.write_angle(out, turned.abs());
        }
    };
    let id = Id::Dimension("total");
    let figure = (id, Layer::Dimensions, Role::Figure);
    if layout.sheet.narrow {
        let caption = layout.captions[0];
        let at = Point::new(layout.sheet.width_em - ASIDE_EM, caption.y);
        sketch.text(figure, at, (Align::End, Size::Strong), write);
        return;
    }
    let (_, right) = layout.cuts_em();
    let y = if end.y <= plan.origin.y {
        (0.5 * (plan.origin.y + end.y)).min(plan.origin.y - 0.5 * LETTER_EM)
    } else {
        (0.5 * (plan.origin.y + end.y)).max(plan.origin.y + LETTER_EM)
    };
    let word = lexicon.word(match staged.staging.mode {
        Mode::Aside => "draw.total.aside",
        Mode::Lean => "draw.total.lean",
        _ => "draw.total.turn",
    });
    let most = layout.sheet.width_em - width_em(word, Size::Small) - ASIDE_EM;
    let at = Point::new(right.max(end.x + 2.0 * ASIDE_EM).min(most), y);
    sketch.text(figure, at, (Align::Start, Size::Strong), write);
    let what = (id, Layer::Dimensions, Role::Note);
    let below = at + Point::new(0.0, LINE_EM);
    sketch.text(what, below, (Align::Start, Size::Small), |out| out.push_str(word));
}

/// The fold of the joints, seen from the side.
fn draw_fold(sketch: &mut Sketch, staged: &Staged) {
    /// Where along the link the arc stands, as a share of its length.
    const ALONG: f64 = 0.6;
    let Some(placed) = staged.drawing.layout().view(View::Elevation) else { return };
    let next = staged.posed.side.of(Body::NextOuter);
    let corner = placed.projection().point(next.origin());
    let reach = break_mm(staged.drawing.chain().sizes(), Link::OuterToRight);
    let radius = ALONG * reach * placed.em_per_mm;
    let id = Id::Dimension("fold");
    let level = [Step::Move(corner), Step::Line(corner + Point::new(radius + ASIDE_EM, 0.0))];
    sketch.path(id, Layer::Centre, Role::Axis, &level);
    let to = placed.projection().of_body(next);
    let own = [Step::Move(Point::ZERO), Step::Line(Point::new(reach, 0.0))];
    sketch.carry((id, Layer::Centre, Role::CentreLine), &own, &to);
    if draw_angle(sketch, id, corner, radius, (0.0, -next.yaw_rad)) {
        let up = if next.yaw_rad > 0.0 { 1.0 } else { -1.0 };
        let over = |share: f64, em: f64| {
            corner + Point::new(share * radius, up * (em + HALF_FIGURE_EM) + HALF_FIGURE_EM)
        };
        let places = [over(ALONG, ASIDE_EM), over(0.0, ASIDE_EM), over(1.0, 2.0), over(0.0, 3.0)];
        write_angle(sketch, staged, id, (&places, Align::Start), staged.posed.moved.fold_rad);
    }
}

/// The twist of the inner link, seen along the chain; its number stands beside the grip.
fn draw_twist(sketch: &mut Sketch, staged: &Staged) {
    let Some(placed) = staged.drawing.layout().view(View::End) else { return };
    let s = staged.drawing.chain().sizes();
    let inner = staged.posed.across.of(Body::InnerFar);
    let corner = placed.projection().point(inner.origin());
    let reach = 0.5 * s.inner_plate_height_mm;
    /// How far the grip stands over the plate and its arrows beside it, em.
    const GRIP_UP_EM: f64 = 1.8;
    const WAY_EM: f64 = 2.2;
    let id = Id::Dimension("twist");
    let up = [Step::Move(Point::new(0.0, -reach)), Step::Line(Point::new(0.0, reach))];
    let still = placed.projection();
    sketch.carry((id, Layer::Centre, Role::Axis), &up, &still);
    sketch.carry((id, Layer::Centre, Role::CentreLine), &up, &still.of_body(inner));
    let quarter = -core::f64::consts::FRAC_PI_2;
    let radius = reach * placed.em_per_mm;
    draw_angle(sketch, id, corner, radius, (quarter, quarter - inner.yaw_rad));
    let aside = sketch.scene.grips.first().map_or(ASIDE_EM, |grip| 1.3 * grip.radius_em + WAY_EM);
    let top = corner.y - radius - GRIP_UP_EM;
    let at = Point::new(corner.x + aside, top);
    write_angle(sketch, staged, id, (&[at], Align::Start), staged.posed.moved.twist_rad);
}

/// The number of an angle, at the first of some places that is free.
fn write_angle(
    sketch: &mut Sketch,
    staged: &Staged,
    id: Id,
    (places, align): (&[Point], Align),
    rad: f64,
) {
    let mut number = String::new();
    staged.lexicon.write_angle(&mut number, rad.abs());
    let at = sketch.first_free(places, (align, Size::Strong), &number);
    let what = (id, Layer::Dimensions, Role::Figure);
    sketch.text(what, at, (align, Size::Strong), |out| out.push_str(&number));
}
