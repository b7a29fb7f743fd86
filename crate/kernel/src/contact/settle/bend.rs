//! The bend of metal under load: what linear gaps leave out of a round's problem.
//!
//! A gap that pushes and bends as bodies turn changes the balance to second order: a taut chain
//! straightens, a hand far off turns what it holds. Without it rounds close in slowly, or go to and
//! fro where the wishes are weaker than the bend. Where the bend makes a fold (a chain in
//! compression), only as much of it is taken as leaves the problem convex.

use super::{Settler, Wish};
use crate::contact::bend::Bend;
use crate::contact::body::Body;
use crate::plane::Point;

/// Shares of the bend that are tried, from the whole on.
const TRIES: u32 = 6;
/// The bend may take away this much of the wishes' own curvature, one part in five.
const MARGIN: f64 = 1.25;

impl Settler {
    /// Adds as much of the bend about the present pose as leaves the problem convex, the pushes of
    /// the last round taken.
    pub(super) fn write_bend(&mut self, wishes: &[Wish]) {
        let bend = self.bend(wishes);
        let mut taken = 0.0;
        let mut share = 1.0;
        for _ in 0..TRIES {
            bend.add_to(&mut self.problem, MARGIN * share - taken);
            taken = MARGIN * share;
            if self.problem.hessian_band().is_positive(&mut self.factors) {
                bend.add_to(&mut self.problem, share - taken);
                self.pull_bend(&bend, share);
                return;
            }
            share *= 0.5;
        }
        bend.add_to(&mut self.problem, -taken);
    }

    /// The bend about the present pose.
    fn bend(&self, wishes: &[Wish]) -> Bend {
        let mut bend = Bend::none();
        for wish in wishes {
            self.bend_of_wish(wish, &mut bend);
        }
        let pushes = self.solver.push();
        for (meeting, &push) in self.meetings.iter().zip(pushes).filter(|(_, push)| **push > 0.0) {
            let places = (self.place(meeting.corner_body), self.place(meeting.face_body));
            bend.take_gap(push, &meeting.curve(&self.pose), places, self.pitch_mm);
        }
        bend
    }

    /// The bend of a held point: turning the body moves it along an arc, across the way it misses.
    fn bend_of_wish(&self, wish: &Wish, bend: &mut Bend) {
        let Wish::Point { body, inside, to } = *wish else { return };
        let Some(place) = self.place(body) else { return };
        let arm = self.pose.of(body).direction(inside);
        let miss = self.miss(body, inside, to);
        let turned = Self::POINT_WEIGHTS * miss * arm;
        let yaw = Some(place + 2);
        bend.add(yaw, yaw, (turned.x + turned.y) / (self.pitch_mm * self.pitch_mm));
    }

    /// How far a held point is from where it is wished, no further than a hand calls.
    pub(super) fn miss(&self, body: Body, inside: Point, to: Point) -> Point {
        let from = self.straight.of(body).outward(inside);
        from + (to - from).clamp_length_max(self.call_mm) - self.pose.of(body).outward(inside)
    }

    /// The bend is about the present pose, not the straight one.
    fn pull_bend(&mut self, bend: &Bend, share: f64) {
        let unknowns = self.problem.unknowns();
        for &body in &self.free {
            let Some(place) = self.place(body) else { continue };
            for (axis, x) in self.deviation(body).into_iter().enumerate() {
                let column = bend.column(place + axis);
                for (pull, value) in self.problem.gradient_mut()[..unknowns].iter_mut().zip(column)
                {
                    *pull -= share * value * x;
                }
            }
        }
    }
}
