//! What tolerances cost, and the cheapest ones that meet a demand.
//!
//! The cost of holding a dimension to a tolerance t, mm, is C = A + B / t^k. Halving t makes the
//! variable part 2^k times as large: at least four times for k >= 2 (common practice, no source).
//! The cheapest tolerances that use up a demand's room T follow from Lagrange's condition, the same
//! gain for every bit of room given up:
//!
//! - worst case, sum of |a| t = T: k B / t^(k+1) = lambda |a|;
//! - root sum square, sum of (a t)^2 = T^2: k B / t^(k+1) = 2 lambda a^2 t, exponent k + 2.
//!
//! Source: derived; the conditions are in any text on the calculus of several variables.

use crate::chain::Dimension;
use crate::solve::{RootStatus, root_between};

/// A dimension whose tolerance has a price.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Priced {
    /// Which.
    pub dimension: Dimension,
    /// How much the demanded number grows for each mm of it, a.
    pub slope: f64,
    /// A.
    pub fixed: f64,
    /// B, with t in mm.
    pub factor: f64,
    /// k.
    pub exponent: f64,
}

impl Priced {
    /// A + B / t^k for a tolerance, mm.
    pub fn cost(&self, half_mm: f64) -> f64 {
        self.fixed + self.variable(half_mm)
    }

    /// B / t^k.
    pub fn variable(&self, half_mm: f64) -> f64 {
        self.factor / libm::pow(half_mm, self.exponent)
    }
}

/// How tolerances use up room.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// Every one at its worst at once.
    Worst,
    /// As independent chances.
    RootSumSquare,
}

impl Rule {
    /// Both.
    pub const ALL: &'static [Self] = &[Self::Worst, Self::RootSumSquare];

    /// The word of a report.
    pub fn key(self) -> &'static str {
        match self {
            Self::Worst => "worst",
            Self::RootSumSquare => "rss",
        }
    }

    /// The room that tolerances use, in the demand's unit.
    pub fn used(self, slopes_halves: impl Iterator<Item = (f64, f64)>) -> f64 {
        match self {
            Self::Worst => slopes_halves.map(|(a, t)| a.abs() * t).sum(),
            Self::RootSumSquare => {
                slopes_halves.map(|(a, t)| (a * t) * (a * t)).sum::<f64>().sqrt()
            }
        }
    }

    /// The room left of `room` after some that is `used` otherwise.
    pub fn left(self, room: f64, used: f64) -> f64 {
        match self {
            Self::Worst => room - used,
            Self::RootSumSquare if used >= room => 0.0,
            Self::RootSumSquare => (room * room - used * used).sqrt(),
        }
    }

    /// The tolerance at which a dimension gains as much as every other, for the logarithm of lambda.
    fn half_mm(self, priced: &Priced, log_lambda: f64) -> f64 {
        let k = priced.exponent;
        let a = priced.slope.abs();
        let (pull, power) = match self {
            Self::Worst => (a, k + 1.0),
            Self::RootSumSquare => (2.0 * a * a, k + 2.0),
        };
        libm::exp((libm::log(k * priced.factor / pull) - log_lambda) / power)
    }
}

/// The cheapest tolerances.
#[derive(Debug, Clone, PartialEq)]
pub struct Allocation {
    /// What they use up.
    pub rule: Rule,
    /// The tolerances t, mm, in the order of the dimensions.
    pub halves_mm: Vec<f64>,
    /// What they cost together.
    pub total: f64,
}

/// Logarithms of lambda beyond which no tolerance is a number any more.
const LOG_LAMBDA: f64 = 600.0;

/// The cheapest tolerances of these dimensions whose use of room is `room`, in the demand's unit;
/// none without room, without dimensions, or where one of them does not move the demanded number.
pub fn cheapest(rule: Rule, priced: &[Priced], room: f64) -> Option<Allocation> {
    const WIDTH: f64 = 1e-14;
    let moves = priced.iter().all(|priced| priced.slope != 0.0);
    if priced.is_empty() || !moves || !(room > 0.0 && room.is_finite()) {
        return None;
    }
    let used = |log_lambda: f64| {
        let each = priced.iter().map(|p| (p.slope, rule.half_mm(p, log_lambda)));
        libm::log(rule.used(each)) - libm::log(room)
    };
    let root = root_between(used, -LOG_LAMBDA, LOG_LAMBDA, WIDTH);
    if root.status == RootStatus::NotBracketed {
        return None;
    }
    let halves_mm: Vec<_> = priced.iter().map(|p| rule.half_mm(p, root.at)).collect();
    let total = total(priced, &halves_mm);
    let ordinary = total.is_finite() && halves_mm.iter().all(|half_mm| half_mm.is_finite());
    ordinary.then_some(Allocation { rule, halves_mm, total })
}

/// What tolerances cost together.
pub fn total(priced: &[Priced], halves_mm: &[f64]) -> f64 {
    priced.iter().zip(halves_mm).map(|(priced, half_mm)| priced.cost(*half_mm)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn priced() -> Vec<Priced> {
        let of = |dimension, slope, factor, exponent| Priced {
            dimension,
            slope,
            fixed: 0.3,
            factor,
            exponent,
        };
        vec![
            of(Dimension::InnerPlate, -2.0, 2e-4, 2.0),
            of(Dimension::InnerWidth, -1.0, 1e-3, 1.5),
            of(Dimension::OuterSpacing, 1.0, 5e-4, 2.6),
        ]
    }

    fn used(rule: Rule, priced: &[Priced], halves_mm: &[f64]) -> f64 {
        rule.used(priced.iter().zip(halves_mm).map(|(p, t)| (p.slope, *t)))
    }

    #[test]
    fn the_room_is_used_up_and_no_exchange_is_cheaper() {
        const ROOM_MM: f64 = 0.1;
        let priced = priced();
        for &rule in Rule::ALL {
            let best = cheapest(rule, &priced, ROOM_MM).expect("there is room");
            assert!((used(rule, &priced, &best.halves_mm) - ROOM_MM).abs() < 1e-12);
            // Give some room from one to another, and take back what is too much from all alike.
            for from in 0..3 {
                for to in (0..3).filter(|to| *to != from) {
                    for share in [1e-4, 1e-2, 0.2] {
                        let mut other = best.halves_mm.clone();
                        other[from] *= 1.0 - share;
                        other[to] *= 1.0 + share;
                        let scale = ROOM_MM / used(rule, &priced, &other);
                        other.iter_mut().for_each(|t| *t *= scale);
                        assert!(total(&priced, &other) > best.total, "{rule:?} {from} {to}");
                    }
                }
            }
        }
    }

    #[test]
    fn equal_parts_share_the_room_equally() {
        let one = priced()[0];
        let four = [one; 4];
        let worst = cheapest(Rule::Worst, &four, 0.4).expect("there is room");
        let chance = cheapest(Rule::RootSumSquare, &four, 0.4).expect("there is room");
        for i in 0..4 {
            assert!((worst.halves_mm[i] - 0.05).abs() < 1e-12, "0.4 / (4 x 2)");
            assert!((chance.halves_mm[i] - 0.1).abs() < 1e-12, "0.4 / (sqrt 4 x 2)");
        }
    }

    #[test]
    fn half_the_tolerance_costs_two_to_the_k_times_its_variable_part() {
        for priced in priced() {
            let times = priced.variable(0.01) / priced.variable(0.02);
            assert!((times / libm::pow(2.0, priced.exponent) - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn no_room_no_allocation() {
        for room in [0.0, -0.1, f64::NAN, f64::INFINITY] {
            assert_eq!(cheapest(Rule::Worst, &priced(), room), None);
        }
        assert_eq!(cheapest(Rule::Worst, &[], 0.1), None);
        let idle = Priced { slope: 0.0, ..priced()[0] };
        assert_eq!(cheapest(Rule::RootSumSquare, &[idle], 0.1), None);
    }
}
