//! A predictor-corrector interior point method: close to the answer from anywhere.

use super::band::Band;
use super::problem::{Rows, dot};
use super::rounds::{PROXIMAL, Point};
use super::scale::{Scaled, largest};

/// Steps after which it gives up; 8 to 25 are usual.
const MOST_STEPS: u32 = 60;
/// Share of the way to the boundary that a step may go.
const SHORT_OF_BOUNDARY: f64 = 0.99;
/// A step shorter than this means no progress.
const SHORTEST: f64 = 1e-9;
/// Multipliers beyond this with rows still missed: no pose keeps every gap, most likely.
const RUNAWAY: f64 = 1e9;
/// Rows missed by less than this are rounding beside such multipliers.
const MISSED: f64 = 1e-8;

/// Workspace of the interior point, one entry a row unless noted.
#[derive(Clone, Debug)]
pub(super) struct Interior {
    /// Slack of each row, > 0.
    pub(super) slack: Vec<f64>,
    miss: Vec<f64>,
    slack_step: Vec<f64>,
    push_step: Vec<f64>,
    /// One entry an unknown, padded.
    side: Vec<f64>,
    step: Vec<f64>,
    factor: Band,
}

/// Residuals of one interior point.
struct Residual {
    unbalanced: f64,
    missed: f64,
    /// Mean product of slack and push.
    complementarity: f64,
    /// The largest push.
    push: f64,
    /// The largest unknown.
    length: f64,
}

impl Interior {
    pub(super) fn new() -> Interior {
        Interior {
            slack: Vec::new(),
            miss: Vec::new(),
            slack_step: Vec::new(),
            push_step: Vec::new(),
            side: Vec::new(),
            step: Vec::new(),
            factor: Band::new(0, 0),
        }
    }

    /// Goes on from `point` until residuals and mean complementarity, of scaled numbers near 1,
    /// are at most `close`; false when it can come no closer.
    pub(super) fn approach(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        close: f64,
        spent: &mut u32,
    ) -> bool {
        for _ in 0..MOST_STEPS {
            let residual = self.residual(rows, scaled, point);
            let force = 1.0 + residual.push;
            if residual.unbalanced <= close * force
                && residual.missed <= close * (1.0 + residual.length)
                && residual.complementarity <= close
            {
                return true;
            }
            if residual.push > RUNAWAY && residual.missed > MISSED {
                return false;
            }
            *spent += 1;
            self.factor_at(rows, scaled, point);
            let mean = residual.complementarity;
            let taken = self.advance(rows, point, mean);
            if !(taken > SHORTEST) {
                return false;
            }
        }
        false
    }

    /// Takes the central starting point.
    pub(super) fn begin(&mut self, rows: &Rows, scaled: &Scaled, point: &mut Point) {
        let (unknowns, count) = (scaled.gradient.len(), rows.len());
        point.reset(unknowns, rows.stride, count);
        point.push.fill(1.0);
        self.slack.clear();
        self.slack.extend(scaled.gap.iter().map(|gap| gap.max(1.0)));
        for rowwise in [&mut self.miss, &mut self.slack_step, &mut self.push_step] {
            rowwise.resize(count, 0.0);
        }
        for padded in [&mut self.side, &mut self.step] {
            padded.clear();
            padded.resize(unknowns + rows.stride, 0.0);
        }
    }

    /// Residuals at the point; leaves `-(Hx + q)` in `side`.
    fn residual(&mut self, rows: &Rows, scaled: &Scaled, point: &Point) -> Residual {
        let unknowns = scaled.gradient.len();
        scaled.hessian.multiply(&point.x, &mut self.side);
        for (side, gradient) in self.side.iter_mut().zip(&scaled.gradient) {
            *side = -(*side + gradient);
        }
        self.step.copy_from_slice(&self.side);
        let mut products = 0.0;
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let (slack, push) = (self.slack[row], point.push[row]);
            self.miss[row] = slack - (scaled.gap[row] + dot(coefficient, &point.x[first..]));
            products += slack * push;
            for (step, value) in self.step[first..].iter_mut().zip(coefficient) {
                *step += push * value;
            }
        }
        Residual {
            unbalanced: largest(&self.step[..unknowns]),
            missed: largest(&self.miss),
            complementarity: if rows.is_empty() { 0.0 } else { products / rows.len() as f64 },
            push: largest(&point.push),
            length: largest(&point.x),
        }
    }

    /// Factors `H + d I + sum of push/slack row row'`; adds the rows' misses to `side`.
    fn factor_at(&mut self, rows: &Rows, scaled: &Scaled, point: &Point) {
        self.factor.clone_from(&scaled.hessian);
        self.factor.add_diagonal(PROXIMAL);
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let weight = point.push[row] / self.slack[row];
            self.factor.add_outer(first, coefficient, weight);
            let pull = weight * self.miss[row];
            for (side, value) in self.side[first..].iter_mut().zip(coefficient) {
                *side += pull * value;
            }
        }
        self.factor.factor();
    }

    /// Predictor, corrector, step; answers the share of the full step taken.
    fn advance(&mut self, rows: &Rows, point: &mut Point, mean: f64) -> f64 {
        self.step.copy_from_slice(&self.side);
        self.factor.solve(&mut self.step);
        let reach = self.directions(rows, point, |_, _| 0.0);
        let mut products = 0.0;
        for row in 0..rows.len() {
            products += (self.slack[row] + reach * self.slack_step[row])
                * (point.push[row] + reach * self.push_step[row]);
        }
        let ratio = products / (rows.len() as f64 * mean);
        let target = ratio * ratio * ratio * mean;
        self.step.copy_from_slice(&self.side);
        for row in 0..rows.len() {
            let bend = (self.slack_step[row] * self.push_step[row] - target) / self.slack[row];
            let (first, coefficient) = rows.row(row);
            for (step, value) in self.step[first..].iter_mut().zip(coefficient) {
                *step -= bend * value;
            }
            // Kept for the corrector's directions.
            self.push_step[row] = bend;
        }
        self.factor.solve(&mut self.step);
        let reach = self.directions(rows, point, |bend, _| bend);
        let taken = (SHORT_OF_BOUNDARY * reach).min(1.0);
        for (x, step) in point.x.iter_mut().zip(&self.step) {
            *x += taken * step;
        }
        for row in 0..rows.len() {
            self.slack[row] += taken * self.slack_step[row];
            point.push[row] += taken * self.push_step[row];
        }
        taken
    }

    /// Row directions that belong to `step`, `bend` being the second-order term found in
    /// `push_step`; answers how far both stay positive.
    fn directions(&mut self, rows: &Rows, point: &Point, bend: impl Fn(f64, f64) -> f64) -> f64 {
        let mut inverse = 0.0_f64;
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            let (slack, push) = (self.slack[row], point.push[row]);
            let slack_step = dot(coefficient, &self.step[first..]) - self.miss[row];
            let bent = bend(self.push_step[row], slack);
            let push_step = -push - bent - push / slack * slack_step;
            self.slack_step[row] = slack_step;
            self.push_step[row] = push_step;
            inverse = inverse.max(-slack_step / slack).max(-push_step / push);
        }
        if inverse > 0.0 {
            (1.0 / inverse).min(1.0 / SHORT_OF_BOUNDARY)
        } else {
            1.0 / SHORT_OF_BOUNDARY
        }
    }
}
