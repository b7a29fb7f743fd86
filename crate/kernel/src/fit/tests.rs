//! What the tests of this room share: a chain with limits, chosen.

use super::law::{Law, Spread};
use super::many::Many;
use crate::chain::sample::narrow;
use crate::chain::{Construction, Dimension};

/// A collared chain of half an inch pitch, four of its dimensions with limits.
pub(super) fn trike() -> Many {
    let nominal = narrow(Construction::Collared, &[]);
    let limits = [
        (Dimension::PinDiameter, 0.004),
        (Dimension::Bore, 0.005),
        (Dimension::InnerPlate, 0.01),
        (Dimension::OuterSpacing, 0.05),
    ];
    let spread = |(dimension, half_mm): (Dimension, f64)| Spread {
        dimension,
        low_mm: dimension.of(&nominal) - half_mm,
        high_mm: dimension.of(&nominal) + half_mm,
        law: Law::Normal,
        sigmas: 3.0,
        mean_shift: 0.0,
    };
    Many::new(nominal, limits.map(spread).to_vec(), 1)
}
