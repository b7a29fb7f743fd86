//! How stiff a joint is in yaw: an estimate from the plates.
//!
//! A link that is bent in plan stretches the plate outside the curve and shortens the one inside.
//! With plates of section A (waist times thickness), their middles s apart, a moment M turns its
//! ends against each other by M p 2 / (E A s^2): K = E A s^2 / (2 p). A joint has half of an inner
//! link and half of an outer one beside it: 1/K = (1/K_in + 1/K_out) / 2. Bending of the pin and slip
//! in the press fits, left out, make a joint softer; plates that shear sideways as a pair make it a
//! little stiffer. So K is an input, and its half and double are shown. Derived.

use crate::chain::Sizes;

/// Young's modulus of steel, MPa, from memory.
const STEEL_MPA: f64 = 206_000.0;

/// Stiffness of a link in yaw, N mm/rad: E A s^2 / (2 p), A the section of one plate, mm2, s between
/// the plates' middles, mm.
pub fn link_stiffness_n_mm(section_mm2: f64, spacing_mm: f64, pitch_mm: f64) -> f64 {
    STEEL_MPA * section_mm2 * spacing_mm * spacing_mm / (2.0 * pitch_mm)
}

/// Stiffness K of a joint in yaw when nobody states it, N mm/rad.
pub fn default_stiffness_n_mm(sizes: &Sizes) -> f64 {
    let link = |waist_mm: f64, plate_mm: f64, spacing_mm: f64| {
        link_stiffness_n_mm(waist_mm * plate_mm, spacing_mm, sizes.pitch_mm)
    };
    let inner_spacing_mm = sizes.inner_link_width_mm() - sizes.inner_plate_mm;
    let outer_spacing_mm = sizes.outer_spacing_mm + sizes.outer_plate_mm;
    let inner = link(sizes.inner_waist_mm, sizes.inner_plate_mm, inner_spacing_mm);
    let outer = link(sizes.outer_waist_mm, sizes.outer_plate_mm, outer_spacing_mm);
    2.0 / (1.0 / inner + 1.0 / outer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Construction, Dimension};

    #[test]
    fn a_plate_of_six_and_a_half_by_one_gives_what_was_worked_out_by_hand() {
        let stiffness = link_stiffness_n_mm(6.5 * 1.0, 6.4, 12.7);
        assert!((stiffness / 2.159e6 - 1.0).abs() < 1e-3, "{stiffness}");
    }

    #[test]
    fn a_joint_lies_between_its_two_links() {
        let stated = [
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 3.0),
            (Dimension::PinDiameter, 3.6),
        ];
        let sizes = Sizes::from_stated(Construction::Bushed, &stated);
        let inner = link_stiffness_n_mm(
            sizes.inner_waist_mm * sizes.inner_plate_mm,
            sizes.inner_width_mm + sizes.inner_plate_mm,
            sizes.pitch_mm,
        );
        let outer = link_stiffness_n_mm(
            sizes.outer_waist_mm * sizes.outer_plate_mm,
            sizes.outer_spacing_mm + sizes.outer_plate_mm,
            sizes.pitch_mm,
        );
        let joint = default_stiffness_n_mm(&sizes);
        assert!(inner.min(outer) < joint && joint < inner.max(outer));
    }
}
