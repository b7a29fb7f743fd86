//! A problem in its own units: lengths by the largest gap or by load over stiffness, forces by the load.

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
    /// The size of the largest gap, scaled: rounding is measured by it.
    pub(super) largest_gap: f64,
    /// The size of a usual gap, scaled: what touches is measured by it.
    pub(super) usual_gap: f64,
    pub(super) length: f64,
    pub(super) force: f64,
}

impl Scaled {
    pub(super) fn new() -> Scaled {
        Scaled {
            hessian: Band::new(0, 0),
            gradient: Vec::new(),
            gap: Vec::new(),
            largest_gap: 1.0,
            usual_gap: 1.0,
            length: 1.0,
            force: 1.0,
        }
    }

    /// Takes the data of `problem`, scaled by its largest gap or, where it is to be `soft`, so that
    /// `H` is of size 1; false when any of it is not finite.
    pub(super) fn take(&mut self, problem: &Problem, soft: bool) -> bool {
        let rows = &problem.rows;
        self.gap.resize(rows.len(), 0.0);
        for (to, (gap, scale)) in self.gap.iter_mut().zip(rows.gap.iter().zip(&rows.scale)) {
            *to = gap * scale;
        }
        let largest_gap = largest(&self.gap);
        let largest_load = largest(&problem.gradient);
        let stiffest = largest(problem.hessian.entries());
        if !(rows.finite && (largest_gap + largest_load + stiffest).is_finite()) {
            return false;
        }
        self.length = length_scale(largest_gap, largest_load, stiffest);
        (self.largest_gap, self.usual_gap) = (1.0, 1.0);
        if soft && largest_gap > 0.0 && stiffest > 0.0 {
            let sum: f64 = self.gap.iter().map(|gap| gap.abs()).sum();
            let usual = power_of_two(sum / rows.len() as f64);
            self.length = power_of_two(largest_load / stiffest).max(usual);
            self.largest_gap = power_of_two(largest_gap) / self.length;
            self.usual_gap = usual / self.length;
        }
        self.force = power_of_two(largest_load.max(stiffest * self.length));
        let shorten = 1.0 / self.length;
        self.gap.iter_mut().for_each(|gap| *gap *= shorten);
        self.hessian.take_times(&problem.hessian, self.length / self.force);
        self.gradient.resize(problem.unknowns, 0.0);
        let weaken = 1.0 / self.force;
        for (to, from) in self.gradient.iter_mut().zip(&problem.gradient) {
            *to = from * weaken;
        }
        (self.length / self.force).is_finite()
    }
}

impl Scaled {
    /// The size of the lengths in an answer, by which rounding is measured.
    pub(super) fn length_of(&self, x: &[f64]) -> f64 {
        self.largest_gap + largest(x)
    }
}

/// The largest gap; where every gap is zero, the way the load would go against the stiffness, but
/// no more than the caller's unit.
fn length_scale(gap: f64, load: f64, stiffness: f64) -> f64 {
    if gap > 0.0 {
        power_of_two(gap)
    } else if load < stiffness {
        power_of_two(load / stiffness)
    } else {
        1.0
    }
}

/// The largest magnitude, or not a number when any entry is not finite.
#[inline(always)]
pub(super) fn largest(values: &[f64]) -> f64 {
    // Two at a time; nought times an entry is nought unless it is not finite.
    let (mut most, mut odd) = ([0.0; 2], [0.0; 2]);
    let (pairs, last) = values.as_chunks::<2>();
    let mut see = |lane: usize, value: f64| {
        most[lane] = if value.abs() > most[lane] { value.abs() } else { most[lane] };
        odd[lane] += 0.0 * value;
    };
    for &[one, other] in pairs {
        see(0, one);
        see(1, other);
    }
    last.iter().for_each(|&value| see(0, value));
    (if most[1] > most[0] { most[1] } else { most[0] }) + odd[0] + odd[1]
}

/// The power of two just below `value`; 1 when `value` has no such power.
fn power_of_two(value: f64) -> f64 {
    const EXPONENT: u64 = 0x7ff0_0000_0000_0000;
    let power = f64::from_bits(value.to_bits() & EXPONENT);
    if power > 0.0 && power.is_finite() { power } else { 1.0 }
}
