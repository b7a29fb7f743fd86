//! Chance and matching of `lightgap_bench::crowd`: `tests/bench/crowd.mjs` times them natively, in
//! WebAssembly and beside numpy.

use lightgap_bench::crowd;
use wasm_bindgen::prelude::wasm_bindgen;

#[cfg(not(target_arch = "wasm32"))]
use lightgap::fit::{Law, Study};

/// A million sets, drawn, checked and summed up.
#[wasm_bindgen]
pub fn normal(turns: u32) -> f64 {
    crowd::normal(turns)
}

/// The same with laws that end at their limits.
#[wasm_bindgen]
pub fn truncated(turns: u32) -> f64 {
    crowd::truncated(turns)
}

/// How many sets of some blocks pass: one worker's share.
#[wasm_bindgen]
pub fn share(from: u32, to: u32) -> f64 {
    crowd::share(from, to)
}

/// A million pairs in four classes.
#[wasm_bindgen]
pub fn classes(turns: u32) -> f64 {
    crowd::classes(turns)
}

/// The order of four times a million parts by size.
#[wasm_bindgen]
pub fn ranks(turns: u32) -> f64 {
    crowd::ranks(turns)
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
    let study = crowd::study(Law::Normal);
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
