//! Spreading the forces over the rows that touch, where more of them touch than the pose needs.
//!
//! Forces that balance `f = Hx + q` are then not unique; those of least norm are, and no history of the
//! solver shows in them. With `y` the multipliers of the balance they are `push_i = max(0, row_i . y)`
//! over the rows that touch, and `y` is where `1/2 sum of max(0, row_i . y)^2 - f . y` is least: convex and
//! piecewise quadratic, so Newton steps with an exact line search end there. Rows and norm are those
//! of the caller: a stored row is to be multiplied by its size.

use super::band::Band;
use super::level::level;
use super::lines::{add_times, dot};
use super::problem::Rows;
use super::rounds::{EXACT, gathered};
use super::scale::{Scaled, largest};

/// Stands in for what the rows that push lack, small beside the squares of their norms, which are near 1;
/// refinement removes what it biases.
const PROXIMAL: f64 = 1e-10;
/// Newton steps before the forces stay as they are; four to eight are usual.
const MOST_STEPS: u32 = 40;
/// Refinements of each step.
const MOST_REFINEMENTS: u32 = 8;

/// Workspace of the spreading.
#[derive(Clone, Debug)]
pub(super) struct Spread {
    force: Vec<f64>,
    touching: Vec<Touching>,
    /// Where `y` would go if the rows that push stayed the same.
    aim: Vec<f64>,
    left: Vec<f64>,
    factor: Band,
}

/// A row that touches.
#[derive(Clone, Copy, Debug)]
struct Touching {
    row: u32,
    pushes: bool,
    /// The square of the row's size.
    weight: f64,
    /// The stored row times `y`, and the same at the aim.
    pull: f64,
    aim: f64,
}

impl Spread {
    pub(super) fn new() -> Spread {
        Spread {
            force: Vec::new(),
            touching: Vec::new(),
            aim: Vec::new(),
            left: Vec::new(),
            factor: Band::new(0, 0),
        }
    }

    /// Replaces the pushes of an exact answer by those of least norm; false, and everything as it was,
    /// where that does not come out exact.
    pub(super) fn spread(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        x: &[f64],
        push: &mut [f64],
    ) -> bool {
        let unknowns = scaled.gradient.len();
        let exact = gathered(EXACT, unknowns);
        self.look(rows, scaled, x, exact);
        let mut along = 0.0;
        for _ in 0..MOST_STEPS {
            let balanced = self.aim(rows, unknowns, exact);
            let largest_push = self.touching.iter().fold(0.0_f64, |most, at| most.max(at.aim));
            if balanced && self.stays(exact * (1.0 + largest_push)) {
                push.fill(0.0);
                for at in self.touching.iter().filter(|at| at.pushes) {
                    push[at.row as usize] = at.weight * at.aim.max(0.0);
                }
                return true;
            }
            if !self.go(&mut along) {
                return false;
            }
        }
        false
    }

    /// Which rows touch, all taken to push at first, and what they have to balance.
    fn look(&mut self, rows: &Rows, scaled: &Scaled, x: &[f64], exact: f64) {
        self.force.clear();
        self.force.resize(scaled.gradient.len() + rows.stride, 0.0);
        scaled.hessian.multiply(x, &mut self.force);
        for (force, gradient) in self.force.iter_mut().zip(&scaled.gradient) {
            *force += gradient;
        }
        let apart = exact * scaled.length_of(x);
        self.touching.clear();
        for row in 0..rows.len() {
            let (first, line) = rows.row(row);
            if scaled.gap[row] + dot(line, &x[first..]) <= apart {
                let (row, weight) = (row as u32, rows.size[row] * rows.size[row]);
                self.touching.push(Touching { row, pushes: true, weight, pull: 0.0, aim: 0.0 });
            }
        }
    }

    /// Leaves in `aim` the `y` of the rows that push now; true when they balance the force there.
    fn aim(&mut self, rows: &Rows, unknowns: usize, exact: f64) -> bool {
        self.factor.reshape(unknowns, rows.stride);
        self.factor.add_diagonal(PROXIMAL);
        for at in self.touching.iter().filter(|at| at.pushes) {
            let (first, line) = rows.row(at.row as usize);
            self.factor.add_outer(first, line, at.weight);
        }
        self.factor.factor();
        self.aim.clear();
        self.aim.resize(unknowns + rows.stride, 0.0);
        self.left.clone_from(&self.force);
        let enough = exact * (1.0 + largest(&self.force));
        for _ in 0..MOST_REFINEMENTS {
            self.factor.solve(&mut self.left);
            add_times(&mut self.aim, 1.0, &self.left);
            self.left.clone_from(&self.force);
            for at in &mut self.touching {
                let (first, line) = rows.row(at.row as usize);
                at.aim = dot(line, &self.aim[first..]);
                if at.pushes {
                    add_times(&mut self.left[first..], -at.weight * at.aim, line);
                }
            }
            if largest(&self.left[..unknowns]) <= enough {
                return true;
            }
        }
        false
    }

    /// Whether at the aim the same rows push as now, but for pulls and pushes of rounding.
    fn stays(&self, rounding: f64) -> bool {
        let stays = |at: &Touching| {
            if at.pushes { at.aim >= -rounding } else { at.aim <= rounding }
        };
        self.touching.iter().all(stays)
    }

    /// Goes towards the aim, to where the function is least on the way; false where it leads nowhere. `f . y`
    /// goes along.
    fn go(&mut self, along: &mut f64) -> bool {
        let way = dot(&self.aim, &self.force) - *along;
        let touching = &self.touching;
        let taken = level(&|taken| {
            let (mut slope, mut curve) = (-way, 0.0);
            for at in touching {
                let step = at.aim - at.pull;
                let pull = at.pull + taken * step;
                if pull > 0.0 {
                    slope += at.weight * pull * step;
                    curve += at.weight * step * step;
                }
            }
            (slope, curve)
        });
        if !(taken > 0.0) {
            return false;
        }
        *along += taken * way;
        for at in &mut self.touching {
            at.pull += taken * (at.aim - at.pull);
            at.pushes = at.pull > 0.0;
        }
        true
    }
}
