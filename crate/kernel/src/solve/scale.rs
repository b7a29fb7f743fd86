//! A problem in its own units: lengths by the largest gap, forces by the load.

use super::band::Band;
use super::problem::Problem;

/// The scaled copy of everything but the rows' coefficients, which scaling leaves alone.
///
/// With `x = length y` and `push = force z`: gaps are divided by `length`, the gradient by
/// `force`, and `H` multiplied by `length / force`. Both scales are powers of two, so nothing is
/// rounded on the way in or out.
#[derive(Clone, Debug)]
pub(super) struct Scaled {
    pub(super) hessian: Band,
    pub(super) gradient: Vec<f64>,
    pub(super) gap: Vec<f64>,
    pub(super) length: f64,
    pub(super) force: f64,
}

impl Scaled {
    pub(super) fn new() -> Scaled {
        Scaled {
            hessian: Band::new(0, 0),
            gradient: Vec::new(),
            gap: Vec::new(),
            length: 1.0,
            force: 1.0,
        }
    }

    /// Takes the data of `problem`; false when any of it is not finite.
    pub(super) fn take(&mut self, problem: &Problem) -> bool {
        let rows = &problem.rows;
        self.gap.resize(rows.len(), 0.0);
        for (to, (gap, scale)) in self.gap.iter_mut().zip(rows.gap.iter().zip(&rows.scale)) {
            *to = gap * scale;
        }
        let largest_gap = largest(&self.gap);
        let largest_load = largest(&problem.gradient);
        let stiffest = largest(problem.hessian.entries());
        self.length = power_of_two(if largest_gap > 0.0 {
            largest_gap
        } else if stiffest > 0.0 && largest_load > 0.0 {
            largest_load / stiffest
        } else {
            1.0
        });
        self.force = power_of_two(largest_load.max(stiffest * self.length));
        let stiffness = self.length / self.force;
        self.hessian.reshape(problem.unknowns, rows.stride);
        copy_times(problem.hessian.entries(), stiffness, self.hessian.entries_mut());
        self.gradient.resize(problem.unknowns, 0.0);
        copy_times(&problem.gradient, 1.0 / self.force, &mut self.gradient);
        let shorten = 1.0 / self.length;
        self.gap.iter_mut().for_each(|gap| *gap *= shorten);
        let check = largest_gap + largest_load + stiffest + finite(&rows.coefficient);
        check.is_finite() && stiffness.is_finite()
    }
}

fn copy_times(from: &[f64], factor: f64, to: &mut [f64]) {
    for (to, from) in to.iter_mut().zip(from) {
        *to = from * factor;
    }
}

/// The largest magnitude; not a number when any entry is not.
fn largest(values: &[f64]) -> f64 {
    let mut largest = 0.0_f64;
    for value in values {
        largest = largest.max(value.abs());
    }
    largest + finite(values)
}

/// 0 when every entry is finite, not a number otherwise.
fn finite(values: &[f64]) -> f64 {
    let mut sum = 0.0;
    for value in values {
        sum += value * 0.0;
    }
    sum
}

/// The power of two just below `value`; 1 when `value` has no such power.
fn power_of_two(value: f64) -> f64 {
    const EXPONENT: u64 = 0x7ff0_0000_0000_0000;
    let power = f64::from_bits(value.to_bits() & EXPONENT);
    if power > 0.0 && power.is_finite() { power } else { 1.0 }
}
