//! How much longer a worn chain is, what may be allowed, and what a rule and a gauge say.

use crate::chain::Sizes;

/// Whether the shafts can be moved apart as the chain gets longer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Centres {
    /// They can, or a tensioner takes up the slack.
    Adjustable,
    /// They cannot.
    Fixed,
}

/// Elongation at which a chain is replaced: 3 % where the shafts can be moved, 1.5 % where they
/// cannot, and 200/z % where the larger wheel has z teeth, more than 67, and that is less.
///
/// Source: public notes on ANSI B29.1 (200/z); 3 % and 1.5 % common practice, no source.
pub fn limit_fraction(largest_teeth: u32, centres: Centres) -> f64 {
    const ADJUSTABLE: f64 = 0.03;
    const FIXED: f64 = 0.015;
    const TEETH_TO_SPARE: u32 = 67;
    let practice = match centres {
        Centres::Adjustable => ADJUSTABLE,
        Centres::Fixed => FIXED,
    };
    if largest_teeth > TEETH_TO_SPARE {
        practice.min(large_wheel_fraction(largest_teeth))
    } else {
        practice
    }
}

/// Elongation up to which a large wheel is said to hold a chain: 200/z %.
///
/// Source: public notes on ANSI B29.1.
pub fn large_wheel_fraction(teeth: u32) -> f64 {
    2.0 / f64::from(teeth)
}

/// How far the middle of a strand that is a little too long hangs below the line between its ends,
/// mm: sqrt(3 L dL / 8), L the line's length, dL what the strand has more. A shallow parabola.
pub fn sag_mm(span_mm: f64, longer_mm: f64) -> f64 {
    (3.0 * span_mm * longer_mm / 8.0).max(0.0).sqrt()
}

/// What decides the length of a strand under load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Length {
    /// Pitch p, mm.
    pub pitch_mm: f64,
    /// Clearance c of a new pin, mm.
    pub pin_clearance_mm: f64,
    /// Clearance of the roller on its barrel, mm, on the diameter.
    pub roller_clearance_mm: f64,
    /// Wear w of each joint, mm.
    pub joint_wear_mm: f64,
}

impl Length {
    /// Of a chain of these sizes.
    pub fn of(sizes: &Sizes, joint_wear_mm: f64) -> Self {
        Self {
            pitch_mm: sizes.pitch_mm,
            pin_clearance_mm: sizes.pin_clearance_mm(),
            roller_clearance_mm: sizes.roller_clearance_mm(),
            joint_wear_mm,
        }
    }

    /// Between two rollers across an inner link, mm: p.
    pub fn inner_pitch_mm(&self) -> f64 {
        self.pitch_mm
    }

    /// Between two rollers across an outer link, mm: p + 2 w.
    pub fn outer_pitch_mm(&self) -> f64 {
        self.pitch_mm + 2.0 * self.joint_wear_mm
    }

    /// How much longer wear has made the chain, on average: w / p.
    pub fn elongation_fraction(&self) -> f64 {
        self.joint_wear_mm / self.pitch_mm
    }

    /// What wear adds to a length of so many pitches, mm.
    pub fn longer_mm(&self, pitches: f64) -> f64 {
        pitches * self.joint_wear_mm
    }

    /// What a rule reads over any even number of pitches of a taut chain, pin to pin, against that
    /// many times p: (c/2 + w)/p. Each pin lies against one side of its bore, so the clearances of
    /// the new chain count, once.
    pub fn rule_fraction(&self) -> f64 {
        self.rule_mm() / self.pitch_mm
    }

    /// The same for one pitch, mm: c/2 + w.
    pub fn rule_mm(&self) -> f64 {
        0.5 * self.pin_clearance_mm + self.joint_wear_mm
    }

    /// What a gauge reads that pushes two rollers, so many pitches apart, away from each other: each
    /// roller also gives way by half of its own clearance, which adds roller clearance / (n p).
    pub fn gauge_fraction(&self, pitches: f64) -> f64 {
        self.rule_fraction() + self.roller_clearance_mm / (pitches * self.pitch_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(joint_wear_mm: f64) -> Length {
        let (pitch_mm, pin_clearance_mm, roller_clearance_mm) = (12.7, 0.025, 0.15);
        Length { pitch_mm, pin_clearance_mm, roller_clearance_mm, joint_wear_mm }
    }

    #[test]
    fn wear_never_shortens_and_only_outer_pitches_grow() {
        let mut before = length(0.0);
        for i in 1..=100 {
            let now = length(0.01 * f64::from(i));
            assert!(now.outer_pitch_mm() > before.outer_pitch_mm());
            assert!(now.elongation_fraction() > before.elongation_fraction());
            assert!(now.rule_fraction() > before.rule_fraction());
            assert_eq!(now.inner_pitch_mm().to_bits(), before.inner_pitch_mm().to_bits());
            before = now;
        }
    }

    #[test]
    fn the_mean_of_the_two_pitches_is_longer_by_the_elongation() {
        let worn = length(0.12);
        let mean_mm = 0.5 * (worn.inner_pitch_mm() + worn.outer_pitch_mm());
        assert!((mean_mm / 12.7 - 1.0 - worn.elongation_fraction()).abs() < 1e-15);
    }

    #[test]
    fn a_gauge_reads_more_than_a_rule_by_the_rollers_clearance_alone() {
        let worn = length(0.06);
        let more_mm = (worn.gauge_fraction(8.0) - worn.rule_fraction()) * 8.0 * 12.7;
        assert!((more_mm - 0.15).abs() < 1e-12);
        let tight = Length { roller_clearance_mm: 0.0, ..worn };
        assert!((tight.gauge_fraction(8.0) - tight.rule_fraction()).abs() < 1e-15);
    }

    #[test]
    fn a_shallow_strand_hangs_as_far_as_its_arc_is_long() {
        // Arc of a parabola of sag f over a span L: L + 8 f^2 / (3 L) - ..., worked out by summing.
        let (span_mm, longer_mm) = (400.0, 2.0);
        let f = sag_mm(span_mm, longer_mm);
        let steps = 20_000;
        let y = |x: f64| 4.0 * f * x * (span_mm - x) / (span_mm * span_mm);
        let dx = span_mm / f64::from(steps);
        let at = |i: i32| y(f64::from(i) * dx);
        let arc: f64 =
            (0..steps).map(|i| (dx * dx + (at(i + 1) - at(i)) * (at(i + 1) - at(i))).sqrt()).sum();
        assert!((arc - span_mm - longer_mm).abs() < 0.01 * longer_mm, "{arc}");
    }
}
