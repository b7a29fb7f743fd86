//! Wear against published figures and an independent reckoning: `reference/wear.csv`.

use super::Sheet;
use crate::Row;
use lightgap::quantity::MM_PER_INCH;
use lightgap::wear::{Centres, Grind, Length, Polygon, large_wheel_fraction, limit_fraction};

const PERCENT: f64 = 100.0;

fn limit(of: &str) -> Option<f64> {
    let (centres, teeth) = of.split_once(' ')?;
    let centres = if centres == "fixed" { Centres::Fixed } else { Centres::Adjustable };
    Some(PERCENT * limit_fraction(teeth.parse().ok()?, centres))
}

/// Numbers between crosses.
fn crossed(of: &str) -> Vec<f64> {
    of.split(" x ").filter_map(|number| number.parse().ok()).collect()
}

fn got(row: &Row) -> Option<f64> {
    const UM_PER_MM: f64 = 1000.0;
    const MM_PER_KM: f64 = 1e6;
    match row.what.as_str() {
        "elongation" => {
            // 24 pitches of half an inch are 12 inches.
            let joint_wear_mm = MM_PER_INCH / 16.0 / 24.0;
            let (pin_clearance_mm, roller_clearance_mm) = (0.0, 0.0);
            let pitch_mm = 0.5 * MM_PER_INCH;
            let length = Length { pitch_mm, pin_clearance_mm, roller_clearance_mm, joint_wear_mm };
            Some(PERCENT * length.elongation_fraction())
        }
        "large_wheel_limit" => Some(PERCENT * large_wheel_fraction(row.of.parse().ok()?)),
        "limit" => limit(&row.of),
        "pitch_diameter_of_equal_chords" => {
            let [pitch_mm, teeth] = crossed(&row.of)[..] else { return None };
            Some(2.0 * Polygon::of(teeth as u32, pitch_mm, pitch_mm).radius_mm)
        }
        "polygon_radius" => {
            let [teeth, short_mm, long_mm] = crossed(&row.of)[..] else { return None };
            Some(Polygon::of(teeth as u32, short_mm, long_mm).radius_mm)
        }
        "archard_depth" => {
            let grind = Grind { hardness_mpa: 6000.0, wear_coefficient: 1e-7 };
            Some(UM_PER_MM * grind.depth_mm(20.0, MM_PER_KM))
        }
        _ => None,
    }
}

pub(super) fn sheet() -> Sheet {
    Sheet::of_rows("Wear", "tests/reference/wear.csv", got)
}
