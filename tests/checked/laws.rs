//! Laws, yields and percentiles against quadrature by another library: `reference/fit-laws.csv`.

use super::Sheet;
use crate::Row;
use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::fit::{Asked, DemandChance, Law, Many, Spread, Study, Wanted};
use lightgap::quantity::Quantity;

/// Sets that the reference's tolerances allow for.
pub const SETS: u64 = 400_000;

/// A narrow chain, sizes chosen: side gap 0.2 mm, pin clearance 0.025 mm.
pub fn nominal() -> Sizes {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 2.4),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.625),
        (Dimension::InnerPlate, 1.0),
        (Dimension::OuterSpacing, 4.6),
    ];
    Sizes::from_stated(Construction::Collared, &stated)
}

/// A dimension of it that strays so far to either side.
pub fn spread(dimension: Dimension, half_mm: f64, law: Law) -> Spread {
    let mm = dimension.of(&nominal());
    let (low_mm, high_mm) = (mm - half_mm, mm + half_mm);
    Spread { dimension, low_mm, high_mm, law, sigmas: 3.0, mean_shift: 0.0 }
}

/// A demand on a quantity of the catalogue.
pub fn wanted(quantity: Quantity, low: f64, high: f64) -> Wanted {
    let asked = Asked::Catalogue(quantity);
    Wanted { asked, at_least: Some(low), at_most: Some(high) }
}

/// The chain that the reference's quadrature is about.
pub fn mixed() -> Study {
    let spreads = vec![
        spread(Dimension::OuterSpacing, 0.05, Law::Normal),
        spread(Dimension::InnerWidth, 0.03, Law::Normal),
        spread(Dimension::InnerPlate, 0.02, Law::Uniform),
        spread(Dimension::PinDiameter, 0.004, Law::Normal),
        spread(Dimension::Bore, 0.006, Law::Truncated),
    ];
    let wanted =
        vec![wanted(Quantity::SideGap, 0.14, 0.26), wanted(Quantity::PinClearance, 0.021, 0.03)];
    Study::new(Many::new(nominal(), spreads, 20_260), wanted, SETS)
}

/// Mean or standard deviation of a truncated law between -1 and 1.
fn truncated(of: &str) -> Option<(f64, f64)> {
    let (sigmas, shift) = of.split_once(' ')?;
    let mut spread = spread(Dimension::Bore, 1.0, Law::Truncated);
    (spread.low_mm, spread.high_mm) = (-1.0, 1.0);
    (spread.sigmas, spread.mean_shift) = (sigmas.parse().ok()?, shift.parse().ok()?);
    Some(spread.moments_mm())
}

pub(super) fn sheet() -> Sheet {
    let chance = mixed().whole();
    let whole = chance.apart + chance.unmade == 0;
    let drawn = |key: &str| -> Option<&DemandChance> {
        chance.each.iter().find(|each| whole && each.wanted.asked.key() == key)
    };
    Sheet::of_rows("Laws, yields and percentiles", "tests/reference/fit-laws.csv", |row: &Row| {
        match row.what.as_str() {
            "truncated_mean" => Some(truncated(&row.of)?.0),
            "truncated_sd" => Some(truncated(&row.of)?.1),
            "yield" => Some(drawn(&row.of)?.yield_fraction.0),
            what => {
                let share: f64 = what.strip_prefix("percentile_")?.parse().ok()?;
                let mut all = drawn(&row.of)?.percentiles.iter();
                all.find(|percentile| (percentile.share - share).abs() < 1e-12).map(|p| p.value)
            }
        }
    })
}
