//! What a straight bristle touches.

use super::hull::Hull;
use crate::plane::Point;

/// Metal as a straight, stiff bristle of one diameter meets it. The bristle is a round-ended strip that
/// comes from outside, from any direction of the section, without touching anything but at its tip's
/// side. Bending, splaying and many bristles at once are left out.
pub struct Straight<'a> {
    hulls: &'a [Hull],
    radius_mm: f64,
    blocked: Vec<(f64, f64)>,
}

/// Once round in the measure of [`round`].
const WHOLE: f64 = 4.0;
/// A way in that is narrower than this, in the same measure, is none.
const NARROWEST: f64 = 1e-9;

impl<'a> Straight<'a> {
    /// The metal, and the bristle's diameter, mm.
    pub fn new(hulls: &'a [Hull], diameter_mm: f64) -> Self {
        Self { hulls, radius_mm: 0.5 * diameter_mm, blocked: Vec::new() }
    }

    /// Whether the bristle can stand with the middle of its round end at a point that is clear of all
    /// metal: each piece hides the directions between its two tangents, and one must be left over.
    pub fn reaches(&mut self, tip: Point) -> bool {
        self.blocked.clear();
        for hull in self.hulls {
            let (from, to) = hidden(hull, self.radius_mm, tip);
            if from <= to {
                self.blocked.push((from, to));
            } else {
                self.blocked.extend([(from, WHOLE), (0.0, to)]);
            }
        }
        self.blocked.sort_unstable_by(|one, other| one.0.total_cmp(&other.0));
        let mut covered = 0.0;
        for &(from, to) in &self.blocked {
            if from > covered + NARROWEST {
                return true;
            }
            covered = f64::max(covered, to);
        }
        covered < WHOLE - NARROWEST
    }
}

/// The directions from a point, anticlockwise from the first to the second, in which a bristle would
/// run into a piece: between the tangents at its corners, grown by the bristle's radius.
fn hidden(hull: &Hull, radius_mm: f64, tip: Point) -> (f64, f64) {
    let grown_mm = hull.radius_mm() + radius_mm;
    // The piece lies on the far side of its nearest point, so no tangent is more than a quarter turn
    // away from the way there.
    let ahead = hull.nearest(tip).0 - tip;
    let aside = |way: Point| {
        let across = ahead.perp_dot(way);
        across / (across.abs() + ahead.dot(way).max(0.0))
    };
    let (mut right, mut left) = ((f64::INFINITY, ahead), (f64::NEG_INFINITY, ahead));
    for corner in hull.points() {
        let way = *corner - tip;
        let free = (way.length_squared() - grown_mm * grown_mm).max(0.0).sqrt();
        let turned = Point::new(-way.y, way.x) * grown_mm;
        let (to_left, to_right) = (way * free + turned, way * free - turned);
        if aside(to_left) > left.0 {
            left = (aside(to_left), to_left);
        }
        if aside(to_right) < right.0 {
            right = (aside(to_right), to_right);
        }
    }
    (round(right.1), round(left.1))
}

/// A direction as a number that grows from 0 to 4 anticlockwise, a quarter turn each: cheaper than an
/// angle, and as good for putting directions in order.
fn round(way: Point) -> f64 {
    let size = way.x.abs() + way.y.abs();
    let share = if size > 0.0 { way.x / size } else { 0.0 };
    if way.y >= 0.0 { 1.0 - share } else { 3.0 + share }
}
