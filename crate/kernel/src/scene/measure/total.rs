//! How far the chain has come in all: angles and offsets of the links.

use super::{ASIDE_EM, HALF_FIGURE_EM, NARROWEST_EM, draw_span};
use crate::chain::outline::{Link, break_mm};
use crate::contact::Body;
use crate::plane::{Arc, Point, Step};
use crate::posing::Mode;
use crate::scene::View;
use crate::scene::compose::Staged;
use crate::scene::item::{Align, Id, Layer, Size};
use crate::scene::role::Role;
use crate::scene::sketch::{Patch, Sketch, width_em};

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
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
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

/// The number of the total and what it is of: to the right of the drawing, or on a narrow sheet in
/// its upper corner.
fn write_total(sketch: &mut Sketch, staged: &Staged, turned: f64, end: Point) {
    let (layout, lexicon) = (staged.drawing.layout(), staged.lexicon);
    let aside = staged.staging.mode == Mode::Aside;
    let word = lexicon.word(match staged.staging.mode {
        Mode::Aside => "draw.total.aside",
        Mode::Lean => "draw.total.lean",
        _ => "draw.total.turn",
    });
    let (at, align) = if layout.sheet.narrow {
        (Point::new(layout.sheet.width_em - ASIDE_EM, layout.captions[0].y), Align::End)
    } else {
        (beside(staged, word, end), Align::Start)
    };
    let figure = (Id::Dimension("total"), Layer::Dimensions, Role::Figure);
    sketch.text(figure, at, (align, Size::Strong), |out| match aside {
        true => lexicon.write_length(out, staged.posed.moved.offset_mm.abs()),
        false => lexicon.write_angle(out, turned.abs()),
    });
    let (way, room_em) = match align {
        Align::Start => (LINE_EM, layout.sheet.width_em - ASIDE_EM - at.x),
        _ => (-LINE_EM, at.x - ASIDE_EM),
    };
    write_note(sketch, word, (at, align), (way, room_em));
}

/// From a number to its note, em.
const LINE_EM: f64 = 1.15;

/// Where the number of the total starts, to the right of the drawing.
fn beside(staged: &Staged, word: &str, end: Point) -> Point {
    const LETTER_EM: f64 = 3.1;
    let layout = staged.drawing.layout();
    let plan = layout.plan();
    let y = if end.y <= plan.origin.y {
        (0.5 * (plan.origin.y + end.y)).min(plan.origin.y - 0.5 * LETTER_EM)
    } else {
        (0.5 * (plan.origin.y + end.y)).max(plan.origin.y + LETTER_EM)
    };
    let widest = word.split(' ').map(|each| width_em(each, Size::Small)).fold(0.0, f64::max);
    let most = layout.sheet.width_em - widest - ASIDE_EM;
    Point::new(layout.cuts_em().1.max(end.x + 2.0 * ASIDE_EM).min(most), y)
}

/// What a total is of, under its number or on a narrow sheet over it, in as many lines as their room
/// asks for; a line that would lie on something else is left out with what follows it.
fn write_note(
    sketch: &mut Sketch,
    word: &str,
    (at, align): (Point, Align),
    (way, room_em): (f64, f64),
) {
    let what = (Id::Dimension("total"), Layer::Dimensions, Role::Note);
    let sheet = Point::new(sketch.scene.sheet.width_em, sketch.scene.sheet.height_em);
    for (i, line) in (1..).zip(lines(word, room_em)) {
        let next = at + Point::new(0.0, way * f64::from(i));
        let place = Patch::of_text(next, align, Size::Small, &line);
        let free = place.within(Point::ZERO, sheet) && sketch.is_free(&place);
        if !free || sketch.hidden_in_all(&place) > 0.0 {
            return;
        }
        sketch.text(what, next, (align, Size::Small), |out| out.push_str(&line));
    }
}

/// Words in lines that are no wider than their room, if no word is.
fn lines(words: &str, room_em: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line)
                if width_em(&[line.as_str(), " ", word].concat(), Size::Small) <= room_em =>
            {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The fold of the joints, seen from the side.
pub(super) fn draw_fold(sketch: &mut Sketch, staged: &Staged) {
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
pub(super) fn draw_twist(sketch: &mut Sketch, staged: &Staged) {
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
