//! Sizes against published figures: `reference/sizes.csv`. The table of source, expected and got is
//! this test's output (`cargo test --test published -- --nocapture`).

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::quantity::MM_PER_INCH;
use lightgap::scenario::{deviations_mm, tolerance_mm};
use lightgap::table::{PUBLISHED, Published};
use lightgap_tests::{Row, check_rows, rows};

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

#[test]
fn sizes_are_those_that_are_published() {
    let got = |row: &Row| Some(in_unit(got_mm(&row.what, &row.of)?, &row.unit));
    check_rows("tests/reference/sizes.csv", got);
}

#[test]
fn every_published_size_is_checked() {
    let rows = rows("tests/reference/sizes.csv");
    for size in PUBLISHED {
        let checked = rows.iter().filter(|row| row.of == size.number).count();
        let heights = 2 * usize::from(size.highest_inner_plate_mm().is_some());
        assert_eq!(checked, 10 + heights, "{}", size.number);
    }
}
