//! Sharing a force among the rows that touch.

use super::climb::STILL;
use super::dense::{Dense, add_times, dot, root, solve_with};
use super::rounds::{EXACT, PROXIMAL};
use super::scale::largest;

/// Times that rows which would pull are left out before the forces stay as they are.
const MOST_TRIES: u32 = 4;
/// Refinements of each try.
const REFINEMENTS: u32 = 4;

/// A push below this is a pull, even before refinement.
const PULLING: f64 = -1e-5;

/// Workspace: the rows that touch and what each would push.
#[derive(Clone, Debug, Default)]
pub(super) struct Sharing {
    rows: Vec<u32>,
    push: Vec<f64>,
}

impl Sharing {
    /// When more rows touch at `x`, where their gaps are `gaps`, than are held, replaces the pushes by those of least norm among
    /// the touching rows that need not pull, and marks those rows as held. Equal rows share
    /// equally, a flat face carries at both its ends. Leaves everything as it is when that does not
    /// come out exact.
    pub(super) fn share<const N: usize>(
        &mut self,
        dense: &Dense<N>,
        x: &[f64; N],
        gaps: &[f64],
        held: &mut [bool],
        push: &mut [f64],
    ) {
        let tolerance = EXACT * (1.0 + largest(x));
        let mut more = false;
        self.rows.clear();
        for (row, (&gap, &held)) in gaps.iter().zip(&*held).enumerate() {
            if held || gap <= tolerance {
                self.rows.push(row as u32);
                more |= !held;
            }
        }
        if more && self.settle(dense, x) {
            held.fill(false);
            push.fill(0.0);
            for (&row, share) in self.rows.iter().zip(&self.push) {
                held[row as usize] = true;
                push[row as usize] = share.max(0.0);
            }
        }
    }

    /// Leaves out rows that would pull until none would; true when the rest balance exactly.
    #[inline(never)]
    fn settle<const N: usize>(&mut self, dense: &Dense<N>, x: &[f64; N]) -> bool {
        let mut force = *dense.gradient;
        for (force, line) in force.iter_mut().zip(dense.hessian) {
            *force += dot(line, x);
        }
        for _ in 0..MOST_TRIES {
            let exact = self.least_norm(dense, &force);
            let least = -EXACT * (1.0 + largest(&self.push));
            if self.push.iter().all(|&push| push >= least) {
                return exact;
            }
            let mut pushes = self.push.iter();
            self.rows.retain(|_| pushes.next().is_none_or(|&push| push >= least));
        }
        false
    }

    /// Least-norm pushes of the listed rows that balance `force`; true when they do to rounding.
    /// Stops early where one clearly pulls.
    fn least_norm<const N: usize>(&mut self, dense: &Dense<N>, force: &[f64; N]) -> bool {
        let mut matrix = [[0.0; N]; N];
        for &row in &self.rows {
            let line = &dense.rows[row as usize];
            for (to, &value) in matrix.iter_mut().zip(line) {
                add_times(to, value, line);
            }
        }
        let (root, reciprocal) = root(&matrix, PROXIMAL);
        self.push.clear();
        self.push.resize(self.rows.len(), 0.0);
        let mut left = *force;
        for refinement in 0..REFINEMENTS {
            let solved = solve_with(&root, &reciprocal, &left);
            left = *force;
            for (push, &row) in self.push.iter_mut().zip(&self.rows) {
                let line = &dense.rows[row as usize];
                *push += dot(line, &solved);
                add_times(&mut left, -*push, line);
            }
            if refinement == 0 && self.push.iter().any(|&push| push < PULLING) {
                return false;
            }
            if largest(&left) <= STILL * (1.0 + largest(&self.push)) {
                return true;
            }
        }
        largest(&left) <= EXACT * (1.0 + largest(&self.push))
    }
}
