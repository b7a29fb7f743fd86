//! The steps of the dual active set method: from the free minimum up to the answer.

use super::dense::{Dense, add_times, dot, root};
use super::rounds::{EXACT, PROXIMAL};
use super::scale::largest;

/// Steps after which the method gives up, for each unknown and row.
const MOST_STEPS_EACH: usize = 4;
/// A row whose part free of the held rows is below this share of it (squared) depends on them.
const DEPENDENT: f64 = 1e-22;
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

/// The held rows and their factors.
pub(super) struct Climb<const N: usize> {
    pub(super) x: [f64; N],
    /// Rows `J_j` of the transpose of a matrix `J` with `J' G J = 1`, `J' A' = [R; 0]`, `A` being
    /// the held rows.
    basis: [[f64; N]; N],
    /// Columns of the upper triangle `R`.
    triangle: [[f64; N]; N],
    /// Reciprocals of the diagonal of `R`.
    reciprocal: [f64; N],
    pub(super) count: usize,
    pub(super) set: [u32; N],
    pub(super) push: [f64; N],
    /// `J' a` of the row being added, the step of `x` and the falls of the pushes it causes.
    formed: [f64; N],
    step: [f64; N],
    fall: [f64; N],
}

impl<const N: usize> Climb<N> {
    /// The free minimum of `1/2 x'Gx + q'x`, nothing held, `J = L^-T`.
    #[inline(always)]
    pub(super) fn begin(dense: &Dense<N>) -> Climb<N> {
        let (root, reciprocal) = root(dense.hessian, PROXIMAL);
        let mut basis = [[0.0; N]; N];
        for c in 0..N {
            basis[c][c] = reciprocal[c];
            for i in (0..c).rev() {
                let mut sum = 0.0;
                for k in i + 1..=c {
                    sum += root[k][i] * basis[c][k];
                }
                basis[c][i] = -sum * reciprocal[i];
            }
        }
        let mut x = [0.0; N];
        for line in &basis {
            add_times(&mut x, -dot(line, dense.gradient), line);
        }
        Climb {
            x,
            basis,
            triangle: [[0.0; N]; N],
            reciprocal,
            count: 0,
            set: [0; N],
            push: [0.0; N],
            formed: [0.0; N],
            step: [0.0; N],
            fall: [0.0; N],
        }
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
                self.list_violated(dense, held, tolerance, violated);
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
    fn list_violated(
        &self,
        dense: &Dense<N>,
        held: &[bool],
        tolerance: f64,
        violated: &mut Vec<u32>,
    ) {
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
            let ending = self.hold(&dense.rows[worst_row], worst_row, worst, held, most);
            if ending != Ending::Exact {
                return ending;
            }
        }
    }

    /// Steps until the row touches and holds it, letting go rows that would pull on the way.
    #[inline(always)]
    fn hold(
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
            let free = self.directions(line);
            let (mut reach, mut first_out) = (f64::INFINITY, 0);
            for k in 0..self.count {
                let fall = self.fall[k];
                if fall > 0.0 && self.push[k] < reach * fall {
                    (reach, first_out) = (self.push[k] / fall, k);
                }
            }
            let touching = if free > 0.0 { -gap / free } else { f64::INFINITY };
            let taken = touching.min(reach);
            if !(taken < f64::INFINITY) {
                return Ending::Contradiction;
            }
            for k in 0..self.count {
                self.push[k] -= taken * self.fall[k];
            }
            push += taken;
            if free > 0.0 {
                gap += taken * free;
                add_times(&mut self.x, taken, &self.step);
            }
            if touching <= reach {
                self.add(row, push, free);
                held[row] = true;
                return Ending::Exact;
            }
            held[self.set[first_out] as usize] = false;
            self.remove(first_out);
        }
    }

    /// The step of `x` and the falls of the pushes for a unit push of the row; answers how fast
    /// the row's gap opens, 0 when the row depends on the held ones.
    #[inline(always)]
    fn directions(&mut self, line: &[f64; N]) -> f64 {
        for (formed, basis) in self.formed.iter_mut().zip(&self.basis) {
            *formed = dot(basis, line);
        }
        let (mut bound, mut free) = (0.0, 0.0);
        self.step = [0.0; N];
        for j in 0..N {
            let square = self.formed[j] * self.formed[j];
            if j < self.count {
                bound += square;
            } else {
                free += square;
                add_times(&mut self.step, self.formed[j], &self.basis[j]);
            }
        }
        self.fall = self.formed;
        self.back_substitute();
        if free <= DEPENDENT * (bound + free) { 0.0 } else { free }
    }

    /// `fall = R^-1 fall`.
    #[inline(always)]
    fn back_substitute(&mut self) {
        for c in (0..self.count).rev() {
            let value = self.fall[c] * self.reciprocal[c];
            self.fall[c] = value;
            for k in 0..c {
                self.fall[k] -= self.triangle[c][k] * value;
            }
        }
    }

    /// Holds the row formed: one reflection of the free part of `J` makes it orthogonal to the row.
    #[inline(always)]
    fn add(&mut self, row: usize, push: f64, free: f64) {
        let at = self.count;
        let length = free.sqrt();
        let lead = self.formed[at];
        let diagonal = if lead > 0.0 { -length } else { length };
        // v = formed - diagonal e; the reflection is 1 - v v' / (free - diagonal lead).
        let scale = 1.0 / (free - diagonal * lead);
        self.formed[at] = lead - diagonal;
        add_times(&mut self.step, -diagonal, &self.basis[at]);
        for j in at..N {
            add_times(&mut self.basis[j], -scale * self.formed[j], &self.step);
        }
        self.formed[at] = diagonal;
        self.triangle[at] = self.formed;
        self.reciprocal[at] = 1.0 / diagonal;
        self.set[at] = row as u32;
        self.push[at] = push;
        self.count += 1;
    }

    /// Lets go the `out`th held row: rotations bring `R` back to a triangle.
    fn remove(&mut self, out: usize) {
        self.count -= 1;
        for c in out..self.count {
            self.set[c] = self.set[c + 1];
            self.push[c] = self.push[c + 1];
            self.triangle[c] = self.triangle[c + 1];
            let (a, b) = (self.triangle[c][c], self.triangle[c][c + 1]);
            let length = (a * a + b * b).sqrt();
            let reciprocal = 1.0 / length;
            let (cosine, sine) = (a * reciprocal, b * reciprocal);
            self.triangle[c][c] = length;
            self.reciprocal[c] = reciprocal;
            // The later columns are still in their old places.
            for column in &mut self.triangle[c + 2..=self.count] {
                let (a, b) = (column[c], column[c + 1]);
                column[c] = cosine * a + sine * b;
                column[c + 1] = cosine * b - sine * a;
            }
            let (a, b) = (self.basis[c], self.basis[c + 1]);
            for i in 0..N {
                self.basis[c][i] = cosine * a[i] + sine * b[i];
                self.basis[c + 1][i] = cosine * b[i] - sine * a[i];
            }
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
            for k in 0..self.count {
                let row = self.set[k] as usize;
                miss[k] = -(dense.gap[row] + dot(&dense.rows[row], &self.x));
                add_times(&mut side, self.push[k], &dense.rows[row]);
            }
            let unbalanced = largest(&side);
            let open = largest(&miss);
            let (force, length) = (1.0 + largest(&self.push[..self.count]), 1.0 + largest(&self.x));
            let still = unbalanced <= STILL * force && open <= STILL * length;
            if still || refinement == REFINEMENTS {
                let least = -EXACT * force;
                let exact = unbalanced <= EXACT * force && open <= EXACT * length;
                return exact && self.push[..self.count].iter().all(|&push| push >= least);
            }
            self.correct(&side, &miss);
        }
        false
    }

    /// One correction from the unbalanced forces and the misses: `y1 = R^-T miss`,
    /// `R dpush = y1 - J1' side`, `dx = J1 y1 + J2 J2' side`.
    #[inline(always)]
    fn correct(&mut self, side: &[f64; N], miss: &[f64; N]) {
        for j in 0..N {
            self.formed[j] = dot(&self.basis[j], side);
        }
        for k in 0..self.count {
            let mut value = miss[k];
            for c in 0..k {
                value -= self.triangle[k][c] * self.step[c];
            }
            self.step[k] = value * self.reciprocal[k];
            self.fall[k] = self.step[k] - self.formed[k];
            self.formed[k] = self.step[k];
        }
        self.back_substitute();
        for k in 0..self.count {
            self.push[k] += self.fall[k];
        }
        for j in 0..N {
            add_times(&mut self.x, self.formed[j], &self.basis[j]);
        }
    }
}
