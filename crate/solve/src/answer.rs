//! How good an answer is, in the caller's units and from the caller's data.

use super::lines::{add_times_of, by_length, dot_of};
use super::problem::{Problem, Rows};
use super::scale::largest;

/// The smallest gap at `x` (+0 without rows) and the largest component of `Hx + q` less the pushes
/// of the rows; of the pushes alone when not `loaded`. `scratch` is overwritten.
pub(super) fn measure(
    problem: &Problem,
    x: &[f64],
    push: &[f64],
    loaded: bool,
    scratch: &mut Vec<f64>,
) -> (f64, f64) {
    let rows = &problem.rows;
    scratch.clear();
    scratch.resize(problem.unknowns + rows.stride, 0.0);
    if loaded {
        problem.hessian.multiply(x, scratch);
        for (residual, gradient) in scratch.iter_mut().zip(&problem.gradient) {
            *residual += gradient;
        }
    }
    let worst = by_length!(rows.stride, take_off, rows, x, push, scratch);
    (if rows.is_empty() { 0.0 } else { worst + 0.0 }, largest(scratch))
}

/// Takes the pushes off `residual`; answers the smallest gap, or not a number where one is not.
#[inline(always)]
fn take_off<const N: usize>(rows: &Rows, x: &[f64], push: &[f64], residual: &mut [f64]) -> f64 {
    let n = if N == 0 { rows.stride } else { N };
    let mut worst = f64::INFINITY;
    for (first, run) in rows.runs() {
        let (x, residual) = (&x[first..first + n], &mut residual[first..first + n]);
        let lines = rows.coefficient[n * run.start..n * run.end].chunks_exact(n);
        let sizes = rows.size[run.clone()].iter();
        let gaps = rows.gap[run.clone()].iter();
        for (((line, size), gap), push) in lines.zip(sizes).zip(gaps).zip(&push[run]) {
            let gap = gap + size * dot_of::<N>(line, x);
            worst = if gap >= worst { worst } else { gap };
            if *push > 0.0 {
                add_times_of::<N>(residual, -push * size, line);
            }
        }
    }
    worst
}
