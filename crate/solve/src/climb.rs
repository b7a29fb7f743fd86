//! The steps of the dual active set method: from the free minimum up to the answer.

use super::dense::{Dense, add_times, dot};
use super::hold::Hold;
use super::rounds::EXACT;
use super::scale::largest;

/// Steps after which the method gives up, for each unknown and row.
const MOST_STEPS_EACH: usize = 4;
/// While `d` still stands in, poses are good to about this share of their size.
const COARSE: f64 = 1e-9;
/// Refinements at the end; two are usual, more where `H` is weak.
const REFINEMENTS: u32 = 12;
/// Refinement stops here: another one would only stir the last bits.
pub(super) const STILL: f64 = 2e-15;

/// How the method ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ending {
    /// Every condition holds to rounding.
    Exact,
    /// A violated row depends on held rows that all resist: no pose, most likely.
    Contradiction,
    /// Too many steps, or the refinement found the set wrong.
    Unsure,
}

/// The pose so far, and the rows held.
pub(super) struct Climb<const N: usize> {
    pub(super) x: [f64; N],
    pub(super) hold: Hold<N>,
}

impl<const N: usize> Climb<N> {
    /// The free minimum of `1/2 x'Gx + q'x`, nothing held.
    #[inline(always)]
    pub(super) fn begin(dense: &Dense<N>) -> Climb<N> {
        let hold = Hold::nothing(dense);
        let mut x = [0.0; N];
        for line in &hold.basis {
            add_times(&mut x, -dot(line, dense.gradient), line);
        }
        Climb { x, hold }
    }

    /// Climbs with `d` standing in for what `H` lacks, refines, and makes sure.
    #[inline(always)]
    pub(super) fn run(
        &mut self,
        dense: &Dense<N>,
        held: &mut [bool],
        violated: &mut Vec<u32>,
    ) -> Ending {
        let mut most = MOST_STEPS_EACH * (N + dense.rows.len());
        let tolerance = COARSE * (1.0 + largest(&self.x));
        let ending = self.climb(dense, held, tolerance, violated, &mut most);
        if ending != Ending::Exact {
            return ending;
        }
        for share in [COARSE, EXACT] {
            loop {
                let tolerance = share * (1.0 + largest(&self.x));
                self.look(dense, held, tolerance, violated);
                let settled = violated.is_empty();
                if !settled {
                    let ending = self.climb(dense, held, tolerance, violated, &mut most);
                    if ending != Ending::Exact {
                        return ending;
                    }
                }
                let refined = if share > EXACT { settled } else { !settled };
                if refined && !self.refine(dense) {
                    return Ending::Unsure;
                }
                if settled {
                    break;
                }
            }
        }
        Ending::Exact
    }

    /// Lists the rows not held whose gap is below minus the tolerance.
    #[inline(always)]
    fn look(&self, dense: &Dense<N>, held: &[bool], tolerance: f64, violated: &mut Vec<u32>) {
        violated.clear();
        for (row, ((line, gap), &held)) in dense.rows.iter().zip(dense.gap).zip(held).enumerate() {
            if !(gap + dot(line, &self.x) >= -tolerance) && !held {
                violated.push(row as u32);
            }
        }
    }

    /// Adds listed rows, the most violated first, until none is violated beyond the tolerance.
    #[inline(always)]
    fn climb(
        &mut self,
        dense: &Dense<N>,
        held: &mut [bool],
        tolerance: f64,
        violated: &[u32],
        most: &mut usize,
    ) -> Ending {
        loop {
            let (mut worst, mut worst_row) = (-tolerance, usize::MAX);
            for &row in violated {
                let row = row as usize;
                let gap = dense.gap[row] + dot(&dense.rows[row], &self.x);
                if !(gap >= worst) && !held[row] {
                    (worst, worst_row) = (gap, row);
                }
            }
            if worst_row == usize::MAX {
                return Ending::Exact;
            }
            let ending = self.take_up(&dense.rows[worst_row], worst_row, worst, held, most);
            if ending != Ending::Exact {
                return ending;
            }
        }
    }

    /// Steps until the row touches and holds it, letting go rows that would pull on the way.
    #[inline(always)]
    fn take_up(
        &mut self,
        line: &[f64; N],
        row: usize,
        mut gap: f64,
        held: &mut [bool],
        most: &mut usize,
    ) -> Ending {
        let mut push = 0.0;
        loop {
            if *most == 0 {
                return Ending::Unsure;
            }
            *most -= 1;
            let free = self.hold.directions(line);
            let (mut reach, mut first_out) = (f64::INFINITY, 0);
            for k in 0..self.hold.count {
                let fall = self.hold.fall[k];
                if fall > 0.0 && self.hold.push[k] < reach * fall {
                    (reach, first_out) = (self.hold.push[k] / fall, k);
                }
            }
            let touching = if free > 0.0 { -gap / free } else { f64::INFINITY };
            let taken = touching.min(reach);
            if !(taken < f64::INFINITY) {
                return Ending::Contradiction;
            }
            for k in 0..self.hold.count {
                self.hold.push[k] -= taken * self.hold.fall[k];
            }
            push += taken;
            if free > 0.0 {
                gap += taken * free;
                add_times(&mut self.x, taken, &self.hold.step);
            }
            if touching <= reach {
                self.hold.add(row, push, free);
                held[row] = true;
                return Ending::Exact;
            }
            held[self.hold.set[first_out] as usize] = false;
            self.hold.remove(first_out);
        }
    }

    /// Refines pose and pushes of the held rows against `H` itself; false when they do not come to
    /// rest or a row turns out to pull.
    #[inline(always)]
    fn refine(&mut self, dense: &Dense<N>) -> bool {
        for refinement in 0.. {
            let mut side = [0.0; N];
            let mut miss = [0.0; N];
            for (i, line) in dense.hessian.iter().enumerate() {
                side[i] = -(dot(line, &self.x) + dense.gradient[i]);
            }
            for k in 0..self.hold.count {
                let row = self.hold.set[k] as usize;
                miss[k] = -(dense.gap[row] + dot(&dense.rows[row], &self.x));
                add_times(&mut side, self.hold.push[k], &dense.rows[row]);
            }
            let unbalanced = largest(&side);
            let open = largest(&miss);
            let (force, length) =
                (1.0 + largest(&self.hold.push[..self.hold.count]), 1.0 + largest(&self.x));
            let still = unbalanced <= STILL * force && open <= STILL * length;
            if still || refinement == REFINEMENTS {
                let least = -EXACT * force;
                let exact = unbalanced <= EXACT * force && open <= EXACT * length;
                return exact
                    && self.hold.push[..self.hold.count].iter().all(|&push| push >= least);
            }
            self.hold.correct(&mut self.x, &side, &miss);
        }
        false
    }
}
