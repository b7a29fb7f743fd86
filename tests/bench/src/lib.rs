//! Speed beside general-purpose libraries: every row is the same work done by a rival and by the
//! kernel, on identical data, answers compared before anything is timed.
//!
//! Absolute times drift from machine to machine and from hour to hour; the ratio of two medians
//! taken in one run is what the goals speak of. `cargo compare` times the rows natively,
//! `node tests/bench/rows.mjs` the same rows in WebAssembly. A new row is one [`Work`] in the list
//! of its file.
//!
//! Of the solvers that the design names, daqp and piqp are left out: they are libraries in C and C++
//! that no registry of Rust packages carries.

#![cfg(feature = "rivals")]

#[path = "../../oracles/cases.rs"]
mod cases;
#[path = "../../oracles/clarabel.rs"]
mod clarabel;

mod engine;
mod frames;
mod pitches;
mod solves;
mod work;

#[cfg(all(feature = "compare", not(target_arch = "wasm32")))]
mod timed;

#[cfg(all(feature = "compare", not(target_arch = "wasm32")))]
pub use timed::{print_cost_of_links, print_frames, time};
pub use work::Work;

/// The contact problem alone, beside clarabel: a joint, three links, strands.
pub fn solves() -> Vec<Work> {
    solves::works()
}

/// A whole pitch: at its stop, under a moving hand, its gaps, a frame of its picture.
pub fn pitches() -> Vec<Work> {
    let mut works = pitches::works();
    works.extend(engine::works());
    works.extend(frames::works());
    works
}
