//! Points, placements and gaps in a plane. Nothing here knows of chains.

mod hatch;
mod order;
mod path;
mod pen;

pub use glam::DVec2 as Point;
pub use hatch::{Hatch, area, bounds};
pub use order::put_in_order;
pub use path::{Arc, Projection, Step};
pub use pen::Pen;

/// Where a rigid body stands in its plane: the body's own origin, and its yaw (anticlockwise).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placement {
    /// Origin along the first axis, mm.
    pub x_mm: f64,
    /// Origin along the second axis, mm.
    pub y_mm: f64,
    /// Rotation, rad, anticlockwise. Another one is another placement: its axes are kept with it.
    pub yaw_rad: f64,
    /// Its first axis, in the plane.
    along: Point,
}

impl Default for Placement {
    /// At the origin, not turned.
    fn default() -> Self {
        Self { x_mm: 0.0, y_mm: 0.0, yaw_rad: 0.0, along: Point::X }
    }
}

impl Placement {
    /// A placement from its three numbers.
    pub fn new(x_mm: f64, y_mm: f64, yaw_rad: f64) -> Self {
        let (sin, cos) = libm::sincos(yaw_rad);
        Self { x_mm, y_mm, yaw_rad, along: Point::new(cos, sin) }
    }

    /// Turned alike, its origin elsewhere, mm.
    #[must_use]
    pub fn moved_to(&self, x_mm: f64, y_mm: f64) -> Self {
        Self { x_mm, y_mm, ..*self }
    }

    /// This placement, turned further about its own origin.
    #[must_use]
    pub fn turned(&self, by_rad: f64) -> Self {
        Self::new(self.x_mm, self.y_mm, self.yaw_rad + by_rad)
    }

    /// The origin.
    pub fn origin(&self) -> Point {
        Point::new(self.x_mm, self.y_mm)
    }

    /// Unit vectors of the body's two axes, in the plane.
    pub fn axes(&self) -> (Point, Point) {
        (self.along, quarter_turn(self.along))
    }

    /// A direction of the body, in the plane.
    pub fn direction(&self, inside: Point) -> Point {
        let (along, across) = self.axes();
        along * inside.x + across * inside.y
    }

    /// A point of the body, in the plane.
    pub fn outward(&self, inside: Point) -> Point {
        self.origin() + self.direction(inside)
    }

    /// A point of the plane, in the body.
    pub fn inward(&self, outside: Point) -> Point {
        let (along, across) = self.axes();
        let arm = outside - self.origin();
        Point::new(arm.dot(along), arm.dot(across))
    }

    /// This body as seen from another: the placement that takes `self`'s points into `other`'s axes.
    #[must_use]
    pub fn seen_from(&self, other: &Self) -> Self {
        let origin = other.inward(self.origin());
        Self::new(origin.x, origin.y, self.yaw_rad - other.yaw_rad)
    }
}

/// A quarter turn anticlockwise.
pub fn quarter_turn(v: Point) -> Point {
    Point::new(-v.y, v.x)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of a few multiplications of numbers of the order of 10.
    const ROUNDING: f64 = 1e-14;

    #[test]
    fn a_point_goes_out_and_comes_back() {
        let place = Placement::new(3.0, -2.0, 0.7);
        let point = Point::new(1.5, 4.0);
        assert!((place.inward(place.outward(point)) - point).length() < ROUNDING);
    }

    #[test]
    fn a_quarter_turn_carries_x_to_y() {
        let place = Placement::new(0.0, 0.0, core::f64::consts::FRAC_PI_2);
        assert!((place.outward(Point::X) - Point::Y).length() < ROUNDING);
        assert_eq!(quarter_turn(Point::X), Point::Y);
    }

    #[test]
    fn a_body_seen_from_another_keeps_its_points() {
        let one = Placement::new(1.0, 2.0, 0.3);
        let other = Placement::new(-4.0, 0.5, -1.1);
        let point = Point::new(0.2, 0.9);
        let direct = other.inward(one.outward(point));
        assert!((one.seen_from(&other).outward(point) - direct).length() < ROUNDING);
    }
}
