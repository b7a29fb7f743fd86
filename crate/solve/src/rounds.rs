//! Rounds: hold a guessed set of rows as equalities, look at the signs, guess again.

use super::band::Band;
use super::lines::{add_times_of, by_joint, dot_of};
use super::problem::Rows;
use super::scale::{Scaled, largest};

/// `d`: the proximal weight on `x`, small beside the scaled `H` and load of about 1, large beside
/// rounding; the refinement removes what it biases.
pub(super) const PROXIMAL: f64 = 1e-7;
/// `1 / e`: the penalty on held rows. One refinement multiplies the error by about `e`.
const PENALTY: f64 = 1e7;
/// Refinements after each factorisation: the error shrinks by 1e-7 each time, and the last ones
/// serve sets that are nearly dependent.
const REFINEMENTS: u32 = 10;
/// What rounding leaves of a scaled gap or force of size 1 after a few dozen operations.
pub(super) const EXACT: f64 = 1e-12;
/// Rounding gathers along a band: a scaled gap or force of size 1 keeps this much more of it for
/// each so many unknowns.
const GATHERED: f64 = 50.0;
/// Refinement stops here: another one would only stir the last bits.
const STILL: f64 = 1e-15;

/// A refinement that leaves more than this share of the error is the last.
const WORTHWHILE: f64 = 0.5;

/// A push below this share of the largest is a pull, even before refinement.
const PULLING: f64 = -1e-5;

/// A scaled point: `x` padded to the band, one multiplier a row.
#[derive(Clone, Debug, Default)]
pub(super) struct Point {
    pub(super) x: Vec<f64>,
    pub(super) push: Vec<f64>,
}

impl Point {
    /// Becomes another point, in the buffers at hand.
    pub(super) fn take(&mut self, other: &Point) {
        self.x.clone_from(&other.x);
        self.push.clone_from(&other.push);
    }

    pub(super) fn reset(&mut self, unknowns: usize, stride: usize, rows: usize) {
        self.x.clear();
        self.x.resize(unknowns + stride, 0.0);
        self.push.clear();
        self.push.resize(rows, 0.0);
    }
}

/// Workspace of the rounds and the set they hold.
#[derive(Clone, Debug)]
pub(super) struct Rounds {
    pub(super) held: Vec<bool>,
    set: Vec<u32>,
    start: Vec<f64>,
    start_push: Vec<f64>,
    miss: Vec<f64>,
    step: Vec<f64>,
    seen: Vec<u64>,
    factor: Band,
}

impl Rounds {
    pub(super) fn new() -> Rounds {
        Rounds {
            held: Vec::new(),
            set: Vec::new(),
            start: Vec::new(),
            start_push: Vec::new(),
            miss: Vec::new(),
            step: Vec::new(),
            seen: Vec::new(),
            factor: Band::new(0, 0),
        }
    }

    /// Rounds from the set in `held` and the pose and the pushes in `point`, which decide the answer where no
    /// force and no held row does; true when `point` meets every condition to rounding. Counts
    /// factorisations in `spent`.
    #[inline(never)]
    pub(super) fn settle(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        most: u32,
        spent: &mut u32,
    ) -> bool {
        self.start_push.clone_from(&point.push);
        by_joint!(rows.stride, self.run(rows, scaled, point, most, spent))
    }

    /// Rounds with rows of `N` coefficients, or of as many as there are where `N` is 0.
    #[inline(always)]
    fn run<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        most: u32,
        spent: &mut u32,
    ) -> bool {
        self.seen.clear();
        self.start.clear();
        self.start.extend_from_slice(&point.x);
        let mut one_at_a_time = false;
        for _ in 0..most {
            *spent += 1;
            let balanced = self.hold::<N>(rows, scaled, point, one_at_a_time);
            if !one_at_a_time && self.drop_pulling(point) {
                self.seen.push(fingerprint(&self.held));
                continue;
            }
            let changed = self.change::<N>(rows, scaled, point, one_at_a_time);
            if !changed {
                return balanced;
            }
            let print = fingerprint(&self.held);
            one_at_a_time |= self.seen.contains(&print);
            self.seen.push(print);
        }
        false
    }

    /// Solves with the set held, from the pose handed in and the forces of the start, and unless asked to go
    /// `to_the_end` only as far as it takes to see a row pull; true when forces and held gaps balance to rounding.
    #[inline(always)]
    fn hold<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        to_the_end: bool,
    ) -> bool {
        let unknowns = scaled.gradient.len();
        point.reset(unknowns, rows.stride, rows.len());
        point.x[..self.start.len()].copy_from_slice(&self.start);
        self.set.clear();
        self.set.extend((0..rows.len() as u32).filter(|&row| self.held[row as usize]));
        for &row in &self.set {
            point.push[row as usize] = self.start_push[row as usize];
        }
        self.factor.take(&scaled.hessian);
        self.factor.add_diagonal(PROXIMAL);
        for &row in &self.set {
            let (first, coefficient) = rows.line::<N>(row as usize);
            self.factor.add_outer(first, coefficient, PENALTY);
        }
        self.factor.factor();
        self.step.clear();
        self.step.resize(unknowns + rows.stride, 0.0);
        self.miss.resize(rows.len(), 0.0);
        let mut before = f64::INFINITY;
        for refinement in 0.. {
            let (unbalanced, open) = self.residual::<N>(rows, scaled, point);
            let force = 1.0 + largest(&point.push);
            let length = scaled.length_of(&point.x);
            let still = unbalanced <= STILL * force && open <= STILL * length;
            let left = unbalanced / force + open / length;
            if still || refinement == REFINEMENTS || left > WORTHWHILE * before {
                let exact = gathered(EXACT, unknowns);
                return unbalanced <= exact * force && open <= exact * length;
            }
            before = left;
            self.refine::<N>(rows, point);
            if refinement == 0 && !to_the_end && self.pulls(point) {
                return false;
            }
        }
        false
    }

    /// Leaves the right-hand side of the next refinement in `step`, the held rows' misses in
    /// `miss`; answers the largest unbalanced force and the largest miss.
    #[inline(always)]
    fn residual<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &Point,
    ) -> (f64, f64) {
        let unknowns = scaled.gradient.len();
        scaled.hessian.multiply(&point.x, &mut self.step);
        for (step, gradient) in self.step.iter_mut().zip(&scaled.gradient) {
            *step = -(*step + gradient);
        }
        for &row in &self.set {
            let (first, coefficient) = rows.line::<N>(row as usize);
            let push = point.push[row as usize];
            add_times_of::<N>(&mut self.step[first..], push, coefficient);
        }
        let unbalanced = largest(&self.step[..unknowns]);
        let mut open = 0.0_f64;
        for &row in &self.set {
            let (first, coefficient) = rows.line::<N>(row as usize);
            let miss = -(scaled.gap[row as usize] + dot_of::<N>(coefficient, &point.x[first..]));
            self.miss[row as usize] = miss;
            open = open.max(miss.abs());
            let pull = PENALTY * miss;
            add_times_of::<N>(&mut self.step[first..], pull, coefficient);
        }
        (unbalanced, open)
    }

    /// One proximal step from the residuals at hand.
    #[inline(always)]
    fn refine<const N: usize>(&mut self, rows: &Rows, point: &mut Point) {
        self.factor.solve(&mut self.step);
        for &row in &self.set {
            let row = row as usize;
            let (first, coefficient) = rows.line::<N>(row);
            let left = self.miss[row] - dot_of::<N>(coefficient, &self.step[first..]);
            point.push[row] += PENALTY * left;
        }
        for (x, step) in point.x.iter_mut().zip(&self.step) {
            *x += step;
        }
    }

    /// Whether a held row clearly pulls, even before the first step is refined.
    fn pulls(&self, point: &Point) -> bool {
        let least = PULLING * (1.0 + largest(&point.push));
        self.set.iter().any(|&row| point.push[row as usize] < least)
    }

    /// Drops the rows that clearly pull; answers whether there were any.
    fn drop_pulling(&mut self, point: &Point) -> bool {
        let least = PULLING * (1.0 + largest(&point.push));
        let mut dropped = false;
        for &row in &self.set {
            if point.push[row as usize] < least {
                self.held[row as usize] = false;
                dropped = true;
            }
        }
        dropped
    }

    /// Drops rows that pull and adds rows that are violated: all of them, or the worst one.
    /// Answers whether anything changed; if not, pulls within rounding are set to zero.
    #[inline(always)]
    fn change<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        one: bool,
    ) -> bool {
        let exact = gathered(EXACT, scaled.gradient.len());
        let slack = exact * scaled.length_of(&point.x);
        let pull = exact * (1.0 + largest(&point.push));
        let mut changed = false;
        let (mut worst, mut worst_row) = (0.0, None);
        for row in 0..rows.len() {
            let excess = if self.held[row] {
                -point.push[row] / pull
            } else {
                let (first, coefficient) = rows.line::<N>(row);
                -(scaled.gap[row] + dot_of::<N>(coefficient, &point.x[first..])) / slack
            };
            if excess <= 1.0 {
                continue;
            }
            changed = true;
            if !one {
                self.held[row] = !self.held[row];
            } else if !(excess <= worst) {
                (worst, worst_row) = (excess, Some(row));
            }
        }
        if let Some(row) = worst_row {
            self.held[row] = !self.held[row];
        }
        if !changed {
            point.push.iter_mut().for_each(|push| *push = push.max(0.0));
        }
        changed
    }
}

/// What becomes of the rounding of a scaled gap or force of size 1 in a problem of so many unknowns.
pub(super) fn gathered(rounding: f64, unknowns: usize) -> f64 {
    rounding * (1.0 + unknowns as f64 / GATHERED)
}

/// A hash of the set (FNV-1a over its rows), to notice when one comes back.
fn fingerprint(held: &[bool]) -> u64 {
    const BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;
    let mut print = BASIS;
    for (row, _) in held.iter().enumerate().filter(|(_, held)| **held) {
        print = (print ^ row as u64).wrapping_mul(PRIME);
    }
    print
}
