//! The pose that misses least: when no `x` keeps every gap, by how much, and the proof.

use super::band::Band;
use super::problem::{Rows, dot};
use super::rounds::Point;
use super::scale::{Scaled, largest};

/// Newton steps after which the search gives up; 3 to 12 are usual.
const MOST_STEPS: u32 = 60;
/// The proximal weight, beside rows of size 1: picks one pose where the violated rows leave some
/// freedom.
const PROXIMAL: f64 = 1e-10;
/// Misses below this share of the scale are rounding, and the pose counts as possible.
const MISSED: f64 = 1e-9;
/// What rounding leaves of balanced violations.
const STILL: f64 = 1e-15;
/// Halvings of one step: past this it is rounding.
const MOST_HALVINGS: u32 = 30;

/// Workspace of the search.
#[derive(Clone, Debug)]
pub(super) struct Shortfall {
    step: Vec<f64>,
    slope: Vec<f64>,
    factor: Band,
}

impl Shortfall {
    pub(super) fn new() -> Shortfall {
        Shortfall { step: Vec::new(), slope: Vec::new(), factor: Band::new(0, 0) }
    }

    /// Minimises the sum of squares of the violations from `x = 0` by Newton steps on that
    /// piecewise quadratic. Leaves the violations (>= 0) in `point.push`; answers whether any is
    /// more than rounding.
    pub(super) fn find(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        spent: &mut u32,
    ) -> bool {
        let unknowns = scaled.gradient.len();
        point.reset(unknowns, rows.stride, rows.len());
        self.step.clear();
        self.step.resize(unknowns + rows.stride, 0.0);
        let mut sum = self.violations(rows, scaled, point, 0.0);
        for _ in 0..MOST_STEPS {
            *spent += 1;
            self.newton(rows, scaled, point);
            let mut taken = 1.0;
            let mut next = self.violations(rows, scaled, point, taken);
            for _ in 0..MOST_HALVINGS {
                if next <= sum {
                    break;
                }
                taken *= 0.5;
                next = self.violations(rows, scaled, point, taken);
            }
            if !(next <= sum) || self.flat(point) {
                break;
            }
            for (x, step) in point.x.iter_mut().zip(&self.step) {
                *x += taken * step;
            }
            sum = next;
        }
        self.step.fill(0.0);
        self.violations(rows, scaled, point, 0.0);
        largest(&point.push) > MISSED * (1.0 + largest(&point.x))
    }

    /// Whether the violations balance at the pose the last step started from.
    fn flat(&self, point: &Point) -> bool {
        largest(&self.slope) <= STILL * (1.0 + largest(&point.push))
    }

    /// Violations at `x + taken step`, left in `point.push`; answers the sum of their squares.
    fn violations(&self, rows: &Rows, scaled: &Scaled, point: &mut Point, taken: f64) -> f64 {
        let mut sum = 0.0;
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let gap = scaled.gap[row]
                + dot(coefficient, &point.x[first..])
                + taken * dot(coefficient, &self.step[first..]);
            let violation = (-gap).max(0.0);
            point.push[row] = violation;
            sum += violation * violation;
        }
        sum
    }

    /// The step that would null the slope if the violated rows stayed the same.
    fn newton(&mut self, rows: &Rows, scaled: &Scaled, point: &mut Point) {
        self.step.fill(0.0);
        self.violations(rows, scaled, point, 0.0);
        self.factor.reshape(scaled.gradient.len(), rows.stride);
        self.factor.add_diagonal(PROXIMAL);
        for row in (0..rows.len()).filter(|&row| point.push[row] > 0.0) {
            let (first, coefficient) = rows.row(row);
            self.factor.add_outer(first, coefficient, 1.0);
            for (step, value) in self.step[first..].iter_mut().zip(coefficient) {
                *step += point.push[row] * value;
            }
        }
        self.slope.clone_from(&self.step);
        self.factor.factor();
        self.factor.solve(&mut self.step);
    }
}
