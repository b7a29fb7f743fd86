//! Which faces can meet, and the poses they allow.
//!
//! One pitch of chain in the plan section: an outer link that is held, the inner link, the next
//! outer link and two rollers; x along the chain, y across it, yaw anticlockwise. The first pin
//! stands at the origin, the second at (p, 0) when the chain is straight.
//!
//! Every contact is a corner of one body against a flat face of another ([`Meeting`]). A corner may
//! be rounded; its gap to the face is exact at any finite rotation.

mod bend;
mod body;
mod curve;
mod elevation;
mod end_section;
pub mod loaded;
mod meeting;
mod mover;
mod name;
mod plan;
mod play;
mod room;
mod settle;
mod widen;

pub use body::{Body, Pose};
pub use curve::Curve;
pub use elevation::{Elevation, Pull, SideGap};
pub use meeting::{Meeting, Slope, meetings};
pub use name::{Contact, End, Joint, Kind, Side};
pub use play::{Limit, Limiter, Play};
pub use room::{RoomPoint, room, worn_room};
pub use settle::{Along, OVERLAP_MM, Settled, Settler, Wish};
pub use widen::{MOST_TIMES, cap, widen};

#[cfg(test)]
mod tests;
