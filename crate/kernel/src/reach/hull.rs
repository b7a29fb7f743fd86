//! A convex piece of metal.

use crate::plane::Point;

/// Everything within `radius_mm` of a convex polygon (or of a segment, or of a point).
#[derive(Debug, Clone, PartialEq)]
pub struct Hull {
    /// Corners, anticlockwise.
    points: Vec<Point>,
    radius_mm: f64,
}

impl Hull {
    /// A piece from its corners in order, either way round.
    pub fn new(mut points: Vec<Point>, radius_mm: f64) -> Self {
        let next = |i: usize| points[(i + 1) % points.len()];
        let doubled: f64 = (0..points.len()).map(|i| points[i].perp_dot(next(i))).sum();
        if doubled < 0.0 {
            points.reverse();
        }
        Self { points, radius_mm }
    }

    /// The corners of the polygon.
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// How far the metal reaches past the polygon, mm.
    pub fn radius_mm(&self) -> f64 {
        self.radius_mm
    }

    /// A point inside.
    pub fn middle(&self) -> Point {
        self.points.iter().sum::<Point>() / self.points.len().max(1) as f64
    }

    /// The edges; a segment has one each way, a point one of no length.
    fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let count = self.points.len();
        (0..count).map(move |i| (self.points[i], self.points[(i + 1) % count]))
    }

    /// The point of the polygon nearest to another, and whether that one lies inside.
    pub(super) fn nearest(&self, to: Point) -> (Point, bool) {
        let mut inside = self.points.len() > 2;
        let mut best = (self.points[0], f64::INFINITY);
        for (from, end) in self.edges() {
            inside &= (end - from).perp_dot(to - from) >= 0.0;
            let at = nearest_of_segment(from, end, to);
            let apart = (to - at).length_squared();
            if apart < best.1 {
                best = (at, apart);
            }
        }
        (best.0, inside)
    }

    /// How far a point is from the metal, mm; negative inside.
    pub fn gap_mm(&self, to: Point) -> f64 {
        let (at, inside) = self.nearest(to);
        let apart_mm = (to - at).length();
        if inside { -apart_mm - self.radius_mm } else { apart_mm - self.radius_mm }
    }

    /// The gap to another piece, mm, and a point between the two; zero or less where they overlap,
    /// and then the point lies in both.
    pub fn gap_to(&self, other: &Self) -> (f64, Point) {
        let mut best = (f64::INFINITY, Point::ZERO);
        let mut see = |one: Point, two: Point| {
            let apart_mm = (one - two).length();
            if apart_mm < best.0 {
                // Nearer to the one whose metal reaches further.
                let spare_mm = apart_mm - self.radius_mm - other.radius_mm;
                let share = if apart_mm > 0.0 {
                    ((self.radius_mm + 0.5 * spare_mm) / apart_mm).clamp(0.0, 1.0)
                } else {
                    0.0
                };
                best = (apart_mm, one + share * (two - one));
            }
        };
        for corner in &self.points {
            let (at, inside) = other.nearest(*corner);
            see(*corner, if inside { *corner } else { at });
        }
        for corner in &other.points {
            let (at, inside) = self.nearest(*corner);
            see(if inside { *corner } else { at }, *corner);
        }
        for (a, b) in self.edges() {
            for (c, d) in other.edges() {
                if let Some(at) = crossing(a, b, c, d) {
                    see(at, at);
                }
            }
        }
        (best.0 - self.radius_mm - other.radius_mm, best.1)
    }
}

fn nearest_of_segment(from: Point, end: Point, to: Point) -> Point {
    let way = end - from;
    let long = way.length_squared();
    let share = if long > 0.0 { ((to - from).dot(way) / long).clamp(0.0, 1.0) } else { 0.0 };
    from + share * way
}

/// Where two segments cross.
fn crossing(a: Point, b: Point, c: Point, d: Point) -> Option<Point> {
    let (one, two) = (b - a, d - c);
    let turn = one.perp_dot(two);
    if turn == 0.0 {
        return None;
    }
    let along = (c - a).perp_dot(two) / turn;
    let across = (c - a).perp_dot(one) / turn;
    let within = |share: f64| (0.0..=1.0).contains(&share);
    (within(along) && within(across)).then(|| a + along * one)
}
