//! How a hidden face is called.

use crate::contact::{End, Joint};

/// Which gap a face lies in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Gap {
    /// Between inner and outer plate.
    Side,
    /// Between pin and bore.
    PinBore,
    /// Between a roller's end and the inner plate.
    RollerSide,
    /// Between roller and barrel.
    RollerBarrel,
    /// Between the two collars of a joint, end to end.
    CollarSlot,
}

impl Gap {
    /// The key in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::Side => "side-gap",
            Self::PinBore => "pin-bore",
            Self::RollerSide => "roller-side",
            Self::RollerBarrel => "roller-barrel",
            Self::CollarSlot => "collar-slot",
        }
    }

    /// Corners that a way in from outside turns before it is in this gap.
    pub fn corners(self) -> u32 {
        match self {
            Self::Side | Self::RollerSide => 0,
            Self::PinBore | Self::RollerBarrel => 1,
            Self::CollarSlot => 2,
        }
    }
}

/// Both walls of one gap of one joint, at one end of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Face {
    /// At which pin.
    pub joint: Joint,
    /// Which gap.
    pub gap: Gap,
    /// Near or far; the slot between the collars is one whole.
    pub end: End,
}

impl Face {
    /// The id, such as `first.pin-bore.far`; a whole has no end.
    pub fn id(&self) -> String {
        let [joint, gap] = [self.joint.key(), self.gap.key()];
        match self.end {
            End::Whole => format!("{joint}.{gap}"),
            end => format!("{joint}.{gap}.{}", end.key()),
        }
    }
}
