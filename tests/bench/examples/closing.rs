//! The rows of `lightgap_bench::closing`: `tests/bench/closing.mjs` times them natively, in WebAssembly
//! and the closing beside scipy.

use wasm_bindgen::prelude::wasm_bindgen;

/// A profile of 4,001 points closed by a disk of 200 points.
#[wasm_bindgen]
pub fn closing(turns: u32) -> f64 {
    lightgap_bench::closing::closing(turns)
}

/// What a bristle, a grain and a liquid reach in both joints of a pitch.
#[wasm_bindgen]
pub fn reach(turns: u32) -> f64 {
    lightgap_bench::closing::reach(turns)
}

/// The rows natively: name, answer, nanoseconds a turn.
#[cfg(not(target_arch = "wasm32"))]
pub fn report() {
    const TURNS: u32 = 200;
    for (name, row) in [("closing", closing as fn(u32) -> f64), ("reach", reach)] {
        let answer = row(1);
        let start = std::time::Instant::now();
        std::hint::black_box(row(TURNS));
        let ns = start.elapsed().as_secs_f64() * 1e9 / f64::from(TURNS);
        println!("{name} {answer} {ns}");
    }
}
