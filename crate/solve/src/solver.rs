//! The order in which the methods are tried, and the answer in the caller's units.

use super::answer::measure;
use super::climb::Ending;
use super::descent::Descent;
use super::dual::Dual;
use super::interior::Interior;
use super::problem::{Problem, Rows};
use super::report::{Report, Start, Status};
use super::rounds::{Point, Rounds};
use super::scale::Scaled;
use super::shortfall::{Shortfall, Verdict};
use super::spread::Spread;

/// Up to this many unknowns (five bodies in a plane and two springs) the dual method is the quickest.
const SMALL: usize = 17;
/// Five bodies in a plane.
#[cfg(not(lightgap_small))]
const BODIES: usize = 15;

/// Rounds tried from a guessed set before another method is asked.
const MOST_ROUNDS: u32 = 8;
/// How close the interior point goes before each try of the rounds, in scaled numbers near 1, and
/// how many rounds are worth trying there.
const STAGES: [(f64, u32); 3] = [(1e-7, 2), (1e-9, 8), (1e-12, 8)];
/// Close enough to be an answer without the last digits.
const CLOSE: f64 = 1e-8;

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
    /// The interior point of the closest stage that was reached.
    close_point: Point,
    dual: Dual,
    descent: Descent,
    shortfall: Shortfall,
    spread: Spread,
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
            close_point: Point::default(),
            dual: Dual::default(),
            descent: Descent::new(),
            shortfall: Shortfall::new(),
            spread: Spread::new(),
        }
    }

    /// Solves; the answer is in [`x`](Solver::x), [`push`](Solver::push) and
    /// [`active`](Solver::active). Look at the report's status first.
    pub fn solve(&mut self, problem: &Problem, start: Start) -> Report {
        let mut spent = 0;
        let status = if self.scaled.take(problem, problem.unknowns > SMALL) {
            self.run(problem, start, &mut spent)
        } else {
            Status::Stalled
        };
        self.finish(problem, status);
        let (worst_gap, stationarity) = self.measure(problem, status);
        if worst_gap.is_finite() && stationarity.is_finite() {
            return Report { status, rounds: spent, worst_gap, stationarity };
        }
        // Overflow on the way: nothing that comes of it is an answer.
        let status = Status::Stalled;
        self.finish(problem, status);
        let (worst_gap, stationarity) = self.measure(problem, status);
        Report { status, rounds: spent, worst_gap, stationarity }
    }

    /// Lets a warm solve of a problem of so many unknowns begin at a pose of zero with these forces, in the
    /// unit of the gradient, and with these rows as touching.
    pub fn foresee(&mut self, unknowns: usize, rows: impl Iterator<Item = (f64, bool)>) {
        self.x.clear();
        self.x.resize(unknowns, 0.0);
        self.push.clear();
        self.active.clear();
        for (push, touches) in rows {
            self.push.push(push);
            self.active.push(touches);
        }
        self.solved_shape = Some((unknowns, self.push.len()));
    }

    /// After `problem` has been solved: the forces of least norm among those of all rows that touch, in
    /// the unit of the gradient. The pose is the same; where more rows touch than it needs, these forces
    /// do not tell from where the solver came. Where they do not come out exact, those of the answer.
    pub fn spread(&mut self, problem: &Problem) -> &[f64] {
        let rows = &problem.rows;
        let solved = self.solved_shape == Some((problem.unknowns, rows.len()));
        self.take_back(rows);
        let push = &mut self.point.push;
        if !(solved && self.spread.spread(rows, &self.scaled, &self.point.x, push)) {
            return &self.push;
        }
        for (push, scale) in push.iter_mut().zip(&rows.scale) {
            *push = *push * scale * self.scaled.force + 0.0;
        }
        push
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
        self.rounds.held.clear();
        if warm {
            self.rounds.held.extend_from_slice(&self.active);
        } else {
            self.rounds.held.resize(rows.len(), false);
        }
        if problem.unknowns <= SMALL {
            return self.small(rows, spent);
        }
        if warm && self.warm(rows, spent) {
            return Status::Solved;
        }
        self.inside(rows, spent)
    }

    /// The dual method, and the others where it is not sure.
    fn small(&mut self, rows: &Rows, spent: &mut u32) -> Status {
        match self.climb(rows, spent) {
            Ending::Exact => return Status::Solved,
            Ending::Contradiction => {
                self.point.reset(self.scaled.gradient.len(), rows.stride, rows.len());
                if self.impossible(rows, spent) {
                    return Status::Infeasible;
                }
            }
            Ending::Unsure => {}
        }
        self.point.reset(self.scaled.gradient.len(), rows.stride, rows.len());
        if self.descend(rows, spent) {
            return Status::Solved;
        }
        self.inside(rows, spent)
    }

    /// The dual method, made for the number of unknowns.
    fn climb(&mut self, rows: &Rows, spent: &mut u32) -> Ending {
        let Solver { dual, scaled, point, rounds, .. } = self;
        *spent += 1;
        match scaled.gradient.len() {
            #[cfg(not(lightgap_small))]
            ..=3 => dual.solve::<3>(rows, scaled, point, &mut rounds.held),
            #[cfg(not(lightgap_small))]
            4..=9 => dual.solve::<9>(rows, scaled, point, &mut rounds.held),
            #[cfg(not(lightgap_small))]
            10..=BODIES => dual.solve::<BODIES>(rows, scaled, point, &mut rounds.held),
            _ => dual.solve::<SMALL>(rows, scaled, point, &mut rounds.held),
        }
    }

    /// Rounds from the last answer's set, pose and forces.
    fn warm(&mut self, rows: &Rows, spent: &mut u32) -> bool {
        self.take_back(rows);
        self.rounds.settle(rows, &self.scaled, &mut self.point, MOST_ROUNDS, spent)
    }

    /// The last answer again in scaled numbers, as this problem scales them.
    fn take_back(&mut self, rows: &Rows) {
        self.point.reset(self.x.len(), rows.stride, rows.len());
        for (to, from) in self.point.x.iter_mut().zip(&self.x) {
            *to = from / self.scaled.length;
        }
        for ((to, from), size) in self.point.push.iter_mut().zip(&self.push).zip(&rows.size) {
            *to = from * size / self.scaled.force;
        }
    }

    /// The interior point, closer and closer; rounds from its guess and its forces at each stage, then a
    /// descent.
    fn inside(&mut self, rows: &Rows, spent: &mut u32) -> Status {
        self.interior.begin(rows, &self.scaled, &mut self.inner_point);
        let mut reached = f64::INFINITY;
        for (close, most) in STAGES {
            let point = &mut self.inner_point;
            if !self.interior.approach(rows, &self.scaled, point, close, spent) {
                break;
            }
            reached = close;
            self.close_point.take(&self.inner_point);
            self.point.take(&self.inner_point);
            self.rounds.held.clear();
            self.rounds.held.extend(self.interior.touching());
            let (rounds, point) = (&mut self.rounds, &mut self.point);
            if rounds.settle(rows, &self.scaled, point, most, spent) {
                return Status::Solved;
            }
        }
        let close = reached <= CLOSE;
        self.point.take(&self.inner_point);
        if !close && self.impossible(rows, spent) {
            return Status::Infeasible;
        }
        self.point.take(&self.inner_point);
        if self.descend(rows, spent) {
            return Status::Solved;
        }
        if close { Status::Unpolished } else { Status::Stalled }
    }

    /// Whether the least shortfall, sought from `point`, proves that there is no pose.
    fn impossible(&mut self, rows: &Rows, spent: &mut u32) -> bool {
        self.shortfall.find(rows, &self.scaled, &mut self.point, spent) == Verdict::Impossible
    }

    /// A descent from `point`, finished by rounds.
    fn descend(&mut self, rows: &Rows, spent: &mut u32) -> bool {
        let held = &mut self.rounds.held;
        self.descent.descend(rows, &self.scaled, &mut self.point, held, spent);
        self.rounds.settle(rows, &self.scaled, &mut self.point, MOST_ROUNDS, spent)
    }

    /// The answer that goes with the status, in the caller's units; no -0 among it.
    fn finish(&mut self, problem: &Problem, status: Status) {
        let (unknowns, count) = (problem.unknowns, problem.rows.len());
        let force =
            if status == Status::Infeasible { self.scaled.length } else { self.scaled.force };
        let length = self.scaled.length;
        let point = if status == Status::Unpolished { &self.close_point } else { &self.point };
        self.x.clear();
        self.push.clear();
        self.active.clear();
        if status == Status::Stalled {
            self.x.resize(unknowns, 0.0);
            self.push.resize(count, 0.0);
            self.active.resize(count, false);
        } else {
            self.x.extend(point.x[..unknowns].iter().map(|x| x * length + 0.0));
            let pushes = point.push.iter().zip(&problem.rows.scale);
            self.push.extend(pushes.map(|(push, scale)| push * scale * force + 0.0));
            match status {
                Status::Solved => self.active.clone_from(&self.rounds.held),
                _ => self.active.extend(point.push.iter().map(|&push| push > 0.0)),
            }
        }
        self.solved_shape = (status == Status::Solved).then_some((unknowns, count));
    }

    /// The residuals of the answer as given, from the caller's data: smallest gap, largest force.
    fn measure(&mut self, problem: &Problem, status: Status) -> (f64, f64) {
        let loaded = status != Status::Infeasible;
        measure(problem, &self.x, &self.push, loaded, &mut self.point.x)
    }
}

#[cfg(test)]
mod tests;
