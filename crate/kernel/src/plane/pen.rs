//! A pen that writes paths, through a mirror where that saves saying a shape twice.

use super::{Arc, Point, Step};

/// Writes steps. What is drawn at (u, v) lands at `origin` + (u or -u, v or -v), or with `swapped`
/// at `origin` + (v, u).
#[derive(Debug, Clone, PartialEq)]
pub struct Pen {
    /// What has been written.
    pub steps: Vec<Step>,
    /// Where (0, 0) lands.
    pub origin: Point,
    /// 1 or -1 for each axis, before swapping.
    pub sign: Point,
    /// Whether the axes change places.
    pub swapped: bool,
}

impl Pen {
    /// A pen without mirrors.
    pub fn new() -> Self {
        Self { steps: Vec::new(), origin: Point::ZERO, sign: Point::ONE, swapped: false }
    }

    /// The same pen, mirrored along either axis from here on: 1 or -1 each.
    pub fn mirror(&mut self, u: f64, v: f64) -> &mut Self {
        self.sign = Point::new(u, v);
        self
    }

    /// Begins a loop.
    pub fn go(&mut self, u: f64, v: f64) -> &mut Self {
        let at = self.place(u, v);
        self.steps.push(Step::Move(at));
        self
    }

    /// A straight line.
    pub fn line(&mut self, u: f64, v: f64) -> &mut Self {
        let at = self.place(u, v);
        self.steps.push(Step::Line(at));
        self
    }

    /// An arc about (u, v); it must begin where the pen is.
    pub fn arc(&mut self, (u, v): (f64, f64), radius: f64, start: f64, sweep: f64) -> &mut Self {
        use core::f64::consts::{FRAC_PI_2, PI};
        let (mut start_rad, mut sweep_rad) = (start, sweep);
        if self.sign.x < 0.0 {
            (start_rad, sweep_rad) = (PI - start_rad, -sweep_rad);
        }
        if self.sign.y < 0.0 {
            (start_rad, sweep_rad) = (-start_rad, -sweep_rad);
        }
        if self.swapped {
            (start_rad, sweep_rad) = (FRAC_PI_2 - start_rad, -sweep_rad);
        }
        let centre = self.place(u, v);
        self.steps.push(Step::Arc(Arc { centre, radius, start_rad, sweep_rad }));
        self
    }

    /// A straight line back to where the loop began.
    pub fn close(&mut self) -> &mut Self {
        self.steps.push(Step::Close);
        self
    }

    /// A closed loop of straight lines.
    pub fn polygon(&mut self, corners: &[(f64, f64)]) -> &mut Self {
        for (i, &(u, v)) in corners.iter().enumerate() {
            if i == 0 {
                self.go(u, v)
            } else {
                self.line(u, v)
            };
        }
        self.close()
    }

    /// A rectangle between two corners.
    pub fn rectangle(&mut self, (u0, v0): (f64, f64), (u1, v1): (f64, f64)) -> &mut Self {
        self.polygon(&[(u0, v0), (u1, v0), (u1, v1), (u0, v1)])
    }

    /// A whole circle.
    pub fn circle(&mut self, (u, v): (f64, f64), radius: f64) -> &mut Self {
        self.go(u + radius, v);
        self.arc((u, v), radius, 0.0, core::f64::consts::TAU).close()
    }

    fn place(&self, u: f64, v: f64) -> Point {
        let p = self.sign * Point::new(u, v);
        self.origin + if self.swapped { Point::new(p.y, p.x) } else { p }
    }
}

impl Default for Pen {
    fn default() -> Self {
        Self::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arc_in_any_mirror_begins_where_the_pen_is() {
        const ROUNDING: f64 = 1e-14;
        for (u, v, swapped) in [(1.0, 1.0, false), (-1.0, 1.0, true), (1.0, -1.0, true)] {
            let mut pen = Pen { swapped, ..Pen::new() };
            pen.mirror(u, v).go(3.0, 1.0).arc((2.0, 1.0), 1.0, 0.0, 1.2).line(0.0, 0.0);
            let [Step::Move(from), Step::Arc(arc), _] = pen.steps[..] else { unreachable!() };
            assert!((arc.start() - from).length() < ROUNDING);
            let end = Point::new(u * (2.0 + libm::cos(1.2)), v * (1.0 + libm::sin(1.2)));
            let end = if swapped { Point::new(end.y, end.x) } else { end };
            assert!((arc.end() - end).length() < ROUNDING);
        }
    }
}
