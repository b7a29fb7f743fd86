//! Chance and matching at the size of a page's question, as plain functions: each does its work so
//! many times and returns something that depends on it. `tests/bench/crowd.mjs` times them natively,
//! in WebAssembly and beside numpy.

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::fit::matching::Pairing;
use lightgap::fit::{Asked, Law, Many, Spread, Study, Wanted, ranked};
use lightgap::quantity::Quantity;
use std::cell::RefCell;
use wasm_bindgen::prelude::wasm_bindgen;

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
fn study(law: Law) -> Study {
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
#[wasm_bindgen]
pub fn normal(turns: u32) -> f64 {
    drawn(Law::Normal, turns)
}

/// The same with laws that end at their limits.
#[wasm_bindgen]
pub fn truncated(turns: u32) -> f64 {
    drawn(Law::Truncated, turns)
}

/// How many sets of some blocks pass: one worker's share.
#[wasm_bindgen]
pub fn share(from: u32, to: u32) -> f64 {
    study(Law::Normal).run(u64::from(from), u64::from(to)).passes as f64
}

thread_local! {
    /// A million parts of four kinds, and two of their limits.
    static PARTS: RefCell<([Vec<f64>; 4], [Spread; 2])> = RefCell::new(parts());
}

fn parts() -> ([Vec<f64>; 4], [Spread; 2]) {
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
#[wasm_bindgen]
pub fn classes(turns: u32) -> f64 {
    PARTS.with_borrow(|(parts, [a, b])| {
        let pair = || Pairing::by_class([&parts[0], &parts[1]], [a, b], 4, true);
        (0..turns).map(|_| pair().leftover_fraction()).sum()
    })
}

/// The order of four times a million parts by size.
#[wasm_bindgen]
pub fn ranks(turns: u32) -> f64 {
    PARTS.with_borrow(|(parts, _)| {
        let first = |all: &Vec<f64>| f64::from(ranked(all)[0]);
        (0..turns).map(|_| parts.iter().map(first).sum::<f64>()).sum()
    })
}

/// The same rows natively, a line each: name, what it gives, milliseconds a turn; then the normal row
/// shared by workers.
#[cfg(not(target_arch = "wasm32"))]
pub fn report() {
    for (name, row) in [
        ("normal", normal as fn(u32) -> f64),
        ("truncated", truncated),
        ("classes", classes),
        ("ranks", ranks),
    ] {
        let answer = row(1);
        println!("{name} {answer:?} {}", least_ms(|| row(1)));
    }
    let study = study(Law::Normal);
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    for workers in [1, 2, 4, 7].into_iter().filter(|workers| *workers <= cores.max(2)) {
        let ms = least_ms(|| shared(&study, workers as u64));
        println!("workers-{workers} {:?} {ms}", shared(&study, workers as u64));
    }
}

/// The least of nine turns: what it takes while nothing else runs.
#[cfg(not(target_arch = "wasm32"))]
fn least_ms(work: impl Fn() -> f64) -> f64 {
    const TURNS: u32 = 9;
    let timed_ms = |_| {
        let start = std::time::Instant::now();
        std::hint::black_box(work());
        1e3 * start.elapsed().as_secs_f64()
    };
    (0..TURNS).map(timed_ms).fold(f64::MAX, f64::min)
}

/// A study's blocks in as many equal shares as there are workers, joined in their order.
#[cfg(not(target_arch = "wasm32"))]
fn shared(study: &Study, workers: u64) -> f64 {
    let share = study.blocks().div_ceil(workers);
    let mut whole = study.tally();
    std::thread::scope(|scope| {
        let run =
            |worker: u64| scope.spawn(move || study.run(worker * share, (worker + 1) * share));
        let hands: Vec<_> = (0..workers).map(run).collect();
        for hand in hands {
            whole.join(&hand.join().expect("a worker that ends"));
        }
    });
    study.chance(&whole).each[0].mean.0
}
