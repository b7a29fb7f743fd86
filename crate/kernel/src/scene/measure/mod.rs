//! Dimension lines: the gaps that matter and how far the chain has come. The lines are drawn where
//! the drawn chain is; the numbers are the true ones.

mod gap;
mod total;

use super::compose::Staged;
use super::item::{Id, Layer};
use super::role::Role;
use super::sketch::Sketch;
use crate::plane::Point;
use crate::posing::Mode;

/// A gap narrower than this on the sheet gets no dimension line, em.
const NARROWEST_EM: f64 = 0.5;
/// Between a line and its number, em.
const ASIDE_EM: f64 = 0.45;
/// How far arrows that point at a gap from outside reach, em.
pub(super) const OUTSIDE_EM: f64 = 1.2;
/// From the middle of a number down to its line of writing, em.
const HALF_FIGURE_EM: f64 = 0.35;

/// All dimensions of the drawing.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    gap::draw(sketch, staged);
    match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => total::draw(sketch, staged),
        Mode::Bend => total::draw_fold(sketch, staged),
        Mode::Twist => total::draw_twist(sketch, staged),
        Mode::Load => {}
    }
}

/// A dimension line between two points: arrows inside where there is room, outside where not.
pub(super) fn draw_span(sketch: &mut Sketch, id: Id, from: Point, to: Point) {
    let way = (to - from).normalize_or(Point::Y);
    let layer = Layer::Dimensions;
    if arrows_stand_inside(from, to) {
        sketch.line(id, layer, Role::Dimension, from, to);
        sketch.arrow(id, layer, to, way);
        sketch.arrow(id, layer, from, -way);
    } else {
        sketch.line(id, layer, Role::Dimension, from - OUTSIDE_EM * way, to + OUTSIDE_EM * way);
        sketch.arrow(id, layer, to, -way);
        sketch.arrow(id, layer, from, way);
    }
}

/// Whether a dimension line between two points has room for its arrows.
fn arrows_stand_inside(from: Point, to: Point) -> bool {
    const ROOM_EM: f64 = 1.5;
    from.distance(to) >= ROOM_EM
}
