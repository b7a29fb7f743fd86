//! How smooth is smooth: a rough face, what can sit in it, and two faces brought together.
//!
//! A [`Profile`] is a line across a surface, heights above its own mean line, in um. Its roughness is
//! told by [`Parameters`]; a round particle feels its way over it by [`closed_um`]; two profiles face
//! to face are a [`Facing`]. Everything is seeded: the same seed gives the same surface everywhere.

mod closing;
mod facing;
mod noise;
mod parameters;
mod profile;
mod seat;

pub use closing::{closed_um, sine_radius_um, traced_um};
pub use facing::{Facing, film_ratio};
pub use parameters::{Parameters, SECTIONS};
pub use profile::{POINTS, Profile, Roughness};
pub use seat::{Seat, peak_level_um};

#[cfg(test)]
mod tests;
