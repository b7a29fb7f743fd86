//! Paths of straight lines and circular arcs, and how they are carried from one plane to another.

use super::Point;

/// One step of a path. A path is any number of loops; each begins with [`Step::Move`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Step {
    /// Lifts the pen and puts it down here.
    Move(Point),
    /// A straight line from where the pen is.
    Line(Point),
    /// A circular arc that begins where the pen is.
    Arc(Arc),
    /// A straight line back to the last [`Step::Move`]; the loop is closed.
    Close,
}

/// An arc of a circle, from an angle through a sweep. Angles are measured from the first axis
/// towards the second: anticlockwise where the second points up, clockwise where it points down.
/// A sweep of a whole turn is a circle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius, in the unit of the points.
    pub radius: f64,
    /// Where the arc begins, rad.
    pub start_rad: f64,
    /// How far it goes, rad, signed, at most a whole turn.
    pub sweep_rad: f64,
}

impl Arc {
    /// The point of the circle at an angle.
    pub fn at(&self, angle_rad: f64) -> Point {
        let (sin, cos) = libm::sincos(angle_rad);
        self.centre + self.radius * Point::new(cos, sin)
    }

    /// Where the arc begins.
    pub fn start(&self) -> Point {
        self.at(self.start_rad)
    }

    /// Where the arc ends.
    pub fn end(&self) -> Point {
        self.at(self.end_rad())
    }

    /// The angle at which the arc ends, rad.
    pub fn end_rad(&self) -> f64 {
        self.start_rad + self.sweep_rad
    }
}

/// How a plane is laid on another: turned, made larger or smaller, moved, and mirrored where the
/// second axis of the one points up and that of the other down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Projection {
    /// Where the origin goes.
    pub origin: Point,
    /// How many units of the second plane one unit of the first becomes.
    pub scale: f64,
    /// Rotation in the first plane, rad, before mirroring.
    pub turn_rad: f64,
    /// Whether the second axis is mirrored.
    pub mirrored: bool,
    sin: f64,
    cos: f64,
}

impl Projection {
    /// A projection from its numbers.
    pub fn new(origin: Point, scale: f64, turn_rad: f64, mirrored: bool) -> Self {
        let (sin, cos) = libm::sincos(turn_rad);
        Self { origin, scale, turn_rad, mirrored, sin, cos }
    }

    /// Where a point goes.
    pub fn point(&self, p: Point) -> Point {
        let turned = Point::new(self.cos * p.x - self.sin * p.y, self.sin * p.x + self.cos * p.y);
        self.origin + self.scale * self.mirror(turned)
    }

    /// Where a point comes from.
    pub fn inverse(&self, p: Point) -> Point {
        let turned = self.mirror(p - self.origin) / self.scale;
        Point::new(
            self.cos * turned.x + self.sin * turned.y,
            self.cos * turned.y - self.sin * turned.x,
        )
    }

    /// Where a step goes.
    pub fn step(&self, step: Step) -> Step {
        match step {
            Step::Move(p) => Step::Move(self.point(p)),
            Step::Line(p) => Step::Line(self.point(p)),
            Step::Arc(arc) => Step::Arc(self.arc(arc)),
            Step::Close => Step::Close,
        }
    }

    /// This projection after a further placement inside the first plane: a body's own axes, then
    /// the drawing's.
    #[must_use]
    pub fn of_body(&self, place: &super::Placement) -> Self {
        let turn_rad = self.turn_rad + place.yaw_rad;
        Self::new(self.point(place.origin()), self.scale, turn_rad, self.mirrored)
    }

    fn arc(&self, arc: Arc) -> Arc {
        let sense = if self.mirrored { -1.0 } else { 1.0 };
        Arc {
            centre: self.point(arc.centre),
            radius: self.scale * arc.radius,
            start_rad: sense * (arc.start_rad + self.turn_rad),
            sweep_rad: sense * arc.sweep_rad,
        }
    }

    fn mirror(&self, p: Point) -> Point {
        if self.mirrored { Point::new(p.x, -p.y) } else { p }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Placement;
    use super::*;

    /// Rounding of a few multiplications of numbers of the order of 10.
    const ROUNDING: f64 = 1e-13;

    #[test]
    fn a_mirrored_arc_still_begins_and_ends_at_its_points() {
        let projection = Projection::new(Point::new(3.0, 5.0), 2.5, 0.4, true);
        let centre = Point::new(-1.0, 2.0);
        let arc = Arc { centre, radius: 0.7, start_rad: 0.3, sweep_rad: -1.9 };
        let Step::Arc(carried) = projection.step(Step::Arc(arc)) else { unreachable!() };
        assert!((carried.start() - projection.point(arc.start())).length() < ROUNDING);
        assert!((carried.end() - projection.point(arc.end())).length() < ROUNDING);
    }

    #[test]
    fn a_projected_point_comes_back() {
        let projection = Projection::new(Point::new(3.0, 5.0), 2.5, 0.4, true);
        let point = Point::new(-7.0, 2.0);
        assert!((projection.inverse(projection.point(point)) - point).length() < ROUNDING);
    }

    #[test]
    fn a_body_projects_as_its_points_placed_first() {
        let projection = Projection::new(Point::new(3.0, 5.0), 2.5, 0.0, true);
        let place = Placement::new(1.0, -2.0, 0.3);
        let point = Point::new(0.5, 0.25);
        let two_steps = projection.point(place.outward(point));
        assert!((projection.of_body(&place).point(point) - two_steps).length() < ROUNDING);
    }
}
