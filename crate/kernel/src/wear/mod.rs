//! What wear adds: how fast a joint wears, what that does to the pitches, how a worn chain stands
//! on its wheel, and what two ways of measuring say of it.
//!
//! Metal leaves pin and bore on the loaded side only ([`crate::chain::WornBore`]). With w the wear of
//! a joint, the distance between two rollers across an outer link grows from p to p + 2 w; across an
//! inner link it stays p, because bush or collars hold both its rollers. So pitches alternate, and on
//! average a chain is longer by w/p. Plates do not stretch: nothing here is elastic. Worn rollers,
//! worn teeth and wear that differs from joint to joint are left out.

mod archard;
mod climb;
mod length;
mod polygon;

pub use archard::{Grind, Sliding};
pub use climb::{Climb, passing_wear_mm};
pub use length::{Centres, Length, large_wheel_fraction, limit_fraction, sag_mm};
pub use polygon::{Polygon, rise_mm};
