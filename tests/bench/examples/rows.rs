//! The rows of the speed table as plain functions, for WebAssembly: each does its work so many times
//! and returns something that depends on it. `tests/bench/rows.mjs` times them.

#[path = "../../oracles/cases.rs"]
mod cases;

use cases::{REFERENCE, joint};
use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::contact::{Along, Body, Play, Settler, Wish};
use lightgap::solve::{Solver, Start};
use std::hint::black_box;
use wasm_bindgen::prelude::wasm_bindgen;

/// A narrow collared chain of half an inch, sizes chosen.
fn sizes() -> Sizes {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 2.4),
        (Dimension::PinDiameter, 3.6),
    ];
    Sizes::from_stated(Construction::Collared, &stated)
}

/// Settles a whole pitch at its stop, all rounds.
#[wasm_bindgen]
pub fn settle(turns: u32) -> f64 {
    let sizes = sizes();
    let value = 1.02 * Play::of(&sizes).turn.angle_rad;
    let wish = Wish::Coordinate { body: Body::NextOuter, along: Along::Yaw, value, weight: 1.0 };
    let mut settler = Settler::plan(&sizes);
    let straight = *settler.straight();
    (0..turns).map(|_| settler.settle(&[wish], &straight).worst_gap_mm).sum()
}

/// Every gap of a pitch with its slope.
#[wasm_bindgen]
pub fn gaps(turns: u32) -> f64 {
    let settler = Settler::plan(&sizes());
    let pose = *settler.pose();
    let all = || settler.meetings().iter().map(|m| m.slope(black_box(&pose)).gap_mm).sum::<f64>();
    (0..turns).map(|_| all()).sum()
}

/// One joint of 3 unknowns and 16 gaps, cold.
#[wasm_bindgen]
pub fn solve(turns: u32) -> f64 {
    let problem = joint(REFERENCE, [300.0, 7.0, 40.0], true).problem();
    let mut solver = Solver::new();
    let mut once = || {
        solver.solve(black_box(&problem), Start::Cold);
        solver.x()[0]
    };
    (0..turns).map(|_| once()).sum()
}

/// The same rows natively: nanoseconds a turn, a line each.
#[cfg(not(target_arch = "wasm32"))]
pub fn report() {
    for (name, row) in [("settle", settle as fn(u32) -> f64), ("gaps", gaps), ("solve", solve)] {
        let start = std::time::Instant::now();
        black_box(row(20_000));
        println!("{name} {}", start.elapsed().as_secs_f64() * 1e9 / 20_000.0);
    }
}
