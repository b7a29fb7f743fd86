//! A descent that cannot cycle, for when the rounds do: it finds a set for them to finish.

use super::band::Band;
use super::level::level;
use super::lines::{add_times, dot};
use super::problem::Rows;
use super::rounds::{EXACT, PROXIMAL, Point};
use super::scale::{Scaled, largest};

/// The first penalty on violated rows: the error of one outer step is multiplied by about its
/// inverse. It grows tenfold after an outer step that gains less than a digit.
const PENALTY: f64 = 1e5;
/// Outer steps that move forces by less than this have settled, apart from rounding.
const SETTLING: f64 = 1e-3;
/// The last penalty: rounding times this is still small beside a force of 1.
const STIFFEST: f64 = 1e8;
/// Outer steps: each moves the multipliers to what the penalty says.
const MOST_OUTER_STEPS: u32 = 12;
/// Newton steps within one outer step.
const MOST_NEWTON_STEPS: u32 = 40;
/// Outer steps end when rows move by no more than this: rounding.
const STILL: f64 = 1e-14;
/// Share of the largest force below which a row is not counted as pushing: rounding times the
/// penalty. The rounds add those that are needed after all.
const PUSHING: f64 = 1e-6;

/// Workspace of the descent.
///
/// The function descended is the augmented Lagrangian,
/// `1/2 x'Hx + q'x + d/2 |x - x0|^2 + 1/(2 P) sum of max(0, push0_i - P gap_i(x))^2`: convex and
/// piecewise quadratic, so Newton steps with an exact line search end in its minimum. The
/// multipliers `push0` start at zero, which makes the forces found those of least norm.
#[derive(Clone, Debug)]
pub(super) struct Descent {
    centre: Vec<f64>,
    centre_push: Vec<f64>,
    step: Vec<f64>,
    slope: Vec<f64>,
    bent: Vec<f64>,
    /// `push0 - P gap` of each row at `x`, and its change along the step.
    pull: Vec<f64>,
    pull_step: Vec<f64>,
    penalty: f64,
    factor: Band,
}

impl Descent {
    pub(super) fn new() -> Descent {
        Descent {
            centre: Vec::new(),
            centre_push: Vec::new(),
            step: Vec::new(),
            slope: Vec::new(),
            bent: Vec::new(),
            pull: Vec::new(),
            pull_step: Vec::new(),
            penalty: PENALTY,
            factor: Band::new(0, 0),
        }
    }

    /// Descends from `point`; leaves the rows that push in `held`.
    pub(super) fn descend(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        held: &mut Vec<bool>,
        spent: &mut u32,
    ) {
        for padded in [&mut self.centre, &mut self.step, &mut self.slope, &mut self.bent] {
            padded.clear();
            padded.resize(scaled.gradient.len() + rows.stride, 0.0);
        }
        for rowwise in [&mut self.centre_push, &mut self.pull, &mut self.pull_step] {
            rowwise.clear();
            rowwise.resize(rows.len(), 0.0);
        }
        self.centre.copy_from_slice(&point.x);
        self.centre_push.copy_from_slice(&point.push);
        self.penalty = PENALTY;
        let mut before = f64::INFINITY;
        for _ in 0..MOST_OUTER_STEPS {
            self.minimise(rows, scaled, point, spent);
            let mut moved = 0.0_f64;
            for (centre, pull) in self.centre_push.iter_mut().zip(&self.pull) {
                let push = pull.max(0.0);
                moved = moved.max((push - *centre).abs());
                *centre = push;
            }
            self.centre.clone_from(&point.x);
            if moved <= self.penalty * STILL * scaled.length_of(&point.x) {
                break;
            }
            if moved > (0.1 * before).max(SETTLING) {
                self.penalty = (10.0 * self.penalty).min(STIFFEST);
            }
            before = moved;
        }
        let least = PUSHING * (1.0 + largest(&self.centre_push));
        held.clear();
        held.extend(self.centre_push.iter().map(|&push| push > least));
    }

    /// Newton steps to the minimum about the present centre.
    fn minimise(&mut self, rows: &Rows, scaled: &Scaled, point: &mut Point, spent: &mut u32) {
        for _ in 0..MOST_NEWTON_STEPS {
            let force = self.slope_at(rows, scaled, point);
            if largest(&self.slope) <= EXACT * self.penalty * force {
                return;
            }
            *spent += 1;
            self.newton(rows, scaled);
            let taken = self.search(rows, scaled, point);
            if !(taken > 0.0) {
                return;
            }
            for (x, step) in point.x.iter_mut().zip(&self.step) {
                *x += taken * step;
            }
        }
    }

    /// Leaves the slope and the pulls at `x`; answers the size of the forces in it.
    fn slope_at(&mut self, rows: &Rows, scaled: &Scaled, point: &Point) -> f64 {
        scaled.hessian.multiply(&point.x, &mut self.slope);
        let mut force = 1.0_f64;
        for (i, gradient) in scaled.gradient.iter().enumerate() {
            self.slope[i] += gradient + PROXIMAL * (point.x[i] - self.centre[i]);
        }
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let gap = scaled.gap[row] + dot(coefficient, &point.x[first..]);
            let pull = self.centre_push[row] - self.penalty * gap;
            self.pull[row] = pull;
            if pull > 0.0 {
                force = force.max(pull);
                add_times(&mut self.slope[first..], -pull, coefficient);
            }
        }
        force
    }

    /// The step to the minimum if the rows that pull stayed the same.
    fn newton(&mut self, rows: &Rows, scaled: &Scaled) {
        self.factor.take(&scaled.hessian);
        self.factor.add_diagonal(PROXIMAL);
        for row in (0..rows.len()).filter(|&row| self.pull[row] > 0.0) {
            let (first, coefficient) = rows.row(row);
            self.factor.add_outer(first, coefficient, self.penalty);
        }
        self.factor.factor();
        for (step, slope) in self.step.iter_mut().zip(&self.slope) {
            *step = -slope;
        }
        self.factor.solve(&mut self.step);
    }

    /// The share of the step at which the function is least along it, by Newton steps on its
    /// piecewise linear slope, kept inside a bracket.
    fn search(&mut self, rows: &Rows, scaled: &Scaled, point: &Point) -> f64 {
        scaled.hessian.multiply(&self.step, &mut self.bent);
        let (mut slope, mut bend) = (0.0, 0.0);
        for (i, gradient) in scaled.gradient.iter().enumerate() {
            let step = self.step[i];
            let weak = PROXIMAL * (point.x[i] - self.centre[i]);
            slope += step * (gradient + weak) + self.bent[i] * point.x[i];
            bend += step * (self.bent[i] + PROXIMAL * step);
        }
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            self.pull_step[row] = -self.penalty * dot(coefficient, &self.step[first..]);
        }
        level(&|taken| self.along(slope, bend, taken))
    }

    /// Slope and curvature along the step at share `taken` of it.
    fn along(&self, slope: f64, bend: f64, taken: f64) -> (f64, f64) {
        let (mut slope, mut curve) = (slope + bend * taken, bend);
        for (pull, step) in self.pull.iter().zip(&self.pull_step) {
            let pull = pull + taken * step;
            if pull > 0.0 {
                slope += pull * step / self.penalty;
                curve += step * step / self.penalty;
            }
        }
        (slope, curve)
    }
}
