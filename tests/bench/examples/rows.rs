//! The rows of `cargo compare` as plain functions, for WebAssembly: `tests/bench/rows.mjs` times them.

use lightgap_bench::{Work, pitches, solves};
#[cfg(not(target_arch = "wasm32"))]
use lightgap_tests::speed::Row;
use std::cell::RefCell;
use wasm_bindgen::prelude::wasm_bindgen;

thread_local! {
    static WORKS: RefCell<Vec<Work>> = RefCell::new(works());
}

/// Every row, in the order of [`report`].
fn works() -> Vec<Work> {
    let mut works = solves();
    works.extend(pitches());
    works
}

/// Both sides' answers once: of the rival with `side` 0, ours with 1. Traps when they differ. Ask for
/// both, the rival's first.
#[wasm_bindgen]
pub fn answer(row: usize, side: usize) -> f64 {
    thread_local! {
        static ANSWERS: RefCell<[f64; 2]> = const { RefCell::new([0.0; 2]) };
    }
    if side == 0 {
        let both = WORKS.with_borrow_mut(|works| works[row].answers());
        ANSWERS.replace(both);
    }
    ANSWERS.with_borrow(|both| both[side])
}

/// Does the work of a row so many times on one side.
#[wasm_bindgen]
pub fn turns(row: usize, side: usize, turns: u32) -> f64 {
    WORKS.with_borrow_mut(|works| works[row].turns(side, turns))
}

/// The same rows natively, a line each, tabs between: name, rival, goal, the rival's and our answer, how
/// far they may be apart, the rival's and our time in nanoseconds, how many turns were timed.
#[cfg(not(target_arch = "wasm32"))]
pub fn report() {
    for mut work in works() {
        let [theirs, ours] = work.answers();
        let (their_ns, _) = median_ns(&mut work, 0);
        let (our_ns, turns) = median_ns(&mut work, 1);
        let Work { row: Row { work, rival, goal, .. }, within, .. } = work;
        println!(
            "{work}\t{rival}\t{goal}\t{theirs:?}\t{ours:?}\t{within:?}\t{their_ns}\t{our_ns}\t{turns}"
        );
    }
}

/// Median time of a turn over nine samples of about 20 ms, and the turns of a sample.
#[cfg(not(target_arch = "wasm32"))]
fn median_ns(work: &mut Work, side: usize) -> (f64, u32) {
    const SAMPLES: usize = 9;
    const SAMPLE_S: f64 = 0.02;
    let timed = |work: &mut Work, turns: u32| {
        let start = std::time::Instant::now();
        work.turns(side, turns);
        start.elapsed().as_secs_f64() / f64::from(turns)
    };
    let turns = (SAMPLE_S / timed(work, 2)).clamp(1.0, 1e6) as u32;
    let mut times: Vec<f64> = (0..SAMPLES).map(|_| timed(work, turns)).collect();
    times.sort_by(f64::total_cmp);
    (1e9 * times[SAMPLES / 2], turns)
}
