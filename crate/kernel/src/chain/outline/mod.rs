//! The exact outlines of the parts in three sections, each in the axes of its own rigid body, so
//! that a pose only carries them.
//!
//! Faces, bores, barrels, mouths and chamfers lie exactly where contact is computed. What the sizes
//! do not fix is chosen for the drawing and says so: the form of riveted heads, the arc of a
//! plate's waist, where a link is broken off.

mod across;
mod elevation;
mod plan;
mod worn;

pub use elevation::waist_radius_mm;
pub use plan::head_radius_mm;
pub use worn::{bore_outline, pin_outline};

use super::{Construction, Sizes};
use crate::plane::Step;

/// What a piece of metal is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// An outer plate.
    OuterPlate,
    /// A pin.
    Pin,
    /// An inner plate, with its collars when it has any.
    InnerPlate,
    /// A bush.
    Bush,
    /// A roller.
    Roller,
}

/// How the cut meets a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// Cut, and marked with section lines.
    Cut,
    /// Cut lengthwise, which by drawing practice leaves a pin plain (from memory).
    Plain,
    /// Behind the cut.
    Behind,
    /// No metal at all: a hole that is kept white, so that a gap is seen as a gap.
    Air,
}

/// A piece of a part in one section: its outline as closed loops, by the even-odd rule. A loop that
/// is left open is broken off there: filled to a straight edge that is not drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Which part.
    pub part: Part,
    /// How the cut meets it.
    pub look: Look,
    /// The outline, mm.
    pub outline: Vec<Step>,
}

/// Which rigid body's pieces are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Link {
    /// The outer link whose plates reach to the left; its right pin is the origin.
    OuterToLeft,
    /// The outer link whose plates reach to the right; its left pin is the origin.
    OuterToRight,
    /// The whole inner link, bushed; its left bore is the origin.
    Inner,
    /// The far plate of a collared inner link.
    InnerFar,
    /// The near plate.
    InnerNear,
    /// A roller; its centre is the origin.
    Roller,
}

impl Link {
    /// -1 or 1: the way an outer link's plates reach.
    pub fn reaches(self) -> f64 {
        if self == Self::OuterToLeft { -1.0 } else { 1.0 }
    }

    /// The ends (1 far, -1 near) at which the body has inner plates.
    fn ends(self) -> &'static [f64] {
        match self {
            Self::InnerFar => &[1.0],
            Self::InnerNear => &[-1.0],
            _ => &[1.0, -1.0],
        }
    }
}

/// The pieces of a body in the plan section, back to front.
pub fn plan(sizes: &Sizes, link: Link) -> Vec<Piece> {
    match link {
        Link::OuterToLeft | Link::OuterToRight => plan::outer(sizes, link),
        Link::Roller => plan::roller(sizes),
        _ => plan::inner(sizes, link),
    }
}

/// The pieces of a body in the elevation, cut along the middle, back to front.
pub fn elevation(sizes: &Sizes, link: Link) -> Vec<Piece> {
    match link {
        Link::OuterToLeft | Link::OuterToRight => elevation::outer(sizes, link),
        Link::Roller => elevation::roller(sizes),
        _ => elevation::inner(sizes, link),
    }
}

/// Whole plates from the side, not broken off: an outer one and an inner one, their first pin at the
/// origin and their second a pitch along.
pub fn whole_plates(sizes: &Sizes) -> [Vec<Step>; 2] {
    elevation::whole_plates(sizes)
}

/// The axis of a pin cut lengthwise in the plan section, a little past both its heads.
pub fn pin_axis(sizes: &Sizes) -> [Step; 2] {
    plan::pin_axis(sizes)
}

/// The pieces of a body in the section across the chain through its first pin: across to the right,
/// up, back to front.
pub fn across(sizes: &Sizes, link: Link) -> Vec<Piece> {
    match link {
        Link::OuterToLeft | Link::OuterToRight => across::outer(sizes),
        Link::Roller => across::roller(sizes),
        _ => across::inner(sizes, link),
    }
}

/// How far from the pin an outer link is broken off, mm: chosen, past the reach of the inner plates,
/// further on the right where the free link is taken hold of, before the other eye begins.
pub fn break_mm(sizes: &Sizes, link: Link) -> f64 {
    const LEFT: f64 = 0.56;
    const RIGHT: f64 = 0.72;
    const PAST_PLATE: f64 = 0.08;
    let p = sizes.pitch_mm;
    let share = if link.reaches() < 0.0 { LEFT } else { RIGHT };
    let most = p - elevation::shoulder_mm(sizes.outer_plate_height_mm, sizes.outer_waist_mm, p);
    (share * p).max(sizes.inner_overhang_mm + PAST_PLATE * p).min(most)
}

/// Where the collar ends, mm from the chain's middle.
fn collar_end_mm(sizes: &Sizes) -> f64 {
    0.5 * sizes.inner_link_width_mm() - sizes.bearing_length_mm
}

fn is_bushed(sizes: &Sizes) -> bool {
    sizes.construction == Construction::Bushed
}

#[cfg(test)]
mod tests;
