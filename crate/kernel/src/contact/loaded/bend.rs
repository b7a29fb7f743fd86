//! How the gaps that push bend as bodies turn: what makes a taut chain stiff and a pushed one fold.

use super::{Loaded, MOST_UNKNOWNS};
use crate::contact::meeting::Meeting;

/// A push above this share of the load is one.
const PUSHING: f64 = 1e-9;
/// Stiffness of rows that push, in loads over pitches. They stay shut, so it changes no answer.
const STIFFENING: f64 = 100.0;
/// Halvings of the bend where it still leaves the problem without a lowest place.
const HALVINGS: u32 = 6;

/// Second derivatives over all unknowns.
type Bend = [[f64; MOST_UNKNOWNS]; MOST_UNKNOWNS];

impl Loaded {
    /// Adds the bend of the gaps that pushed in the last round, as much of it as leaves the problem
    /// convex. `near` tells that they are about to push in this one too.
    pub(super) fn write_bend(&mut self, near: bool) {
        let bend = self.bend();
        self.add_bend(&bend, 1.0);
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
            self.add_bend(&bend, -share);
        }
        self.add_bend(&bend, -share);
    }

    fn is_convex(&mut self) -> bool {
        self.problem.hessian_band().is_positive(&mut self.factors)
    }

    fn bend(&self) -> Bend {
        let mut bend = [[0.0; MOST_UNKNOWNS]; MOST_UNKNOWNS];
        for (i, &push) in self.solver.push().iter().enumerate().filter(|(_, push)| **push > PUSHING)
        {
            self.bend_of(&self.sprung(i), push, &mut bend);
        }
        bend
    }

    /// Takes a push times the second derivatives of its gap off the bend.
    fn bend_of(&self, meeting: &Meeting, push: f64, bend: &mut Bend) {
        let p = self.pitch_mm;
        let curve = meeting.curve(&self.pose);
        let (corner, face) = (self.place(meeting.corner_body), self.place(meeting.face_body));
        let turn = |place: Option<usize>| place.map(|at| at + 2);
        let mut add = |i: Option<usize>, j: Option<usize>, value: f64| {
            if let (Some(i), Some(j)) = (i, j) {
                bend[i][j] -= push * value;
                if i != j {
                    bend[j][i] -= push * value;
                }
            }
        };
        add(turn(corner), turn(corner), curve.corner / (p * p));
        add(turn(face), turn(face), curve.face / (p * p));
        add(turn(corner), turn(face), curve.both / (p * p));
        for (axis, value) in [curve.shift.x, curve.shift.y].into_iter().enumerate() {
            let along = |place: Option<usize>| place.map(|at| at + axis);
            add(turn(face), along(corner), value / p);
            add(turn(face), along(face), -value / p);
        }
        if let Some((spring, arm, way)) = self.spring_arm(meeting) {
            let normal = self.pose.of(meeting.face_body).direction(meeting.normal);
            let lever = self.spring_scale * normal.dot(arm) / (p * p);
            add(Some(spring), Some(spring), -lever * self.spring_scale);
            add(Some(spring), turn(corner), -way * lever);
            add(Some(spring), turn(face), way * lever);
        }
    }

    fn add_bend(&mut self, bend: &Bend, share: f64) {
        let unknowns = self.problem.unknowns();
        for (i, row) in bend.iter().enumerate().take(unknowns) {
            for (j, value) in row.iter().enumerate().take(i + 1) {
                *self.problem.hessian_mut(i, j) += share * value;
            }
        }
    }

    /// Adds 1/2 s (gap)^2 of every row that pushes, s the stiffness: zero where the row is shut.
    fn stiffen(&mut self) {
        let stiffness = STIFFENING / self.pitch_mm;
        let unknowns = self.problem.unknowns();
        let pushes = self.solver.push().iter();
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
