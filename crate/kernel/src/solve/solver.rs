//! The order in which the methods are tried, and the answer in the caller's units.

use super::interior::Interior;
use super::problem::Problem;
use super::report::{Report, Start, Status};
use super::rounds::{Point, Rounds};
use super::scale::Scaled;
use super::shortfall::Shortfall;

/// Rounds tried from a guessed set before the interior point is asked.
const MOST_ROUNDS: u32 = 8;
/// Rounds tried from the interior point's set.
const MOST_POLISHING_ROUNDS: u32 = 24;
/// Up to this many unknowns a cold solve tries rounds from the empty set first.
const SMALL: usize = 12;

/// A solver with all its workspace: nothing is allocated after the first solve of a shape.
#[derive(Clone, Debug)]
pub struct Solver {
    x: Vec<f64>,
    push: Vec<f64>,
    active: Vec<bool>,
    solved_shape: Option<(usize, usize)>,
    scaled: Scaled,
    point: Point,
    rounds: Rounds,
    interior: Interior,
    inner_point: Point,
    shortfall: Shortfall,
}

impl Default for Solver {
    fn default() -> Solver {
        Solver::new()
    }
}

impl Solver {
    /// An empty workspace.
    pub fn new() -> Solver {
        Solver {
            x: Vec::new(),
            push: Vec::new(),
            active: Vec::new(),
            solved_shape: None,
            scaled: Scaled::new(),
            point: Point::default(),
            rounds: Rounds::new(),
            interior: Interior::new(),
            inner_point: Point::default(),
            shortfall: Shortfall::new(),
        }
    }

    /// Solves; the answer is in [`x`](Solver::x), [`push`](Solver::push) and
    /// [`active`](Solver::active). Look at the report's status first.
    pub fn solve(&mut self, problem: &Problem, start: Start) -> Report {
        let mut spent = 0;
        let status = if self.scaled.take(problem) {
            self.run(problem, start, &mut spent)
        } else {
            Status::Stalled
        };
        self.finish(problem, status);
        self.report(problem, status, spent)
    }

    /// The answer, one entry an unknown, in the unit of the gaps.
    pub fn x(&self) -> &[f64] {
        &self.x
    }

    /// The multipliers, >= 0, one a row, in the unit of the gradient.
    pub fn push(&self) -> &[f64] {
        &self.push
    }

    /// The rows held as touching, one flag a row. A row may touch without pushing.
    pub fn active(&self) -> &[bool] {
        &self.active
    }

    fn run(&mut self, problem: &Problem, start: Start, spent: &mut u32) -> Status {
        let rows = &problem.rows;
        let shape = (problem.unknowns, rows.len());
        let warm = start == Start::Warm && self.solved_shape == Some(shape);
        if warm || problem.unknowns <= SMALL {
            if warm {
                self.rounds.held.clone_from(&self.active);
            } else {
                self.rounds.held.clear();
                self.rounds.held.resize(rows.len(), false);
            }
            if self.rounds.settle(rows, &self.scaled, &mut self.point, MOST_ROUNDS, spent) {
                return Status::Solved;
            }
        }
        let close = self.interior.approach(rows, &self.scaled, &mut self.inner_point, spent);
        if !close && self.shortfall.find(rows, &self.scaled, &mut self.point, spent) {
            return Status::Infeasible;
        }
        let slack = &self.interior.slack;
        self.rounds.held.clear();
        let pairs = self.inner_point.push.iter().zip(slack);
        self.rounds.held.extend(pairs.map(|(push, slack)| push > slack));
        if self.rounds.settle(rows, &self.scaled, &mut self.point, MOST_POLISHING_ROUNDS, spent) {
            return Status::Solved;
        }
        if close { Status::Unpolished } else { Status::Stalled }
    }

    /// The answer that goes with the status, in the caller's units; no -0 among it.
    fn finish(&mut self, problem: &Problem, status: Status) {
        let (unknowns, count) = (problem.unknowns, problem.rows.len());
        let force =
            if status == Status::Infeasible { self.scaled.length } else { self.scaled.force };
        let length = self.scaled.length;
        let point = if status == Status::Unpolished { &self.inner_point } else { &self.point };
        self.x.clear();
        self.push.clear();
        self.active.clear();
        if status == Status::Stalled {
            self.x.resize(unknowns, 0.0);
            self.push.resize(count, 0.0);
            self.active.resize(count, false);
        } else {
            self.x.extend(point.x[..unknowns].iter().map(|x| x * length + 0.0));
            self.push.extend(point.push.iter().map(|push| push * force + 0.0));
            match status {
                Status::Solved => self.active.clone_from(&self.rounds.held),
                _ => self.active.extend(point.push.iter().map(|&push| push > 0.0)),
            }
        }
        self.solved_shape = (status == Status::Solved).then_some((unknowns, count));
    }

    /// The residuals of the answer as given, computed from the caller's data.
    fn report(&mut self, problem: &Problem, status: Status, rounds: u32) -> Report {
        let rows = &problem.rows;
        let residual = &mut self.point.x;
        residual.clear();
        residual.resize(problem.unknowns + rows.stride, 0.0);
        if status != Status::Infeasible {
            problem.hessian.multiply(&self.x, residual);
            for (residual, gradient) in residual.iter_mut().zip(&problem.gradient) {
                *residual += gradient;
            }
        }
        let mut worst_gap = f64::INFINITY;
        for row in 0..rows.len() {
            let (first, coefficient) = rows.row(row);
            worst_gap = worst_gap.min(rows.gap_at(row, &self.x));
            for (residual, value) in residual[first..].iter_mut().zip(coefficient) {
                *residual -= self.push[row] * value;
            }
        }
        let stationarity = super::rounds::magnitude(residual);
        let worst_gap = if worst_gap.is_finite() { worst_gap + 0.0 } else { 0.0 };
        Report { status, rounds, worst_gap, stationarity }
    }
}

#[cfg(test)]
mod tests;
