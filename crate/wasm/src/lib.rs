//! The page's side of the kernel.
//!
//! One class, [`Bench`], whose methods convert what JavaScript gives, call the kernel and convert
//! what it answers. Nothing is worked out here. What a person may get wrong comes back as a list of
//! faults; what only a fault of the page or of the kernel can cause is thrown as an error, and a page
//! that catches one makes a new bench.

mod bench;
mod canvas;
mod catalogue;
mod cross;

pub use bench::Bench;

use wasm_bindgen::prelude::wasm_bindgen;

/// Makes a panic speak on the console before it stops.
#[wasm_bindgen(start)]
pub fn start() {
    console_error_panic_hook::set_once();
}
