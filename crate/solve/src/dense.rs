//! A small dense problem, and the few sums that it takes, written out for its size.

use super::lines::{add_times_of, dot_of};
use super::scale::Scaled;

/// The problem as the method sees it: `N` unknowns, the last ones idle when there are fewer.
#[derive(Clone, Copy)]
pub(super) struct Dense<'a, const N: usize> {
    /// Lower and upper triangle of the scaled `H`; 1 on the diagonal of idle unknowns.
    pub(super) hessian: &'a [[f64; N]; N],
    pub(super) gradient: &'a [f64; N],
    pub(super) rows: &'a [[f64; N]],
    pub(super) gap: &'a [f64],
}

/// The scaled `H` in full, 1 on the diagonal of idle unknowns.
pub(super) fn dense_hessian<const N: usize>(scaled: &Scaled) -> [[f64; N]; N] {
    let (n, stride) = (scaled.gradient.len(), scaled.hessian.stride());
    let mut hessian = [[0.0; N]; N];
    for (j, column) in scaled.hessian.entries().chunks_exact(stride).take(n).enumerate() {
        for (k, &entry) in column[..stride.min(n - j)].iter().enumerate() {
            hessian[j][j + k] = entry;
            hessian[j + k][j] = entry;
        }
    }
    for (i, line) in hessian.iter_mut().enumerate().skip(n) {
        line[i] = 1.0;
    }
    hessian
}

/// Sum of products: even and odd places apart, then both, so that two go at a time.
#[inline(always)]
pub(super) fn dot<const N: usize>(a: &[f64; N], b: &[f64; N]) -> f64 {
    dot_of::<N>(a, b)
}

/// `to += factor * from`.
#[inline(always)]
pub(super) fn add_times<const N: usize>(to: &mut [f64; N], factor: f64, from: &[f64; N]) {
    add_times_of::<N>(to, factor, from);
}

/// The root `L` of `matrix + shift 1 = L L'`, by rows, and the reciprocals of its diagonal.
#[inline(always)]
pub(super) fn root<const N: usize>(
    matrix: &[[f64; N]; N],
    shift: f64,
) -> ([[f64; N]; N], [f64; N]) {
    let mut root = [[0.0; N]; N];
    let mut reciprocal = [0.0; N];
    for i in 0..N {
        for j in 0..i {
            let mut value = matrix[i][j];
            for k in 0..j {
                value -= root[i][k] * root[j][k];
            }
            root[i][j] = value * reciprocal[j];
        }
        let mut value = matrix[i][i] + shift;
        for k in 0..i {
            value -= root[i][k] * root[i][k];
        }
        // A pivot that rounding has eaten stays at the shift it was given.
        let diagonal = value.max(shift * shift).sqrt();
        root[i][i] = diagonal;
        reciprocal[i] = 1.0 / diagonal;
    }
    (root, reciprocal)
}
