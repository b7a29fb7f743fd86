//! How hard plates and pin are pressed by a pull.

use crate::chain::Sizes;

/// Stress of a pair of plates, MPa: T / min(2 t w, 2 t (h - hole)), the smaller of the section at the
/// waist w and the net section beside the hole of a plate of height h, thickness t.
///
/// No notch factor: beside a hole the true peak is two to three times as high (textbook order, from
/// memory), and the hole's press fit adds its own.
pub fn plate_mpa(pull_n: f64, plate_mm: f64, waist_mm: f64, height_mm: f64, hole_mm: f64) -> f64 {
    let narrowest_mm = waist_mm.min(height_mm - hole_mm);
    pull_n / (2.0 * plate_mm * narrowest_mm)
}

/// Stress of the inner plates, MPa; their hole is the seat of the bush, or the collar's outside.
pub fn inner_plate_mpa(s: &Sizes, pull_n: f64) -> f64 {
    plate_mpa(pull_n, s.inner_plate_mm, s.inner_waist_mm, s.inner_plate_height_mm, s.barrel_mm)
}

/// Stress of the outer plates, MPa; their hole is the pin's.
pub fn outer_plate_mpa(s: &Sizes, pull_n: f64) -> f64 {
    let height_mm = s.outer_plate_height_mm;
    plate_mpa(pull_n, s.outer_plate_mm, s.outer_waist_mm, height_mm, s.pin_diameter_mm)
}

/// Pressure between pin and bore, MPa: T / (d2 L_b), on the area seen along the load.
pub fn bearing_pressure_mpa(s: &Sizes, pull_n: f64) -> f64 {
    pull_n / s.bearing_area_mm2()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Construction, Dimension};
    use crate::width::{Keep, most_mm, narrowed};

    #[test]
    fn the_weaker_of_waist_and_net_section_counts() {
        assert!((plate_mpa(300.0, 1.0, 6.4, 8.6, 5.0) - 300.0 / 7.2).abs() < 1e-12);
        assert!((plate_mpa(300.0, 1.0, 3.0, 8.6, 5.0) - 50.0).abs() < 1e-12);
    }

    #[test]
    fn a_thinner_plate_is_never_less_stressed() {
        for &construction in Construction::ALL {
            let stated = [
                (Dimension::Pitch, 12.7),
                (Dimension::RollerDiameter, 7.75),
                (Dimension::InnerWidth, 2.4),
                (Dimension::PinDiameter, 3.6),
                (Dimension::InnerPlate, 1.0),
            ];
            let wide = Sizes::from_stated(construction, &stated);
            let most = most_mm(&wide, Keep::Gaps);
            let of = |share: f64| {
                let slim = narrowed(&wide, share * most, Keep::Gaps);
                [inner_plate_mpa, outer_plate_mpa, bearing_pressure_mpa]
                    .map(|mpa| mpa(&slim, 300.0))
            };
            for i in 0..50 {
                let (now, next) = (of(f64::from(i) / 50.0), of(f64::from(i + 1) / 50.0));
                for (now, next) in now.into_iter().zip(next) {
                    assert!(next > now && now > 0.0, "{i} {now} {next}");
                }
            }
        }
    }
}
