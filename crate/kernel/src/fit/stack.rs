//! How the tolerances of several dimensions add up in one number that depends on them.

use super::asked::{Asked, Made};
use super::law::Spread;
use super::many::Many;
use crate::chain::{Dimension, Sizes};
use crate::quantity::loosening;

/// One dimension's part in a sum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// How much the sum grows with the dimension, a.
    pub slope: f64,
    /// The dimension's tolerance t, half of what lies between its limits.
    pub half: f64,
    /// How far its mean may lie off the middle, as a share m of t.
    pub shift: f64,
}

impl Part {
    /// |a| t.
    fn reach(&self) -> f64 {
        self.slope.abs() * self.half
    }
}

/// Bender's factor on the root sum square (Bender, Statistical Tolerancing as it relates to Quality
/// Control and the Designer, 1968; the factor from memory).
pub const INFLATION: f64 = 1.5;

/// Every part at its worst limit at once: sum of |a| t.
pub fn worst_case(parts: &[Part]) -> f64 {
    parts.iter().map(Part::reach).sum()
}

/// Independent parts in the middle of their limits: the root of the sum of (a t)^2, as many standard
/// deviations of the sum as t is of each part.
pub fn root_sum_square(parts: &[Part]) -> f64 {
    parts.iter().map(|part| part.reach() * part.reach()).sum::<f64>().sqrt()
}

/// The root sum square for laws that are uniform between their limits: sqrt 3 times as much.
pub fn uniform_inflated(parts: &[Part]) -> f64 {
    const UNIFORM: f64 = 3.0;
    UNIFORM.sqrt() * root_sum_square(parts)
}

/// The root sum square times [`INFLATION`].
pub fn inflated(parts: &[Part]) -> f64 {
    INFLATION * root_sum_square(parts)
}

/// Means off the middle add up, what is left of each tolerance as a root sum square: sum of |a| m t
/// + root of the sum of (a (1 - m) t)^2 (Greenwood, Chase, A New Tolerance Analysis Method for
///   Designers and Manufacturers, 1987; from memory). With m 0 the root sum square, with m 1 the
///   worst case.
pub fn shifted(parts: &[Part]) -> f64 {
    let left = |part: &Part| part.reach() * (1.0 - part.shift);
    let drift: f64 = parts.iter().map(|part| part.reach() * part.shift).sum();
    drift + parts.iter().map(|part| left(part) * left(part)).sum::<f64>().sqrt()
}

/// How one number of a chain depends on the dimensions that differ from chain to chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    /// The number.
    pub asked: Asked,
    /// Its value in the middle of all limits, in its unit.
    pub middle: f64,
    /// Its value at the mean of every law.
    pub mean: f64,
    /// Its standard deviation to first order: root of the sum of (a sd)^2.
    pub rss_sd: f64,
    /// Its value with every dimension at the limit that makes it least; none where no chain is
    /// there.
    pub worst_low: Option<f64>,
    /// Its value with every dimension at the limit that makes it most.
    pub worst_high: Option<f64>,
    /// One for each dimension, in the order of the spreads.
    pub parts: Vec<StackPart>,
}

/// One dimension's part in a number of a chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StackPart {
    /// Which.
    pub dimension: Dimension,
    /// How much the number grows for each mm of the dimension, in the middle.
    pub slope: f64,
    /// The dimension's tolerance t, mm.
    pub half_mm: f64,
    /// |a| t, in the number's unit: what the dimension eats of it either way.
    pub reach: f64,
    /// (a sd)^2 as a share of their sum; the shares of a number that nothing moves are zero.
    pub share: f64,
    /// How far the law's mean lies off the middle, as a share of t.
    pub shift: f64,
}

impl StackPart {
    /// As one of a sum.
    pub fn part(&self) -> Part {
        Part { slope: self.slope, half: self.half_mm, shift: self.shift.abs() }
    }

    /// Which way a number goes as the dimension grows, anywhere between the limits: up when positive,
    /// and nowhere at all when zero. All but the limits of play are sums and differences of sizes.
    pub fn way(&self, asked: Asked) -> f64 {
        if asked.is_play() { loosening(self.dimension) } else { self.slope }
    }
}

/// A step of a size, mm, to either side: a power of two, so that it is added exactly.
const STEP_MM: f64 = 1.0 / 16_384.0;
/// Slopes up to this are rounding: a millionth of what a step of one size could do to another.
const ROUNDING: f64 = 1e-9;

impl Many {
    /// How much a number grows for each mm of a dimension, about these sizes: a difference over one
    /// step to both sides, by the kernel.
    pub fn slope(&self, asked: Asked, about: &Sizes, dimension: Dimension) -> f64 {
        let at = |step_mm: f64| {
            let mut sizes = *about;
            dimension.put(&mut sizes, dimension.of(about) + step_mm);
            if self.follows() {
                sizes.make_flush();
            }
            asked.of(&sizes)
        };
        let slope = (at(STEP_MM) - at(-STEP_MM)) / (2.0 * STEP_MM);
        if slope.abs() <= ROUNDING { 0.0 } else { slope }
    }

    /// The value with every dimension where `upward` or its opposite has it, if a chain is there. The
    /// numbers of the catalogue move one way with every size, so that the worst is at a corner; a
    /// limit of play that other faces make in the middle still moves the way that it can.
    fn corner(&self, asked: Asked, parts: &[StackPart], upward: bool) -> Option<f64> {
        let ends = self.spreads.iter().zip(parts).map(|(spread, part)| match part.way(asked) {
            0.0 => spread.middle_mm(),
            way if (way > 0.0) == upward => spread.high_mm,
            _ => spread.low_mm,
        });
        let sizes = self.sizes(ends);
        Made::of(&sizes).has(asked).then(|| asked.of(&sizes))
    }

    /// How a number depends on the dimensions; none where the middle has no such number.
    pub fn stack(&self, asked: Asked) -> Option<Stack> {
        let (middle, mean) = (self.middle(), self.mean());
        if !Made::of(&middle).has(asked) || !Made::of(&mean).has(asked) {
            return None;
        }
        let variance = |spread: &Spread, slope: f64| {
            let deviation = slope * spread.moments_mm().1;
            deviation * deviation
        };
        let slopes: Vec<f64> =
            self.spreads.iter().map(|s| self.slope(asked, &middle, s.dimension)).collect();
        let each = || self.spreads.iter().zip(&slopes);
        let whole: f64 = each().map(|(spread, slope)| variance(spread, *slope)).sum();
        let part = |(spread, slope): (&Spread, &f64)| StackPart {
            dimension: spread.dimension,
            slope: *slope,
            half_mm: spread.half_mm(),
            reach: slope.abs() * spread.half_mm(),
            share: if whole > 0.0 { variance(spread, *slope) / whole } else { 0.0 },
            shift: spread.mean_shift,
        };
        let parts: Vec<_> = each().map(part).collect();
        Some(Stack {
            asked,
            middle: asked.of(&middle),
            mean: asked.of(&mean),
            rss_sd: whole.sqrt(),
            worst_low: self.corner(asked, &parts, false),
            worst_high: self.corner(asked, &parts, true),
            parts,
        })
    }
}

impl Stack {
    /// The parts as those of a sum.
    pub fn sum(&self) -> Vec<Part> {
        self.parts.iter().map(StackPart::part).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::trike;
    use super::*;
    use crate::quantity::Quantity;

    #[test]
    fn sums_of_sizes_have_whole_slopes() {
        let stack = trike().stack(Asked::Catalogue(Quantity::SideGap)).expect("a chain");
        let slopes: Vec<_> = stack.parts.iter().map(|part| part.slope).collect();
        assert!(slopes.iter().zip([0.0, 0.0, -2.0, 1.0]).all(|(a, b)| (a - b).abs() < 1e-9));
        assert!((stack.worst_low.unwrap() - 0.13).abs() < 1e-12);
        assert!((stack.worst_high.unwrap() - 0.27).abs() < 1e-12);
        assert!((stack.parts.iter().map(|part| part.share).sum::<f64>() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_slope_of_a_play_limit_agrees_with_other_steps_and_with_its_small_angle_form() {
        let many = trike();
        let middle = many.middle();
        let asked = Asked::Catalogue(Quantity::TurnLimit);
        for dimension in [Dimension::PinDiameter, Dimension::Bore] {
            let slope = many.slope(asked, &middle, dimension);
            for step_mm in [1e-3, 1e-4, 1e-5] {
                let at = |way: f64| {
                    let mut sizes = middle;
                    dimension.put(&mut sizes, dimension.of(&middle) + way * step_mm);
                    asked.of(&sizes)
                };
                let other = (at(1.0) - at(-1.0)) / (2.0 * step_mm);
                assert!((slope - other).abs() < 1e-6 * slope.abs(), "{slope} {other}");
            }
            // 2 c / B to first order in the angle, which is 0.6 mrad.
            let small = 2.0 / middle.bearing_width_mm();
            assert!((slope.abs() - small).abs() < 0.01 * small, "{slope} {small}");
        }
    }

    #[test]
    fn shifts_lead_from_the_root_sum_square_to_the_worst_case() {
        let parts = |shift| [1.0, -2.0, 0.5].map(|slope| Part { slope, half: 0.1, shift });
        assert!((shifted(&parts(0.0)) - root_sum_square(&parts(0.0))).abs() < 1e-15);
        assert!((shifted(&parts(1.0)) - worst_case(&parts(1.0))).abs() < 1e-15);
        let half = shifted(&parts(0.5));
        assert!(half > root_sum_square(&parts(0.5)) && half < worst_case(&parts(0.5)));
    }
}
