//! What a scene is drawn on and where its sections lie.

use crate::contact::Contact;
use crate::plane::{Point, Projection};

/// The sheet: as wide and high as so many em of its text.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sheet {
    /// Width, em.
    pub width_em: f64,
    /// Height, em.
    pub height_em: f64,
    /// Whether the end section stays away until it is asked for.
    pub narrow: bool,
}

/// One section of the chain.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum View {
    /// A-A, cut through the pins' axes, seen from above: x along, y across.
    Plan,
    /// B-B, cut along the middle, seen from the side: x along, z up.
    Elevation,
    /// C-C, cut across through one pin: y across, z up.
    End,
}

impl View {
    /// Every section.
    pub const ALL: &'static [Self] = &[Self::Plan, Self::Elevation, Self::End];

    /// The key in the page and in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::Plan => "plan",
            Self::Elevation => "elevation",
            Self::End => "end",
        }
    }

    /// The section of a key, if there is one.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|view| view.key() == key)
    }
}

/// A section laid on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// Which.
    pub view: View,
    /// Where the section's own origin lies on the sheet, em.
    pub origin: Point,
    /// How many em of the sheet one mm of chain takes.
    pub em_per_mm: f64,
    /// The corner of its room with the smallest x and y, em.
    pub low: Point,
    /// The corner of its room with the largest x and y, em.
    pub high: Point,
}

impl Placed {
    /// From mm of the section to the sheet.
    pub fn projection(&self) -> Projection {
        Projection::new(self.origin, self.em_per_mm, 0.0, true)
    }

    /// Whether a point of the sheet lies in the section's room.
    pub fn holds(&self, at: Point) -> bool {
        at.cmpge(self.low).all() && at.cmple(self.high).all()
    }
}

/// What a grip moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Holds {
    /// The free link of the movement shown.
    Link,
    /// The end of the dimension line of an open gap.
    End(Contact),
}

impl Holds {
    /// Its id: `next`, or `end.` and the id of the contact.
    pub fn id(&self) -> String {
        match self {
            Self::Link => "next".to_owned(),
            Self::End(contact) => ["end.", &contact.id()].concat(),
        }
    }
}

/// Something that can be taken hold of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grip {
    /// What it moves.
    pub holds: Holds,
    /// The section it moves in.
    pub view: View,
    /// Its centre, mm of the section.
    pub at_mm: Point,
    /// Its centre on the sheet, em.
    pub at: Point,
    /// Its radius, em.
    pub radius_em: f64,
}
