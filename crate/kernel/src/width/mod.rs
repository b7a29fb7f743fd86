//! How narrow a chain can go: where its width goes layer by layer, what a narrower one gives up, how
//! hard its plates and pins are pressed, what the press fit and the riveted head do to the bore's
//! ends, and how many fits one chain holds.
//!
//! Letters: b1 between the inner plates, ti and to thickness of inner and outer plates, a side gap,
//! T pull. Forces are shared evenly by two plates, sections are plain, plates are flat: what a formed
//! eye, a chamfer or a stamped letter adds to a stress is left out.

mod budget;
mod count;
mod material;
mod narrow;
mod press;
mod rivet;
mod strength;

pub use budget::{Budget, Layer};
pub use count::Count;
pub use material::{MATERIALS, Material, STEEL};
pub use narrow::{Keep, most_mm, narrowed};
pub use press::{Elastic, Press};
pub use rivet::Rivet;
pub use strength::{bearing_pressure_mpa, inner_plate_mpa, outer_plate_mpa, plate_mpa};
