//! Chance and matching at the size of a page's question, as plain functions: each does its work so
//! many times and returns something that depends on it.

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::fit::matching::Pairing;
use lightgap::fit::{Asked, Law, Many, Spread, Study, Wanted, ranked};
use lightgap::quantity::Quantity;
use std::cell::RefCell;

/// Sets or pairs of a row.
const COUNT: usize = 1_000_000;

/// Twelve dimensions with limits of 0.3 of a hundredth of a millimetre or more: chosen.
const DIMENSIONS: [Dimension; 12] = [
    Dimension::Pitch,
    Dimension::RollerDiameter,
    Dimension::RollerBore,
    Dimension::RollerLength,
    Dimension::InnerWidth,
    Dimension::PinDiameter,
    Dimension::Bore,
    Dimension::Barrel,
    Dimension::InnerPlate,
    Dimension::OuterPlate,
    Dimension::OuterSpacing,
    Dimension::EdgeChamfer,
];

/// A million chains of twelve differing dimensions, asked for their side gap.
pub fn study(law: Law) -> Study {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 2.4),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.625),
        (Dimension::EdgeChamfer, 0.15),
        (Dimension::InnerPlate, 1.0),
        (Dimension::OuterSpacing, 4.6),
        (Dimension::PinLength, 7.2),
    ];
    let nominal = Sizes::from_stated(Construction::Collared, &stated);
    let spread = |dimension: Dimension| {
        let mm = dimension.of(&nominal);
        let half_mm = if dimension == Dimension::OuterSpacing { 0.05 } else { 0.006 };
        let (low_mm, high_mm) = (mm - half_mm, mm + half_mm);
        Spread { dimension, low_mm, high_mm, law, sigmas: 3.0, mean_shift: 0.0 }
    };
    let asked = Asked::Catalogue(Quantity::SideGap);
    let wanted = Wanted { asked, at_least: Some(0.16), at_most: Some(0.24) };
    let many = Many::new(nominal, DIMENSIONS.map(spread).to_vec(), 1);
    Study::new(many, vec![wanted], COUNT as u64)
}

fn drawn(law: Law, turns: u32) -> f64 {
    let study = study(law);
    (0..turns).map(|_| study.whole().each[0].yield_fraction.0).sum()
}

/// Draws, checks, and sums up a million sets: mean, deviation, yield, histogram.
pub fn normal(turns: u32) -> f64 {
    drawn(Law::Normal, turns)
}

/// The same with laws that end at their limits.
pub fn truncated(turns: u32) -> f64 {
    drawn(Law::Truncated, turns)
}

/// How many sets of some blocks pass: one worker's share.
pub fn share(from: u32, to: u32) -> f64 {
    study(Law::Normal).run(u64::from(from), u64::from(to)).passes as f64
}

thread_local! {
    static PARTS: RefCell<([Vec<f64>; 4], [Spread; 2])> = RefCell::new(parts());
}

/// A million parts of four kinds, and the limits of two of them.
pub fn parts() -> ([Vec<f64>; 4], [Spread; 2]) {
    let many = study(Law::Normal).many;
    let kinds = [8, 10, 5, 6];
    let columns = kinds.map(|kind: usize| {
        let mut all = vec![0.0; COUNT];
        for (block, column) in all.chunks_mut(lightgap::fit::BLOCK).enumerate() {
            many.column(&many.spreads[kind], block as u64, column);
        }
        all
    });
    (columns, [many.spreads[8], many.spreads[10]])
}

/// Sorts a million pairs into four classes and pairs them.
pub fn classes(turns: u32) -> f64 {
    PARTS.with_borrow(|(parts, [a, b])| {
        let pair = || Pairing::by_class([&parts[0], &parts[1]], [a, b], 4, true);
        (0..turns).map(|_| pair().leftover_fraction()).sum()
    })
}

/// The order of four times a million parts by size.
pub fn ranks(turns: u32) -> f64 {
    PARTS.with_borrow(|(parts, _)| {
        let first = |all: &Vec<f64>| f64::from(ranked(all)[0]);
        (0..turns).map(|_| parts.iter().map(first).sum::<f64>()).sum()
    })
}
