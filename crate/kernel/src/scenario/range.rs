//! The range that a number of a scenario must lie in.

use crate::error::Rule;

/// Numbers from `low` to `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Range {
    low: f64,
    high: f64,
    /// Whether `low` itself is left out.
    above_low: bool,
    whole: bool,
    /// Whether the number is a length, which may be given in inches.
    pub(super) is_length: bool,
}

impl Range {
    /// Any finite number.
    pub(super) const fn any() -> Self {
        Self::between(f64::MIN, f64::MAX)
    }

    /// From one bound to the other, both of them allowed.
    pub(super) const fn between(low: f64, high: f64) -> Self {
        Self { low, high, above_low: false, whole: false, is_length: false }
    }

    /// From zero.
    pub(super) const fn from_zero(high: f64) -> Self {
        Self::between(0.0, high)
    }

    /// More than zero.
    pub(super) const fn above_zero(high: f64) -> Self {
        Self { above_low: true, ..Self::between(0.0, high) }
    }

    /// Whole numbers.
    pub(super) const fn whole(low: f64, high: f64) -> Self {
        Self { whole: true, ..Self::between(low, high) }
    }

    /// The same range for a length.
    pub(super) const fn length(self) -> Self {
        Self { is_length: true, ..self }
    }

    /// The same range, for a length when the key says so.
    pub(super) fn of_key(self, key: &str) -> Self {
        let is_length = key.ends_with("_mm") && !key.ends_with("_n_mm");
        Self { is_length: self.is_length || is_length, ..self }
    }

    /// The first rule that a number breaks.
    pub(super) fn broken_by(self, number: f64) -> Option<Rule> {
        match number {
            _ if !number.is_finite() => Some(Rule::Finite),
            _ if self.above_low && self.low == 0.0 && number <= 0.0 => Some(Rule::Positive),
            _ if self.low == 0.0 && number < 0.0 => Some(Rule::NotNegative),
            _ if number < self.low => Some(Rule::AtLeast { limit: self.low }),
            _ if number > self.high => Some(Rule::AtMost { limit: self.high }),
            _ if self.whole && number.fract() != 0.0 => Some(Rule::Whole),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_range_names_the_rule_that_is_broken() {
        let teeth = Range::whole(5.0, 200.0);
        assert_eq!(teeth.broken_by(17.0), None);
        assert_eq!(teeth.broken_by(17.5), Some(Rule::Whole));
        assert_eq!(teeth.broken_by(4.0), Some(Rule::AtLeast { limit: 5.0 }));
        assert_eq!(teeth.broken_by(201.0), Some(Rule::AtMost { limit: 200.0 }));
        assert_eq!(teeth.broken_by(f64::NAN), Some(Rule::Finite));
        assert_eq!(Range::above_zero(1.0).broken_by(0.0), Some(Rule::Positive));
        assert_eq!(Range::from_zero(1.0).broken_by(-0.1), Some(Rule::NotNegative));
    }
}
