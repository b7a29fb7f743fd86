//! The rows that are held and their factors, brought up to date as rows come and go.

use super::dense::{Dense, add_times, dot, root};
use super::rounds::PROXIMAL;

/// A row whose part free of the held rows is below this share of it (squared) depends on them.
const DEPENDENT: f64 = 1e-22;

/// The held rows, what each pushes, and their factors.
pub(super) struct Hold<const N: usize> {
    /// Rows `J_j` of the transpose of a matrix `J` with `J' G J = 1`, `J' A' = [R; 0]`, `A` being
    /// the held rows.
    pub(super) basis: [[f64; N]; N],
    /// Columns of the upper triangle `R`.
    triangle: [[f64; N]; N],
    /// Reciprocals of the diagonal of `R`.
    reciprocal: [f64; N],
    pub(super) count: usize,
    pub(super) set: [u32; N],
    pub(super) push: [f64; N],
    /// `J' a` of the row being added, the step of `x` and the falls of the pushes it causes.
    formed: [f64; N],
    pub(super) step: [f64; N],
    pub(super) fall: [f64; N],
}

impl<const N: usize> Hold<N> {
    /// Nothing held: `J = L^-T` with `G = H + d I = L L'`.
    #[inline(always)]
    pub(super) fn nothing(dense: &Dense<N>) -> Hold<N> {
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
        Hold {
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

    /// The step of `x` and the falls of the pushes for a unit push of the row; answers how fast
    /// the row's gap opens, 0 when the row depends on the held ones.
    #[inline(always)]
    pub(super) fn directions(&mut self, line: &[f64; N]) -> f64 {
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
    pub(super) fn add(&mut self, row: usize, push: f64, free: f64) {
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
    pub(super) fn remove(&mut self, out: usize) {
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

    /// One correction from the unbalanced forces and the misses: `y1 = R^-T miss`,
    /// `R dpush = y1 - J1' side`, `dx = J1 y1 + J2 J2' side`.
    #[inline(always)]
    pub(super) fn correct(&mut self, x: &mut [f64; N], side: &[f64; N], miss: &[f64; N]) {
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
            add_times(x, self.formed[j], &self.basis[j]);
        }
    }
}
