//! A free place near a point for something round.

use super::sketch::{Patch, Sketch};
use crate::plane::Point;

/// What looks for a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seat<'a> {
    /// What it belongs to, em.
    pub at: Point,
    /// The way it had best stand, a unit vector.
    pub first: Point,
    /// Its radius, em.
    pub radius_em: f64,
    /// How far away it may stand, near to far, em.
    pub distances_em: &'a [f64],
    /// Whether it may lie on a pin, which is plain.
    pub on_pins: bool,
}

/// In how many ways from the point a place is looked for.
const TURNS: u32 = 16;
/// What hiding a square em of metal, an em of leader and a radian of turn cost.
const HIDING: f64 = 1.0;
const LEADER: f64 = 0.5;
const TURNING: f64 = 0.3;

impl Seat<'_> {
    /// The best free place on the sheet: near, in the best way, and hiding little metal.
    pub fn find(&self, sketch: &Sketch) -> Option<Point> {
        let (mut least, mut best) = (f64::INFINITY, None);
        for &distance in self.distances_em {
            if LEADER * distance >= least {
                break;
            }
            for turn in 0..TURNS {
                let (centre, cost) = self.cost(sketch, distance, turn, least);
                if cost < least {
                    (least, best) = (cost, Some(centre));
                }
            }
        }
        best
    }

    /// A place and what it costs; without end where it is not free or cannot be less than `least`.
    fn cost(&self, sketch: &Sketch, distance: f64, turn: u32, least: f64) -> (Point, f64) {
        let sheet = Point::new(sketch.scene.sheet.width_em, sketch.scene.sheet.height_em);
        let angle = core::f64::consts::TAU * f64::from(turn) / f64::from(TURNS);
        let turned = angle.min(core::f64::consts::TAU - angle);
        let (sin, cos) = libm::sincos(angle);
        let centre = self.at + distance * Point::new(cos, sin).rotate(self.first);
        let place = Patch::around(centre, self.radius_em);
        let cost = LEADER * distance + TURNING * turned;
        let free = cost < least
            && place.within(Point::ZERO, sheet)
            && sketch.is_free(&place)
            && (self.on_pins || self.leads_clear(sketch, centre));
        if !free {
            return (centre, f64::INFINITY);
        }
        let hidden =
            if self.on_pins { sketch.hidden(&place) } else { sketch.hidden_in_all(&place) };
        (centre, cost + HIDING * hidden)
    }

    /// Whether the line from the point to the place crosses no words.
    fn leads_clear(&self, sketch: &Sketch, centre: Point) -> bool {
        const SAMPLES: u32 = 12;
        const FROM_EM: f64 = 1.2;
        const HALF_EM: f64 = 0.1;
        let way = (centre - self.at).normalize_or_zero();
        let (from, to) = (self.at + FROM_EM * way, centre - self.radius_em * way);
        let on_line = |i: u32| from.lerp(to, f64::from(i) / f64::from(SAMPLES));
        (0..=SAMPLES).all(|i| sketch.is_free(&Patch::around(on_line(i), HALF_EM)))
    }
}
