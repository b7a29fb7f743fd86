//! Chains of half an inch pitch that the tests of many rooms stand on. Their sizes are chosen.

use super::{Construction, Dimension, Sizes};

/// A narrow chain, side gap 0.2 mm, pin clearance 0.025 mm, with some more sizes stated or others.
pub(crate) fn narrow(construction: Construction, more: &[(Dimension, f64)]) -> Sizes {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 2.4),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.625),
        (Dimension::InnerPlate, 1.0),
        (Dimension::OuterSpacing, 4.6),
    ];
    Sizes::from_stated(construction, &[&stated[..], more].concat())
}

/// The sizes of the worked figures in the derivation: p 12.7, c 0.03, a 0.4.
pub(crate) const WORKED: [(Dimension, f64); 7] = [
    (Dimension::Pitch, 12.7),
    (Dimension::RollerDiameter, 7.75),
    (Dimension::InnerWidth, 3.0),
    (Dimension::InnerPlate, 1.0),
    (Dimension::PinDiameter, 3.6),
    (Dimension::Bore, 3.63),
    (Dimension::OuterSpacing, 5.4),
];

/// The reference chain of the derivation: [`WORKED`] with B 5.0 and g 4.2, with some more sizes
/// stated or others.
pub(crate) fn reference(construction: Construction, more: &[(Dimension, f64)]) -> Sizes {
    let bearing_mm = if construction == Construction::Bushed { 5.0 } else { 1.5 };
    let own = [
        (Dimension::BearingLength, bearing_mm),
        (Dimension::InnerOverhang, 4.2),
        (Dimension::OuterOverhang, 4.2),
    ];
    Sizes::from_stated(construction, &[&WORKED[..], &own, more].concat())
}
