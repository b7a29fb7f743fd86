//! Speed beside general-purpose libraries: every row is the same work done by a rival and by the
//! kernel, on identical data, answers compared before anything is timed.
//!
//! Absolute times drift from machine to machine and from hour to hour; the ratio of two medians
//! taken in one run is what the goals speak of. `cargo compare` times the rows natively,
//! `node tests/bench/rows.mjs` those of solver and pitch in WebAssembly, and `cargo speed` writes
//! `docs/speed.md`. A new row is a line of `rows.json` and one `Work` in the list of its file.
//!
//! Of the solvers that the design names, daqp and piqp are left out: they are libraries in C and C++
//! that no registry of Rust packages carries.

pub mod closing;
pub mod crowd;

#[cfg(feature = "rivals")]
#[path = "../../oracles/cases.rs"]
mod cases;
#[cfg(feature = "rivals")]
#[path = "../../oracles/clarabel.rs"]
mod clarabel;

#[cfg(feature = "rivals")]
mod engine;
#[cfg(feature = "rivals")]
mod frames;
#[cfg(feature = "rivals")]
mod pitches;
#[cfg(feature = "rivals")]
mod solves;
#[cfg(feature = "rivals")]
mod work;

#[cfg(feature = "table")]
mod sets;
#[cfg(feature = "compare")]
mod timed;
#[cfg(feature = "compare")]
mod whole;

#[cfg(feature = "compare")]
pub use timed::{print_cost_of_links, print_frames, time};
#[cfg(feature = "rivals")]
pub use work::Work;

/// The contact problem alone, beside clarabel: a joint, three links, strands.
#[cfg(feature = "rivals")]
pub fn solves() -> Vec<Work> {
    solves::works()
}

/// A whole pitch: at its stop, under a moving hand, its gaps, a frame of its picture.
#[cfg(feature = "rivals")]
pub fn pitches() -> Vec<Work> {
    let mut works = pitches::works();
    works.extend(engine::works());
    works.extend(frames::works());
    works
}

/// Matching, reach, and a scenario that is read.
#[cfg(feature = "table")]
pub fn sets() -> Vec<Work> {
    sets::works()
}
