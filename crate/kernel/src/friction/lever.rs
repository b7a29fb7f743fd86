//! Lever arms: how far from the pin's axis a rubbing face works.

use crate::chain::Sizes;

/// Lever arm of a flat ring that rubs with the same pressure everywhere, mm:
/// (2/3) (R1^3 - R2^3) / (R1^2 - R2^2), R1 the outer radius, R2 the inner one.
///
/// Written as (2/3) (R1^2 + R1 R2 + R2^2) / (R1 + R2), which also holds for a thin ring. Source:
/// textbook collar and pivot bearings, new.
pub fn uniform_pressure_mm(outer_mm: f64, inner_mm: f64) -> f64 {
    const TWO_THIRDS: f64 = 2.0 / 3.0;
    let squares = outer_mm * outer_mm + outer_mm * inner_mm + inner_mm * inner_mm;
    TWO_THIRDS * squares / (outer_mm + inner_mm)
}

/// Lever arm of a flat ring that has worn in, so that pressure times radius is the same
/// everywhere, mm: (R1 + R2) / 2.
///
/// Source: textbook collar and pivot bearings, worn in.
pub fn uniform_wear_mm(outer_mm: f64, inner_mm: f64) -> f64 {
    0.5 * (outer_mm + inner_mm)
}

/// How far from the pin's axis the plates of a chain rub, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FaceArms {
    /// Flat against each other, pressure the same everywhere.
    pub flat_mm: f64,
    /// Flat against each other, worn in.
    pub worn_mm: f64,
    /// On the edge at an inner plate's end.
    pub inner_edge_mm: f64,
    /// On the edge at an outer plate's end.
    pub outer_edge_mm: f64,
}

impl FaceArms {
    /// The arms of a chain.
    ///
    /// Flat, the plates meet on a ring about the pin: from the bore's mouth out to the lower of the
    /// two plates, less its chamfer. Round eyes are taken; what the waists add is left out.
    pub fn of(sizes: &Sizes) -> Self {
        let height_mm = sizes.inner_plate_height_mm.min(sizes.outer_plate_height_mm);
        let inner_mm = 0.5 * sizes.bore_mm + sizes.mouth_radius_mm;
        let outer_mm = (0.5 * height_mm - sizes.edge_chamfer_mm).max(inner_mm);
        Self {
            flat_mm: uniform_pressure_mm(outer_mm, inner_mm),
            worn_mm: uniform_wear_mm(outer_mm, inner_mm),
            inner_edge_mm: sizes.inner_reach_mm(),
            outer_edge_mm: sizes.outer_reach_mm(),
        }
    }

    /// The flat arm over the pin's radius.
    pub fn flat_ratio(&self, sizes: &Sizes) -> f64 {
        self.flat_mm / (0.5 * sizes.pin_diameter_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thin_ring_rubs_at_its_radius_and_a_disc_at_two_thirds_of_it() {
        const ROUNDING: f64 = 1e-15;
        assert!((uniform_pressure_mm(3.0, 3.0) - 3.0).abs() < ROUNDING);
        assert!((uniform_pressure_mm(3.0, 0.0) - 2.0).abs() < ROUNDING);
        assert!((uniform_wear_mm(3.0, 0.0) - 1.5).abs() < ROUNDING);
    }

    #[test]
    fn a_worn_ring_never_rubs_further_out_than_a_new_one() {
        for inner_mm in [0.0, 0.5, 1.0, 2.0, 2.9] {
            assert!(uniform_wear_mm(3.0, inner_mm) <= uniform_pressure_mm(3.0, inner_mm));
        }
    }
}
