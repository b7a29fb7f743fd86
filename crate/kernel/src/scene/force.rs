//! Forces: arrows of one scale at the places where faces press, and the load that they carry.
//!
//! Every arrow at a contact is the push on the inner link, its tip on the touching place; the other
//! part is pushed as hard the other way. They cancel, and so does the load with what the held link
//! gives back.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::mark::Spot;
use super::role::Role;
use super::sketch::{Patch, Sketch};
use crate::chain::outline::{Link, break_mm};
use crate::contact::Body;
use crate::decimal;
use crate::plane::{Arc, Point, Step};
use crate::posing::Mode;

/// The longest arrow on a wide and on a narrow sheet, em.
const LONGEST_EM: f64 = 5.0;
const LONGEST_NARROW_EM: f64 = 3.4;
/// The number of a push on the inner link whose arrow is shorter than this is left to the list, em.
const NUMBERED_EM: f64 = 0.8;
/// A force that would be shorter than this has no arrow, em.
const SHORTEST_EM: f64 = 0.25;
/// A share of the largest force below which one is not drawn.
const LEAST_SHARE: f64 = 1e-3;

/// The arrows of all forces with their numbers, and the scale they are drawn to.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged, spots: &[Option<Spot>]) {
    let Some(posing) = staged.staging.posing.filter(|_| staged.staging.mode == Mode::Load) else {
        return;
    };
    let share = posing.share(Mode::Load);
    let pull_n = share * Point::new(posing.pulls().tension_n, posing.pulls().side_n);
    let states = staged.posed.contacts.iter();
    let most_n = states.map(|s| s.push_n.length()).fold(pull_n.abs().max_element(), f64::max);
    if most_n <= 0.0 {
        return;
    }
    let narrow = staged.drawing.layout().sheet.narrow;
    let longest_em = if narrow { LONGEST_NARROW_EM } else { LONGEST_EM };
    let em_per_n = longest_em / most_n;
    draw_load(sketch, staged, pull_n, em_per_n);
    draw_moment(sketch, staged, share * posing.pulls().moment_n_mm);
    for (state, spot) in staged.posed.contacts.iter().zip(spots) {
        let size_n = state.push_n.length();
        if let Some(spot) = spot.as_ref().filter(|_| size_n > LEAST_SHARE * most_n) {
            let way = Point::new(state.push_n.x, -state.push_n.y) / size_n;
            let tail = spot.at - em_per_n * size_n * way;
            draw_force(sketch, staged, Id::Contact(state.contact), (tail, spot.at), size_n);
        }
    }
    draw_scale(sketch, staged, longest_em, em_per_n);
}

/// An arrow with its number near its tail, or where it is clear; a short push has no number.
fn draw_force(
    sketch: &mut Sketch,
    staged: &Staged,
    id: Id,
    (tail, tip): (Point, Point),
    size_n: f64,
) {
    draw_arrow(sketch, id, tail, tip);
    if tail.distance(tip) >= NUMBERED_EM || id == Id::Mark("load") {
        let mut number = String::new();
        write_force(&mut number, staged, size_n);
        write_number(sketch, id, (tail, tip), &number);
    }
}

/// A number on a patch of sheet that keeps edges and section lines off it.
fn write_number(sketch: &mut Sketch, id: Id, arrow: (Point, Point), number: &str) {
    let Some((at, align)) = place_for(sketch, arrow, number) else { return };
    let Patch { low, high } = Patch::of_text(at, align, Size::SmallStrong, number);
    let corners = [low, Point::new(high.x, low.y), high, Point::new(low.x, high.y)];
    sketch.polygon(id, Layer::Forces, Role::Patch, &corners);
    let what = (id, Layer::Forces, Role::Figure);
    sketch.text(what, at, (align, Size::SmallStrong), |out| out.push_str(number));
}

fn draw_arrow(sketch: &mut Sketch, id: Id, tail: Point, tip: Point) {
    const HEAD_EM: f64 = 0.95;
    const HALF_HEAD_EM: f64 = 0.34;
    let length = tail.distance(tip);
    if length < SHORTEST_EM {
        return;
    }
    let way = (tip - tail) / length;
    let head = HEAD_EM.min(0.7 * length);
    let (neck, side) = (tip - head * way, HALF_HEAD_EM.min(0.5 * head) * way.perp());
    sketch.line(id, Layer::Forces, Role::Force, tail, neck);
    sketch.polygon(id, Layer::Forces, Role::ForceHead, &[tip, neck + side, neck - side]);
    sketch.keep_off(tail, tip);
}

/// The free place of a number that hides least: past the tail, or beside the shaft.
fn place_for(sketch: &Sketch, (tail, tip): (Point, Point), number: &str) -> Option<(Point, Align)> {
    const ASIDE_EM: f64 = 0.45;
    const HALF_FIGURE_EM: f64 = 0.31;
    /// From a level shaft to the middle of a number over or under it.
    const OVER_EM: f64 = 0.85;
    let way = (tip - tail).normalize_or(Point::X);
    let down = Point::new(0.0, HALF_FIGURE_EM);
    let sheet = Point::new(sketch.scene.sheet.width_em, sketch.scene.sheet.height_em);
    let past = match way {
        way if way.x.abs() < way.y.abs() => (tail - OVER_EM * way + down, Align::Middle),
        way if way.x > 0.0 => (tail - ASIDE_EM * way + down, Align::End),
        way => (tail - ASIDE_EM * way + down, Align::Start),
    };
    let mut choices = vec![past];
    for share in [0.25, 0.5, 0.0, 0.75] {
        let on = tail.lerp(tip, share);
        for side in [-1.0, 1.0] {
            let (over, beside) =
                (Point::new(0.0, side * OVER_EM), Point::new(side * ASIDE_EM, 0.0));
            choices.push((on + over + down, Align::Middle));
            let align = if side < 0.0 { Align::End } else { Align::Start };
            choices.push((on + beside + down, align));
        }
    }
    let cost = |&(at, align): &(Point, Align)| {
        let place = Patch::of_text(at, align, Size::SmallStrong, number);
        let free = place.within(Point::ZERO, sheet) && sketch.is_free(&place);
        free.then(|| sketch.hidden(&place))
    };
    let priced = choices.iter().filter_map(|choice| Some((cost(choice)?, *choice)));
    priced.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, choice)| choice)
}

/// The load: the pull outwards from past the break of the next outer link, the side force along
/// its pin, up to the end that it pulls at.
fn draw_load(sketch: &mut Sketch, staged: &Staged, pull_n: Point, em_per_n: f64) {
    const PAST_EM: f64 = 0.4;
    const PAST_CUT_EM: f64 = 1.0;
    let layout = staged.drawing.layout();
    let next = staged.bodies_on_sheet(layout.plan())[Body::NextOuter.index()];
    let s = staged.drawing.chain().sizes();
    let id = Id::Mark("load");
    if pull_n.x != 0.0 {
        let length = em_per_n * pull_n.x.abs();
        let end = next.point(Point::new(break_mm(s, Link::OuterToRight), 0.0));
        let from = (end.x + PAST_EM).max(layout.cuts_em().1 + PAST_CUT_EM);
        let x = from.min(layout.plan().high.x - PAST_EM - length);
        let tail = Point::new(x, end.y);
        draw_force(sketch, staged, id, (tail, tail + Point::new(length, 0.0)), pull_n.x);
    }
    if pull_n.y != 0.0 {
        let up = Point::new(0.0, -pull_n.y.signum());
        let pin_end = next.point(Point::new(0.0, 0.5 * pull_n.y.signum() * s.pin_length_mm));
        let tip = pin_end - PAST_EM * up;
        let tail = tip - em_per_n * pull_n.y.abs() * up;
        draw_force(sketch, staged, id, (tail, tip), pull_n.y.abs());
    }
}

/// The moment of the load, as a curved arrow round the pin of the next outer link; its length says
/// nothing, its number does.
fn draw_moment(sketch: &mut Sketch, staged: &Staged, moment_n_mm: f64) {
    const RADIUS_EM: f64 = 2.4;
    const START_RAD: f64 = -0.6;
    const SWEEP_RAD: f64 = 1.9;
    const HEAD_EM: f64 = 0.95;
    if moment_n_mm == 0.0 {
        return;
    }
    let plan = staged.drawing.layout().plan();
    let centre = staged.bodies_on_sheet(plan)[Body::NextOuter.index()].point(Point::ZERO);
    let sign = -moment_n_mm.signum(); // anticlockwise in the section is against a sheet's angles
    let (start_rad, sweep_rad) = (sign * START_RAD, sign * SWEEP_RAD);
    let arc = Arc { centre, radius: RADIUS_EM, start_rad, sweep_rad };
    let id = Id::Mark("load");
    let steps = [Step::Move(arc.start()), Step::Arc(arc)];
    sketch.path(id, Layer::Forces, Role::Force, &steps);
    let way = sign * (arc.end() - centre).perp() / RADIUS_EM;
    let (tip, side) = (arc.end() + HEAD_EM * way, 0.34 * way.perp());
    sketch.polygon(id, Layer::Forces, Role::ForceHead, &[tip, arc.end() + side, arc.end() - side]);
    let mut number = String::new();
    decimal::write(&mut number, moment_n_mm.abs(), 0, staged.lexicon.separator);
    number.push(' ');
    number.push_str(staged.lexicon.word("unit.newton_mm"));
    write_number(sketch, id, (tip, arc.end()), &number);
}

/// An arrow of a round force in the upper corner: the scale of all the others.
fn draw_scale(sketch: &mut Sketch, staged: &Staged, longest_em: f64, em_per_n: f64) {
    const EDGE_EM: f64 = 0.45;
    let layout = staged.drawing.layout();
    let round_n = super::naming::round_below(longest_em / em_per_n);
    let what = (Id::Mark("force-scale"), Layer::Forces, Role::Figure);
    let at = Point::new(layout.sheet.width_em - EDGE_EM, layout.captions[0].y);
    let place = sketch.text(what, at, (Align::End, Size::Small), |out| {
        write_force(out, staged, round_n);
    });
    let tip = Point::new(place.low.x - EDGE_EM, 0.5 * (place.low.y + place.high.y));
    draw_arrow(sketch, Id::Mark("force-scale"), tip - Point::new(em_per_n * round_n, 0.0), tip);
}

/// Whole newtons; below ten with a tenth.
fn write_force(out: &mut String, staged: &Staged, size_n: f64) {
    const FEW_N: f64 = 9.95;
    let decimals = if size_n < FEW_N { 1 } else { 0 };
    decimal::write(out, size_n, decimals, staged.lexicon.separator);
    out.push(' ');
    out.push_str(staged.lexicon.word("unit.newton"));
}
