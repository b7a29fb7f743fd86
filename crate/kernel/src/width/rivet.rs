//! What riveting leaves of the pin's clearance at the ends of the bore.
//!
//! A head that is struck or rolled swells the pin in the plate, and a little of it beyond: taken as
//! swelling times exp(-x / L), x from the outer plate's inner face, L a decay length of the order of
//! the pin's radius (Saint-Venant, from memory). The ends of the bore are nearest to the plates, and
//! they are the ends that carry a crooked load.

use crate::chain::{Construction, Sizes};

/// A riveted pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rivet {
    /// How much the pin has swollen at the outer plate's inner face, mm on the diameter.
    pub swelling_mm: f64,
    /// Over which length that falls to 37 %, mm.
    pub decay_mm: f64,
}

impl Rivet {
    /// The swelling so far in from one outer plate, mm on the diameter.
    pub fn at_mm(&self, from_plate_mm: f64) -> f64 {
        self.swelling_mm * libm::exp(-from_plate_mm / self.decay_mm)
    }

    /// The clearance left so far from the chain's middle, mm; negative where the pin is jammed. Both
    /// heads count, and the inner link is centred.
    pub fn left_mm(&self, sizes: &Sizes, from_middle_mm: f64) -> f64 {
        let half_mm = 0.5 * sizes.outer_spacing_mm;
        let swollen_mm =
            self.at_mm(half_mm - from_middle_mm) + self.at_mm(half_mm + from_middle_mm);
        sizes.pin_clearance_mm() - swollen_mm
    }

    /// The ends of what bears on the pin, mm from the chain's middle: the mouth, and the inner end
    /// of a collar or the middle of a bush.
    pub fn ends_mm(sizes: &Sizes) -> [f64; 2] {
        let mouth_mm = 0.5 * sizes.bearing_width_mm();
        match sizes.construction {
            Construction::Bushed => [mouth_mm, 0.0],
            Construction::Collared => [mouth_mm, mouth_mm - sizes.effective_length_mm()],
        }
    }

    /// The clearance left at those two places, mm.
    pub fn ends_left_mm(&self, sizes: &Sizes) -> [f64; 2] {
        Self::ends_mm(sizes).map(|from_middle_mm| self.left_mm(sizes, from_middle_mm))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Dimension;
    use crate::chain::sample::narrow;

    fn sizes(construction: Construction) -> Sizes {
        narrow(construction, &[(Dimension::MouthRadius, 0.2)])
    }

    #[test]
    fn a_pin_that_has_not_swollen_has_all_its_clearance() {
        let rivet = Rivet { swelling_mm: 0.0, decay_mm: 1.8 };
        for &construction in Construction::ALL {
            let [mouth, inside] = rivet.ends_left_mm(&sizes(construction));
            assert!((mouth - 0.025).abs() < 1e-12 && (inside - 0.025).abs() < 1e-12);
        }
    }

    #[test]
    fn the_mouth_is_the_tightest_and_may_jam() {
        for &construction in Construction::ALL {
            let mut before = f64::MAX;
            for i in 1..40 {
                let rivet = Rivet { swelling_mm: 0.001 * f64::from(i), decay_mm: 1.8 };
                let [mouth, inside] = rivet.ends_left_mm(&sizes(construction));
                assert!(mouth < inside && mouth < before, "{mouth} {inside}");
                before = mouth;
            }
            assert!(before < 0.0, "{before}");
        }
    }

    #[test]
    fn swelling_falls_to_a_third_over_its_decay() {
        let rivet = Rivet { swelling_mm: 0.01, decay_mm: 1.8 };
        assert!((rivet.at_mm(1.8) / rivet.at_mm(0.0) - 1.0 / core::f64::consts::E).abs() < 1e-12);
    }
}
