//! Area of a path, and section lines clipped to it.

use super::{Arc, Point, Step, put_in_order};

/// One edge of a path.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Edge {
    Line(Point, Point),
    Arc(Arc),
}

/// Calls `each` for every edge of the path; loops that are left open are closed by a straight edge,
/// as filling does.
fn edges(steps: &[Step], mut each: impl FnMut(Edge)) {
    let (mut first, mut pen) = (Point::ZERO, Point::ZERO);
    for &step in steps {
        match step {
            Step::Move(to) => {
                each(Edge::Line(pen, first));
                (first, pen) = (to, to);
            }
            Step::Line(to) => {
                each(Edge::Line(pen, to));
                pen = to;
            }
            Step::Arc(arc) => {
                each(Edge::Arc(arc));
                pen = arc.end();
            }
            Step::Close => {
                each(Edge::Line(pen, first));
                pen = first;
            }
        }
    }
    each(Edge::Line(pen, first));
}

/// The signed area of a path: positive where its loops run from the first axis to the second. Open
/// loops count as closed by a straight line.
///
/// By Green's theorem half the sum of the integrals of x dy - y dx; on an arc about (u, v) with
/// radius r that is r^2 sweep + u (y1 - y0) - v (x1 - x0).
pub fn area(steps: &[Step]) -> f64 {
    let mut twice = 0.0;
    edges(steps, |edge| match edge {
        Edge::Line(a, b) => twice += a.perp_dot(b),
        Edge::Arc(arc) => {
            let chord = arc.end() - arc.start();
            twice += arc.radius * arc.radius * arc.sweep_rad + arc.centre.perp_dot(chord);
        }
    });
    0.5 * twice
}

/// The corners of the smallest upright rectangle that holds a path; `None` without steps.
pub fn bounds(steps: &[Step]) -> Option<(Point, Point)> {
    const QUARTERS: i32 = 4;
    let mut found: Option<(Point, Point)> = None;
    let mut add = |p: Point| {
        let (low, high) = found.unwrap_or((p, p));
        found = Some((low.min(p), high.max(p)));
    };
    for &step in steps {
        match step {
            Step::Move(p) | Step::Line(p) => add(p),
            Step::Close => {}
            Step::Arc(arc) => {
                add(arc.start());
                add(arc.end());
                let from = arc.start_rad.min(arc.start_rad + arc.sweep_rad);
                let first = libm::ceil(from / core::f64::consts::FRAC_PI_2);
                for quarter in 0..QUARTERS {
                    let turn = (first + f64::from(quarter)) * core::f64::consts::FRAC_PI_2;
                    if turn <= from + arc.sweep_rad.abs() {
                        add(arc.at(turn));
                    }
                }
            }
        }
    }
    found
}

/// A family of parallel section lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hatch {
    /// Direction of the lines, rad from the first axis.
    pub along_rad: f64,
    /// Distance between neighbours.
    pub pitch: f64,
}

/// Where a line of the family crosses the path: which line, and how far along it.
type Crossing = (i32, f64);

impl Hatch {
    /// The family's lines clipped to a path by the even-odd rule: pairs of Move and Line.
    pub fn clip(&self, steps: &[Step]) -> Vec<Step> {
        self.clip_between(steps, f64::NEG_INFINITY, f64::INFINITY)
    }

    /// The same for the lines that pass within `reach` of a point.
    pub fn clip_near(&self, steps: &[Step], centre: Point, reach: f64) -> Vec<Step> {
        let across = self.across().dot(centre);
        self.clip_between(steps, across - reach, across + reach)
    }

    fn along(&self) -> Point {
        let (sin, cos) = libm::sincos(self.along_rad);
        Point::new(cos, sin)
    }

    fn across(&self) -> Point {
        let along = self.along();
        Point::new(-along.y, along.x)
    }

    fn clip_between(&self, steps: &[Step], low: f64, high: f64) -> Vec<Step> {
        let mut crossings: Vec<Crossing> = Vec::new();
        edges(steps, |edge| match edge {
            Edge::Line(a, b) => self.cross_line((a, b), (low, high), &mut crossings),
            Edge::Arc(arc) => self.cross_arc(arc, (low, high), &mut crossings),
        });
        put_in_order(&mut crossings, &mut |a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).is_lt());
        let point = |(k, u): Crossing| self.along() * u + self.across() * self.level(k);
        let mut lines = Vec::with_capacity(crossings.len());
        for line in crossings.chunk_by(|a, b| a.0 == b.0) {
            if line.len() % 2 == 0 {
                for pair in line.chunks_exact(2) {
                    lines.extend([Step::Move(point(pair[0])), Step::Line(point(pair[1]))]);
                }
            }
        }
        lines
    }

    /// How far across a line of the family lies. A line never passes through the origin, where
    /// symmetric parts have their corners.
    fn level(&self, k: i32) -> f64 {
        /// Share of the pitch by which the family is shifted.
        const SHIFT: f64 = 0.437_215;
        (f64::from(k) + SHIFT) * self.pitch
    }

    /// Calls `each` for the lines with `from` <= level < `to`, either way round, inside a band.
    fn levels(&self, ends: (f64, f64), band: (f64, f64), mut each: impl FnMut(i32)) {
        let low = ends.0.min(ends.1).max(band.0);
        let high = ends.0.max(ends.1).min(band.1);
        let shift = self.level(0) / self.pitch;
        let mut k = libm::floor(low / self.pitch - shift) as i32 - 1;
        while self.level(k) < low {
            k += 1;
        }
        while self.level(k) < high {
            each(k);
            k += 1;
        }
    }

    fn cross_line(&self, (a, b): (Point, Point), band: (f64, f64), out: &mut Vec<Crossing>) {
        let (along, across) = (self.along(), self.across());
        let (v0, v1) = (across.dot(a), across.dot(b));
        let (u0, u1) = (along.dot(a), along.dot(b));
        self.levels((v0, v1), band, |k| {
            let share = (self.level(k) - v0) / (v1 - v0);
            out.push((k, u0 + share * (u1 - u0)));
        });
    }

    /// An arc is crossed in each of its rising and falling stretches at most once by a line.
    fn cross_arc(&self, arc: Arc, band: (f64, f64), out: &mut Vec<Crossing>) {
        use core::f64::consts::{FRAC_PI_2, PI};
        let (u, v) = (self.along().dot(arc.centre), self.across().dot(arc.centre));
        let (from, to) = (arc.start_rad, arc.start_rad + arc.sweep_rad);
        let (mut low, high) = (from.min(to) - self.along_rad, from.max(to) - self.along_rad);
        while low < high {
            let stretch = libm::floor((low + FRAC_PI_2) / PI);
            let end = (stretch * PI + FRAC_PI_2).min(high);
            let side = if stretch.rem_euclid(2.0) < 0.5 { 1.0 } else { -1.0 };
            let height = |turn: f64| v + arc.radius * libm::sin(turn);
            self.levels((height(low), height(end)), band, |k| {
                let rise = (self.level(k) - v) / arc.radius;
                let reach = arc.radius * (1.0 - rise * rise).max(0.0).sqrt();
                out.push((k, u + side * reach));
            });
            if end <= low {
                break;
            }
            low = end;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Pen;
    use super::*;

    fn ring() -> Vec<Step> {
        let mut pen = Pen::new();
        pen.circle((1.0, 2.0), 3.0).circle((1.0, 2.0), 2.0);
        pen.steps
    }

    #[test]
    fn the_area_of_a_half_disc_and_of_a_square() {
        let mut pen = Pen::new();
        pen.go(2.0, 0.0).arc((0.0, 0.0), 2.0, 0.0, core::f64::consts::PI).close();
        assert!((area(&pen.steps) - 2.0 * core::f64::consts::PI).abs() < 1e-14);
        let mut square = Pen::new();
        square.rectangle((5.0, 5.0), (6.0, 6.0));
        assert!((area(&square.steps) - 1.0).abs() < 1e-13);
    }

    #[test]
    fn bounds_hold_the_round_of_an_arc() {
        let mut pen = Pen::new();
        pen.go(2.0, 0.0).arc((0.0, 0.0), 2.0, 0.0, core::f64::consts::PI).close();
        let (low, high) = bounds(&pen.steps).unwrap();
        assert!((low - Point::new(-2.0, 0.0)).length() < 1e-14);
        assert!((high - Point::new(2.0, 2.0)).length() < 1e-14);
    }

    #[test]
    fn section_lines_fill_a_ring_and_keep_out_of_its_hole() {
        let hatch = Hatch { along_rad: 0.6, pitch: 0.01 };
        let lines = hatch.clip(&ring());
        let mut covered = 0.0;
        for pair in lines.chunks_exact(2) {
            let (Step::Move(a), Step::Line(b)) = (pair[0], pair[1]) else { unreachable!() };
            let middle = (0.5 * (a + b) - Point::new(1.0, 2.0)).length();
            assert!(middle > 2.0 - 1e-9 && middle < 3.0);
            covered += (b - a).length() * hatch.pitch;
        }
        let metal = core::f64::consts::PI * (9.0 - 4.0);
        assert!((covered / metal - 1.0).abs() < 1e-3, "{covered} of {metal}");
    }

    #[test]
    fn lines_near_a_point_are_the_lines_that_pass_there() {
        let hatch = Hatch { along_rad: 0.6, pitch: 0.1 };
        let (all, near) =
            (hatch.clip(&ring()), hatch.clip_near(&ring(), Point::new(1.0, 4.5), 0.3));
        assert!(!near.is_empty() && near.len() < all.len());
        assert!(near.iter().all(|step| all.contains(step)));
    }
}
