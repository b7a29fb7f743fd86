//! Sizes against published figures: `reference/sizes.csv`.

use super::Sheet;
use crate::Row;
use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::quantity::MM_PER_INCH;
use lightgap::scenario::{deviations_mm, tolerance_mm};
use lightgap::table::Published;

const UM_PER_MM: f64 = 1000.0;

/// What the kernel says, mm; none when the row asks for something that it does not know.
fn got_mm(what: &str, of: &str) -> Option<f64> {
    let size = Published::of_number(of);
    let filled = |dimension: Dimension| {
        let sizes: Sizes = size?.fill(Construction::Bushed).sizes();
        Some(dimension.of(&sizes))
    };
    match what {
        "pitch" => filled(Dimension::Pitch),
        "roller" => filled(Dimension::RollerDiameter),
        "width" => filled(Dimension::InnerWidth),
        "pin" => filled(Dimension::PinDiameter),
        "plate" => filled(Dimension::InnerPlate),
        "largest_pin" => Some(size?.largest_pin_mm()),
        "smallest_hole" => filled(Dimension::Bore),
        "least_pin_clearance" => Some(filled(Dimension::Bore)? - size?.largest_pin_mm()),
        "least_side_gap" => Some(filled(Dimension::OuterSpacing)? - size?.widest_inner_link_mm()),
        "widest_inner_link" => Some(size?.widest_inner_link_mm()),
        "highest_inner_plate" => filled(Dimension::InnerPlateHeight),
        "highest_outer_plate" => filled(Dimension::OuterPlateHeight),
        _ => graded_mm(what, of.parse().ok()?),
    }
}

/// Tolerances and fits at a size, mm.
fn graded_mm(what: &str, size_mm: f64) -> Option<f64> {
    let (hole, shaft) = (deviations_mm("H7", size_mm)?, deviations_mm("h6", size_mm)?);
    match what {
        "least_clearance_H7_h6" => Some(-hole.0 - shaft.1),
        "largest_clearance_H7_h6" => Some(hole.1 + shaft.0),
        _ => tolerance_mm(what.strip_prefix("grade_")?.parse().ok()?, size_mm),
    }
}

/// A length in the unit of a row.
fn in_unit(mm: f64, unit: &str) -> f64 {
    match unit {
        "in" => mm / MM_PER_INCH,
        "um" => mm * UM_PER_MM,
        _ => mm,
    }
}

pub(super) fn sheet() -> Sheet {
    let got = |row: &Row| Some(in_unit(got_mm(&row.what, &row.of)?, &row.unit));
    Sheet::of_rows("Published sizes, tolerances and fits", "tests/reference/sizes.csv", got)
}
