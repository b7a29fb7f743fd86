//! Second derivatives of what is minimised: how gaps that push bend as bodies turn.

use super::curve::Curve;
use crate::solve::Problem;

/// The most unknowns of a pitch: five bodies times three, and two springs.
pub(super) const MOST_UNKNOWNS: usize = 17;

/// Second derivatives over all unknowns, each body's its x, y and p yaw, mm.
pub(super) struct Bend([[f64; MOST_UNKNOWNS]; MOST_UNKNOWNS]);

impl Bend {
    /// Nothing bends.
    pub fn none() -> Self {
        Self([[0.0; MOST_UNKNOWNS]; MOST_UNKNOWNS])
    }

    /// Adds to the derivative with two unknowns; nothing where one of them is held.
    pub fn add(&mut self, i: Option<usize>, j: Option<usize>, value: f64) {
        if let (Some(i), Some(j)) = (i, j) {
            self.0[i][j] += value;
            if i != j {
                self.0[j][i] += value;
            }
        }
    }

    /// Takes a push times the second derivatives of its gap off. `corner` and `face` are the places
    /// of the two bodies' unknowns, none where a body is held.
    pub fn take_gap(
        &mut self,
        push: f64,
        curve: &Curve,
        (corner, face): (Option<usize>, Option<usize>),
        pitch_mm: f64,
    ) {
        let p = pitch_mm;
        let turn = |place: Option<usize>| place.map(|at| at + 2);
        let mut take = |i, j, value: f64| self.add(i, j, -push * value);
        take(turn(corner), turn(corner), curve.corner / (p * p));
        take(turn(face), turn(face), curve.face / (p * p));
        take(turn(corner), turn(face), curve.both / (p * p));
        for (axis, value) in [curve.shift.x, curve.shift.y].into_iter().enumerate() {
            let along = |place: Option<usize>| place.map(|at| at + axis);
            take(turn(face), along(corner), value / p);
            take(turn(face), along(face), -value / p);
        }
    }

    /// Adds a share of it to the curvature of a problem.
    pub fn add_to(&self, problem: &mut Problem, share: f64) {
        let unknowns = problem.unknowns();
        for (i, row) in self.0.iter().enumerate().take(unknowns) {
            for (j, value) in row.iter().enumerate().take(i + 1) {
                *problem.hessian_mut(i, j) += share * value;
            }
        }
    }

    /// The derivatives with one unknown and each of the others.
    pub fn column(&self, i: usize) -> impl Iterator<Item = f64> + '_ {
        self.0.iter().map(move |row| row[i])
    }
}
