//! Metal cut through, the walls that lie hidden in it, and how much of them is reached.

use super::face::Face;
use super::hull::Hull;
use super::rolling::Rolling;
use super::straight::Straight;
use crate::plane::Point;

/// A straight wall with air on one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// The face that it belongs to.
    pub face: Face,
    /// Its beginning.
    pub from: Point,
    /// Its end.
    pub to: Point,
    /// Into the air, of length 1.
    pub normal: Point,
}

impl Wall {
    /// The point a share of the way from its beginning to its end.
    pub fn at(&self, share: f64) -> Point {
        self.from + share * (self.to - self.from)
    }

    /// Its length, mm.
    pub fn length_mm(&self) -> f64 {
        (self.to - self.from).length()
    }
}

/// A part of a wall: from one share of its length to another.
pub type Span = (f64, f64);

/// Convex pieces of metal and the walls between them. Outside is everywhere far away.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Section {
    /// The metal.
    pub hulls: Vec<Hull>,
    /// The walls.
    pub walls: Vec<Wall>,
}

/// Points of a wall that are asked, both its ends among them.
const ASKED: u32 = 9;
/// Halvings that find where reach ends: to a thousandth of a wall's ninth part.
const HALVINGS: u32 = 10;
/// A particle may be this much deeper in metal, mm, than it fits: rounding, and the settler's own.
const PRESSED_MM: f64 = 2e-9;

impl Section {
    /// The parts of each wall that a straight bristle of a diameter, mm, touches from outside.
    pub fn straight(&self, diameter_mm: f64) -> Vec<Vec<Span>> {
        let mut straight = Straight::new(&self.hulls, diameter_mm);
        self.each_wall(0.5 * diameter_mm, |tip| straight.reaches(tip))
    }

    /// The parts of each wall to which a round particle of a diameter, mm, rolls from outside.
    pub fn rolling(&self, diameter_mm: f64) -> Vec<Vec<Span>> {
        let mut rolling = Rolling::new(&self.hulls, diameter_mm);
        self.each_wall(0.5 * diameter_mm, |middle| rolling.reaches(middle))
    }

    /// Whether a disk of a radius, mm, about a point overlaps no metal.
    pub fn is_clear(&self, middle: Point, radius_mm: f64) -> bool {
        self.hulls.iter().all(|hull| hull.gap_mm(middle) >= radius_mm - PRESSED_MM)
    }

    fn each_wall(&self, radius_mm: f64, mut reaches: impl FnMut(Point) -> bool) -> Vec<Vec<Span>> {
        let mut of_wall = |wall: &Wall| {
            spans(|share| {
                let middle = wall.at(share) + radius_mm * wall.normal;
                self.is_clear(middle, radius_mm) && reaches(middle)
            })
        };
        self.walls.iter().map(&mut of_wall).collect()
    }
}

/// The parts of 0 to 1 where something holds: asked at even points, their ends found by halving.
fn spans(mut holds: impl FnMut(f64) -> bool) -> Vec<Span> {
    let mut spans: Vec<Span> = Vec::new();
    let mut before = None;
    for i in 0..ASKED {
        let share = f64::from(i) / f64::from(ASKED - 1);
        let now = holds(share);
        match before {
            None if now => spans.push((share, share)),
            Some((_, true)) if now => spans.last_mut().into_iter().for_each(|span| span.1 = share),
            Some((last, was)) if was != now => {
                let edge = edge(&mut holds, if was { (last, share) } else { (share, last) });
                if was {
                    spans.last_mut().into_iter().for_each(|span| span.1 = edge);
                } else {
                    spans.push((edge, share));
                }
            }
            _ => {}
        }
        before = Some((share, now));
    }
    spans
}

/// Between a share where something holds and one where it does not, the last one where it holds.
fn edge(holds: &mut impl FnMut(f64) -> bool, (mut inside, mut outside): Span) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (inside + outside);
        if holds(middle) {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    inside
}
