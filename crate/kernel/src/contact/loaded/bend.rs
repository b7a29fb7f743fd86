//! How the gaps that push bend as bodies turn: what makes a taut chain stiff and a pushed one fold.

use super::Loaded;
use crate::contact::bend::Bend;
use crate::contact::meeting::Meeting;

/// A push above this share of the load is one.
const PUSHING: f64 = 1e-9;
/// Stiffness of rows that push, in loads over pitches. They stay shut, so it changes no answer.
const STIFFENING: f64 = 100.0;
/// Halvings of the bend where it still leaves the problem without a lowest place.
const HALVINGS: u32 = 6;

impl Loaded {
    /// Adds the bend of the gaps that pushed in the last round, as much of it as leaves the problem
    /// convex. `near` tells that they are about to push in this one too.
    pub(super) fn write_bend(&mut self, near: bool) {
        let bend = self.bend();
        bend.add_to(&mut self.problem, 1.0);
        if self.is_convex() {
            return;
        }
        if near {
            self.stiffen();
        }
        let mut share = 1.0;
        for _ in 0..HALVINGS {
            if self.is_convex() {
                return;
            }
            share *= 0.5;
            bend.add_to(&mut self.problem, -share);
        }
        bend.add_to(&mut self.problem, -share);
    }

    fn is_convex(&mut self) -> bool {
        self.problem.hessian_band().is_positive(&mut self.factors)
    }

    fn bend(&self) -> Bend {
        let mut bend = Bend::none();
        for (i, &push) in self.pushes.iter().enumerate().filter(|(_, push)| **push > PUSHING) {
            self.bend_of(&self.sprung(i), push, &mut bend);
        }
        bend
    }

    /// Takes a push times the second derivatives of its gap off the bend.
    fn bend_of(&self, meeting: &Meeting, push: f64, bend: &mut Bend) {
        let places = (self.place(meeting.corner_body), self.place(meeting.face_body));
        bend.take_gap(push, &meeting.curve(&self.pose), places, self.pitch_mm);
        if let Some((spring, arm, way)) = self.spring_arm(meeting) {
            let normal = self.pose.of(meeting.face_body).direction(meeting.normal);
            let lever = self.spring_scale * normal.dot(arm) / (self.pitch_mm * self.pitch_mm);
            let [corner, face] = [places.0, places.1].map(|place| place.map(|at| at + 2));
            bend.add(Some(spring), Some(spring), push * (lever * self.spring_scale));
            bend.add(Some(spring), corner, push * (way * lever));
            bend.add(Some(spring), face, -push * (way * lever));
        }
    }

    /// Adds 1/2 s (gap)^2 of every row that pushes, s the stiffness: zero where the row is shut.
    fn stiffen(&mut self) {
        let stiffness = STIFFENING / self.pitch_mm;
        let unknowns = self.problem.unknowns();
        let pushes = self.pushes.iter();
        for (k, _) in pushes.enumerate().filter(|(_, push)| **push > PUSHING) {
            let (line, gap_mm) = (&self.lines[k], self.gaps_mm[k]);
            for i in 0..unknowns {
                self.problem.gradient_mut()[i] += stiffness * gap_mm * line[i];
                for j in 0..=i {
                    *self.problem.hessian_mut(i, j) += stiffness * line[i] * line[j];
                }
            }
        }
    }
}
