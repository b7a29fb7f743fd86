//! What can get in: bristles, particles and liquids between the parts of a joint.
//!
//! Two pictures of the same gaps. The [`Section`] is metal cut through the pin: convex pieces and the
//! hidden walls between them, asked point by point what a straight bristle touches ([`Straight`]) and
//! where a particle rolls ([`Rolling`]). The [`Network`] is the gaps as passages with length, width
//! and height, asked how a liquid fills them and how it flows when it is pressed through. Both are
//! taken from a settled pose, so that a flexed joint opens one side and shuts the other; [`Pumped`] is
//! what it breathes as it is worked.

mod enter;
mod face;
mod fill;
mod hull;
mod joint;
mod network;
mod passage;
mod pump;
mod rolling;
mod section;
mod straight;

pub use enter::{Entered, FaceEntry, Liquid, Probes, WallEntry};
pub use face::{Face, Gap};
pub use fill::{Filled, capillary_pressure_pa};
pub use hull::Hull;
pub use joint::section;
pub use network::{Edge, Network};
pub use passage::{Passage, annulus, radial_slot, slot};
pub use pump::Pumped;
pub use rolling::Rolling;
pub use section::{Section, Span, Wall};
pub use straight::Straight;

#[cfg(test)]
mod tests;
