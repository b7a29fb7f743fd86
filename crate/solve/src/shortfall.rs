//! The pose that misses least: when no `x` keeps every gap, by how much, and the proof.

use super::band::Band;
use super::level::level;
use super::lines::{add_times, dot};
use super::problem::Rows;
use super::rounds::Point;
use super::scale::{Scaled, largest};

/// Newton steps after which the search gives up; 3 to 12 are usual, long strands need more.
const MOST_STEPS: u32 = 300;
/// The proximal weight, beside rows of size 1: picks one pose where the violated rows leave some
/// freedom.
const PROXIMAL: f64 = 1e-10;
/// Misses below this share of the scale are rounding, and the pose counts as possible.
const MISSED: f64 = 1e-9;
/// What rounding leaves of balanced violations.
const STILL: f64 = 1e-15;

/// What the search found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Verdict {
    /// No pose: the violations balance, so no motion can mend them.
    Impossible,
    /// Every row is met but for rounding.
    Possible,
    /// Violations are left that do not balance yet.
    Unsure,
}

/// Workspace of the search.
#[derive(Clone, Debug)]
pub(super) struct Shortfall {
    step: Vec<f64>,
    slope: Vec<f64>,
    gap: Vec<f64>,
    gap_step: Vec<f64>,
    factor: Band,
}

impl Shortfall {
    pub(super) fn new() -> Shortfall {
        Shortfall {
            step: Vec::new(),
            slope: Vec::new(),
            gap: Vec::new(),
            gap_step: Vec::new(),
            factor: Band::new(0, 0),
        }
    }

    /// Minimises the sum of squares of the violations, from `point.x`, by Newton steps with an
    /// exact line search on that piecewise quadratic. Leaves the violations (>= 0) in `point.push`.
    pub(super) fn find(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        spent: &mut u32,
    ) -> Verdict {
        self.step.resize(scaled.gradient.len() + rows.stride, 0.0);
        self.gap.resize(rows.len(), 0.0);
        self.gap_step.resize(rows.len(), 0.0);
        for _ in 0..MOST_STEPS {
            self.violations(rows, scaled, point);
            *spent += 1;
            self.newton(rows, scaled, point);
            if largest(&self.slope) <= STILL * scaled.length_of(&point.push) {
                break;
            }
            let taken = self.search(rows);
            if !(taken > 0.0) {
                break;
            }
            for (x, step) in point.x.iter_mut().zip(&self.step) {
                *x += taken * step;
            }
        }
        self.violations(rows, scaled, point);
        self.verdict(scaled, point)
    }

    /// Violated rows that cancel prove that there is no pose, as far as they cancel: moving by as
    /// much as the pose is large must not gain what is missing.
    fn verdict(&self, scaled: &Scaled, point: &Point) -> Verdict {
        let length = scaled.length_of(&point.x);
        if largest(&point.push) <= MISSED * length {
            return Verdict::Possible;
        }
        let missing: f64 = point.push.iter().map(|push| push * push).sum();
        let gain = length * self.slope.iter().map(|slope| slope.abs()).sum::<f64>();
        if gain < missing { Verdict::Impossible } else { Verdict::Unsure }
    }

    /// Gaps at `x`, and violations in `point.push`.
    fn violations(&mut self, rows: &Rows, scaled: &Scaled, point: &mut Point) {
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let gap = scaled.gap[row] + dot(coefficient, &point.x[first..]);
            self.gap[row] = gap;
            point.push[row] = (-gap).max(0.0);
        }
    }

    /// The share of the step at which the sum of squares is least along it.
    fn search(&mut self, rows: &Rows) -> f64 {
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            self.gap_step[row] = dot(coefficient, &self.step[first..]);
        }
        level(&|taken| self.along(taken))
    }

    /// Slope and curvature along the step at share `taken` of it.
    fn along(&self, taken: f64) -> (f64, f64) {
        let (mut slope, mut bend) = (0.0, 0.0);
        for (gap, step) in self.gap.iter().zip(&self.gap_step) {
            let gap = gap + taken * step;
            if gap < 0.0 {
                slope += gap * step;
                bend += step * step;
            }
        }
        (slope, bend)
    }

    /// The step that would null the slope if the violated rows stayed the same.
    fn newton(&mut self, rows: &Rows, scaled: &Scaled, point: &Point) {
        self.step.fill(0.0);
        self.factor.reshape(scaled.gradient.len(), rows.stride);
        self.factor.add_diagonal(PROXIMAL);
        for row in (0..rows.len()).filter(|&row| point.push[row] > 0.0) {
            let (first, coefficient) = rows.row(row);
            self.factor.add_outer(first, coefficient, 1.0);
            add_times(&mut self.step[first..], point.push[row], coefficient);
        }
        self.slope.clone_from(&self.step);
        self.factor.factor();
        self.factor.solve(&mut self.step);
    }
}
