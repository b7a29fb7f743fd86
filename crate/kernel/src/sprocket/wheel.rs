//! One wheel and what it does to the chain that runs onto it.

use core::f64::consts::PI;

/// A wheel for a chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wheel {
    /// Teeth z.
    pub teeth: u32,
    /// Pitch p of the chain, mm.
    pub pitch_mm: f64,
    /// Diameter d1 of its rollers, mm.
    pub roller_diameter_mm: f64,
}

/// One degree, rad.
pub(super) const DEGREE: f64 = PI / 180.0;

impl Wheel {
    /// Teeth as a number.
    pub fn z(&self) -> f64 {
        f64::from(self.teeth)
    }

    /// How far a joint folds when it runs on, and unfolds when it runs off: alpha = 2 pi / z.
    pub fn articulation_rad(&self) -> f64 {
        2.0 * PI / self.z()
    }

    /// Diameter of the circle through the seated pins, mm: d = p / sin(pi / z).
    ///
    /// Source: ISO 606, 5.3 (as quoted in public notes); printed wheel tables agree.
    pub fn pitch_diameter_mm(&self) -> f64 {
        self.pitch_mm / libm::sin(PI / self.z())
    }

    /// Half of the pitch diameter, mm.
    pub fn pitch_radius_mm(&self) -> f64 {
        0.5 * self.pitch_diameter_mm()
    }

    /// How much the chain rises and falls at the wheel, as a fraction of the pitch radius:
    /// 1 - cos(pi / z). Derived: a chord's middle against its ends.
    pub fn chordal_rise_fraction(&self) -> f64 {
        let sin = libm::sin(0.5 * PI / self.z());
        2.0 * sin * sin
    }

    /// How much the chain's speed varies over a tooth at a steady turn of the wheel, from slowest to
    /// fastest, as a fraction of the mean: (pi / z) (1 / sin(pi / z) - 1 / tan(pi / z)), which is
    /// (pi / z) tan(pi / 2z). Derived.
    pub fn chordal_speed_fraction(&self) -> f64 {
        let half = 0.5 * PI / self.z();
        2.0 * half * libm::tan(half)
    }

    /// Pressure angle phi: between the pull of the strand and the push of the first tooth on its
    /// roller, 35 - 120 / z degrees for a new chain.
    ///
    /// Source: ASME/ANSI B29.1M, from memory.
    pub fn pressure_angle_rad(&self) -> f64 {
        const LARGEST_DEG: f64 = 35.0;
        const FALL_DEG: f64 = 120.0;
        DEGREE * (LARGEST_DEG - FALL_DEG / self.z())
    }

    /// Push of the first tooth on its roller, as a share of the pull of the strand:
    /// sin(alpha) / sin(phi + alpha). Derived: the pull, the pull in the next link and the push
    /// balance at one pin.
    pub fn tooth_push_ratio(&self) -> f64 {
        let alpha = self.articulation_rad();
        libm::sin(alpha) / libm::sin(self.pressure_angle_rad() + alpha)
    }

    /// What a tooth leaves of the pull for the next link: sin(phi) / sin(phi + alpha). Derived as
    /// [`Wheel::tooth_push_ratio`].
    pub fn pull_left_ratio(&self) -> f64 {
        let phi = self.pressure_angle_rad();
        libm::sin(phi) / libm::sin(phi + self.articulation_rad())
    }

    /// Measure over two rollers laid in opposite gaps, mm: d + d1; of an odd wheel in the gaps most
    /// nearly opposite, d cos(pi / 2z) + d1.
    ///
    /// Source: ISO 606, 5.3, from memory.
    pub fn over_pins_mm(&self) -> f64 {
        let across =
            if self.teeth.is_multiple_of(2) { 1.0 } else { libm::cos(0.5 * PI / self.z()) };
        self.pitch_diameter_mm() * across + self.roller_diameter_mm
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of a few operations.
    const ROUNDING: f64 = 1e-12;

    fn wheel(teeth: u32) -> Wheel {
        Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 8.51 }
    }

    #[test]
    fn the_measures_of_chordal_action_are_those_of_the_chord() {
        for teeth in [5, 11, 16, 17, 44, 1000] {
            let wheel = wheel(teeth);
            let half = PI / wheel.z();
            let speed = half * (1.0 / libm::sin(half) - 1.0 / libm::tan(half));
            assert!((wheel.chordal_speed_fraction() - speed).abs() < ROUNDING * wheel.z());
            assert!((wheel.chordal_rise_fraction() - (1.0 - libm::cos(half))).abs() < ROUNDING);
        }
    }

    #[test]
    fn the_pull_the_pull_left_and_the_push_balance() {
        for teeth in [5, 9, 16, 44, 200] {
            let wheel = wheel(teeth);
            let (alpha, phi) = (wheel.articulation_rad(), wheel.pressure_angle_rad());
            let (left, push) = (wheel.pull_left_ratio(), wheel.tooth_push_ratio());
            // The strand pulls with 1 along the first axis; the next link is turned by alpha.
            let along = 1.0 - left * libm::cos(alpha) - push * libm::cos(phi);
            let across = left * libm::sin(alpha) - push * libm::sin(phi);
            assert!(along.abs() < ROUNDING && across.abs() < ROUNDING, "{teeth}");
        }
    }
}
