//! A predictor-corrector interior point method: close to the answer from anywhere.

use super::band::Band;
use super::lines::{add_lines, add_pair, by_joint, dot_of};
use super::problem::Rows;
use super::rounds::{PROXIMAL, Point};
use super::scale::{Scaled, largest};
use core::ops::Range;

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

/// Workspace of the interior point.
#[derive(Clone, Debug)]
pub(super) struct Interior {
    walls: Vec<Wall>,
    /// One entry an unknown, padded.
    side: Vec<f64>,
    step: Vec<f64>,
    bend: Vec<[f64; 2]>,
    factor: Band,
}

/// One row on its way.
#[derive(Clone, Copy, Debug, Default)]
struct Wall {
    /// > 0, and in the end the gap.
    slack: f64,
    /// Reciprocal of the slack.
    inverse: f64,
    /// > 0.
    push: f64,
    /// Slack less gap.
    miss: f64,
    /// Push over slack.
    weight: f64,
    slack_step: f64,
    push_step: f64,
    /// The product of both steps over the slack.
    bend: f64,
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

/// Runs of rows that touch the same unknowns: the first of these, the rows' coefficients one after
/// another, and which rows; their length known at compile time, unless `N` is 0.
#[inline(always)]
fn runs<const N: usize>(rows: &Rows) -> impl Iterator<Item = (usize, &[f64], Range<usize>)> {
    let n = length::<N>(rows);
    let run = move |(first, run): (usize, Range<usize>)| {
        (first, &rows.coefficient[n * run.start..n * run.end], run)
    };
    rows.runs().map(run)
}

#[inline(always)]
fn length<const N: usize>(rows: &Rows) -> usize {
    if N == 0 { rows.stride } else { N }
}

impl Interior {
    pub(super) fn new() -> Interior {
        let (side, step, bend) = (Vec::new(), Vec::new(), Vec::new());
        Interior { walls: Vec::new(), side, step, bend, factor: Band::new(0, 0) }
    }

    /// Takes the central starting point.
    pub(super) fn begin(&mut self, rows: &Rows, scaled: &Scaled, point: &mut Point) {
        let unknowns = scaled.gradient.len();
        point.reset(unknowns, rows.stride, rows.len());
        point.push.fill(1.0);
        self.walls.clear();
        self.walls.extend(scaled.gap.iter().map(|gap| {
            let slack = gap.max(scaled.usual_gap);
            Wall { slack, inverse: 1.0 / slack, push: 1.0, ..Wall::default() }
        }));
        for padded in [&mut self.side, &mut self.step] {
            padded.clear();
            padded.resize(unknowns + rows.stride, 0.0);
        }
        self.bend.clear();
        self.bend.resize(unknowns + rows.stride, [0.0; 2]);
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
        let x = &mut point.x;
        let reached = by_joint!(rows.stride, self.run(rows, scaled, x, close, spent));
        for (push, wall) in point.push.iter_mut().zip(&self.walls) {
            *push = wall.push;
        }
        reached
    }

    /// [`Interior::approach`] with rows of `N` coefficients, or of as many as there are where `N` is 0.
    #[inline(always)]
    fn run<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        x: &mut [f64],
        close: f64,
        spent: &mut u32,
    ) -> bool {
        let mut taken = 0.0;
        for _ in 0..MOST_STEPS {
            let residual = self.gather::<N>(rows, scaled, x, taken);
            if residual.unbalanced <= close * (1.0 + residual.push)
                && residual.missed <= close * (scaled.usual_gap + residual.length)
                && residual.complementarity <= close * scaled.usual_gap
            {
                return true;
            }
            if residual.push > RUNAWAY && residual.missed > MISSED * scaled.usual_gap {
                return false;
            }
            *spent += 1;
            self.factor.factor();
            taken = self.advance::<N>(rows, x, residual.complementarity);
            if !(taken > SHORTEST) {
                return false;
            }
        }
        false
    }

    /// Whether each row's slack vanished faster in the last step than its push: the guess for the rounds.
    /// On the way to the answer one of the two stays and the other goes to nothing, however near to
    /// nothing both are already (El-Bakry, Tapia and Zhang, "A study of indicators for identifying zero
    /// variables in interior-point methods", SIAM Review 36, 1994, from memory).
    pub(super) fn touching(&self) -> impl Iterator<Item = bool> {
        self.walls.iter().map(|wall| wall.slack_step * wall.push < wall.push_step * wall.slack)
    }

    /// Takes so much of the last step of slacks and pushes; answers the residuals at the point. Leaves
    /// `H + d I + sum of push/slack row row'` in `factor` and what the step has to balance in `side`.
    #[inline(always)]
    fn gather<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        x: &[f64],
        taken: f64,
    ) -> Residual {
        let unknowns = scaled.gradient.len();
        scaled.hessian.multiply(x, &mut self.side);
        for (side, gradient) in self.side.iter_mut().zip(&scaled.gradient) {
            *side = -(*side + gradient);
        }
        self.step.copy_from_slice(&self.side);
        self.factor.take(&scaled.hessian);
        self.factor.add_diagonal(PROXIMAL);
        let (mut products, mut missed, mut most) = (0.0, 0.0_f64, 0.0_f64);
        let n = length::<N>(rows);
        for (first, lines, run) in runs::<N>(rows) {
            let (x, walls) = (&x[first..first + n], &mut self.walls[run.clone()]);
            for ((line, wall), gap) in lines.chunks_exact(n).zip(&mut *walls).zip(&scaled.gap[run])
            {
                wall.slack += taken * wall.slack_step;
                wall.push += taken * wall.push_step;
                wall.inverse = 1.0 / wall.slack;
                wall.weight = wall.push * wall.inverse;
                wall.miss = wall.slack - (gap + dot_of::<N>(line, x));
                products += wall.slack * wall.push;
                missed = larger(missed, wall.miss.abs());
                most = larger(most, wall.push);
            }
            self.factor.add_outers::<N>(first, lines, walls.iter().map(|wall| wall.weight));
            let pushes = walls.iter().map(|wall| [wall.push, wall.weight * wall.miss]);
            let [step, side] = [&mut self.step, &mut self.side].map(|to| &mut to[first..first + n]);
            add_lines::<N>(step, side, lines, pushes);
        }
        Residual {
            unbalanced: largest(&self.step[..unknowns]),
            missed,
            complementarity: if rows.is_empty() { 0.0 } else { products / rows.len() as f64 },
            push: most,
            length: largest(&x[..unknowns]),
        }
    }

    /// Predictor, corrector, step of `x`; answers the share of the full step taken, which slacks and
    /// pushes have yet to take.
    #[inline(always)]
    fn advance<const N: usize>(&mut self, rows: &Rows, x: &mut [f64], mean: f64) -> f64 {
        self.step.copy_from_slice(&self.side);
        self.factor.solve(&mut self.step);
        let (reach, products) = self.predict::<N>(rows);
        // Slack times push falls by what the step takes, but for the product of both steps.
        let ratio = 1.0 - reach + reach * reach * products / (rows.len() as f64 * mean);
        let target = ratio * ratio * ratio * mean;
        for ((step, side), [bend, open]) in self.step.iter_mut().zip(&self.side).zip(&self.bend) {
            *step = side - bend + target * open;
        }
        self.factor.solve(&mut self.step);
        let taken = SHORT_OF_BOUNDARY * self.correct::<N>(rows, target);
        for (x, step) in x.iter_mut().zip(&self.step) {
            *x += taken * step;
        }
        taken
    }

    /// Row directions that belong to `step`, and in `bend` the forces of their products over the
    /// slacks and of the slacks' reciprocals. Answers how far both stay positive, and the sum of the products.
    #[inline(always)]
    fn predict<const N: usize>(&mut self, rows: &Rows) -> (f64, f64) {
        let (mut fastest, mut products) = (1.0_f64, 0.0);
        self.bend.fill([0.0; 2]);
        let n = length::<N>(rows);
        for (first, lines, run) in runs::<N>(rows) {
            let (step, bend) = (&self.step[first..first + n], &mut self.bend[first..first + n]);
            let mut sum = [[0.0; N]; 2];
            for (line, wall) in lines.chunks_exact(n).zip(&mut self.walls[run]) {
                let slack_step = dot_of::<N>(line, step) - wall.miss;
                let rate = slack_step * wall.inverse;
                let push_step = -(wall.push + wall.push * rate);
                fastest = larger(fastest, larger(-rate, 1.0 + rate));
                products += slack_step * push_step;
                wall.bend = rate * push_step;
                add_pair::<N>(&mut sum, bend, line, [wall.bend, wall.inverse]);
            }
            for (k, bend) in bend.iter_mut().enumerate().take(N) {
                *bend = [bend[0] + sum[0][k], bend[1] + sum[1][k]];
            }
        }
        (1.0 / fastest, products)
    }

    /// Row directions that belong to `step`, the second order of the last ones with them. Answers how
    /// far slack and push stay positive.
    #[inline(always)]
    fn correct<const N: usize>(&mut self, rows: &Rows, target: f64) -> f64 {
        let mut fastest = 1.0_f64;
        let n = length::<N>(rows);
        for (first, lines, run) in runs::<N>(rows) {
            let step = &self.step[first..first + n];
            for (line, wall) in lines.chunks_exact(n).zip(&mut self.walls[run]) {
                let slack_step = dot_of::<N>(line, step) - wall.miss;
                let rate = slack_step * wall.inverse;
                let bend = wall.bend - target * wall.inverse;
                wall.slack_step = slack_step;
                wall.push_step = -(wall.push + bend + wall.push * rate);
                // How fast slack and push fall, as shares of themselves.
                let fall = 1.0 + rate + bend / wall.push;
                fastest = larger(fastest, larger(-rate, fall));
            }
        }
        1.0 / fastest
    }
}

/// The larger of two numbers; a first one that is not a number stays.
#[inline(always)]
fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}
