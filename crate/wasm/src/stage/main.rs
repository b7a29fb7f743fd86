//! What the first screen runs: one class, [`bench::Bench`].
//!
//! No strand, no drive and no report may be reached from here: their code would be part of what the
//! first screen downloads. A page that catches an error of a bench makes a new one.
#![cfg_attr(not(target_arch = "wasm32"), allow(dead_code, reason = "only a page calls it"))]

mod bench;
mod canvas;
mod catalogue;

use rlsf::SmallGlobalTlsf;

/// What hands out memory: a seventh as long as the standard library's, in constant time.
#[global_allocator]
static MEMORY: SmallGlobalTlsf = SmallGlobalTlsf::new();

/// Nothing runs before the page asks for a bench.
fn main() {}
