//! A dual active set method for small dense problems: exact, and quicker than anything that
//! factors anew at every step.
//!
//! From the free minimum the most violated row is added, one at a time, stepping so that no held
//! row ever pulls; a row whose push reaches zero on the way is let go (Goldfarb and Idnani, "A
//! numerically stable dual method for solving strictly convex quadratic programs", Mathematical
//! Programming 27, 1983, from memory). `G = H + d I` stands in for `H` until the refinement at the
//! end, which knows only `H`.

use super::climb::{Climb, Ending};
use super::dense::{Dense, dense_hessian};
use super::problem::Rows;
use super::rounds::Point;
use super::scale::Scaled;

/// What outlives a solve: the rows written out densely, when they are not so already.
#[derive(Clone, Debug, Default)]
pub(super) struct Dual {
    dense: Vec<f64>,
    violated: Vec<u32>,
}

impl Dual {
    /// Solves; there must be at most `N` unknowns. Rows marked in `held` are tried first: with those
    /// of a neighbouring answer there are fewer detours, and the answer is the same but for the
    /// last bits. On `Exact`, `point` holds the answer and `held` the rows held.
    pub(super) fn solve<const N: usize>(
        &mut self,
        rows: &Rows,
        scaled: &Scaled,
        point: &mut Point,
        held: &mut [bool],
    ) -> Ending {
        let n = scaled.gradient.len();
        let hessian = dense_hessian::<N>(scaled);
        let mut gradient = [0.0; N];
        gradient[..n].copy_from_slice(&scaled.gradient);
        if rows.stride != N {
            self.write_out::<N>(rows);
        }
        let source = if rows.stride == N { &rows.coefficient } else { &self.dense };
        let dense = Dense {
            hessian: &hessian,
            gradient: &gradient,
            rows: source.as_chunks::<N>().0,
            gap: &scaled.gap,
        };
        self.violated.clear();
        let likely = held.iter().enumerate().filter(|(_, held)| **held).map(|(row, _)| row as u32);
        self.violated.extend(likely);
        held.fill(false);
        let mut climb = Climb::begin(&dense);
        let ending = climb.run(&dense, held, &mut self.violated);
        if ending == Ending::Exact {
            point.reset(n, rows.stride, rows.len());
            point.x[..n].copy_from_slice(&climb.x[..n]);
            for (&row, push) in climb.hold.set.iter().zip(&climb.hold.push[..climb.hold.count]) {
                point.push[row as usize] = push.max(0.0);
            }
        }
        ending
    }

    fn write_out<const N: usize>(&mut self, rows: &Rows) {
        self.dense.clear();
        self.dense.resize(N * rows.len(), 0.0);
        for (row, line) in self.dense.chunks_exact_mut(N).enumerate() {
            let (first, coefficient) = rows.row(row);
            line[first..first + coefficient.len()].copy_from_slice(coefficient);
        }
    }
}
