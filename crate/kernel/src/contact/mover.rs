//! Which gap a contact belongs to, and which of its two parts a change of that gap moves.

use super::body::Body;
use super::meeting::Meeting;
use super::name::Kind;
use crate::chain::Pair;

impl Kind {
    /// The pair of parts whose gap this is; the ends of two collars belong to none.
    pub fn pair(self) -> Option<Pair> {
        match self {
            Self::PinBore => Some(Pair::PinBore),
            Self::PlateFace => Some(Pair::SideGap),
            Self::RollerPlate => Some(Pair::RollerPlates),
            Self::RollerBarrel => Some(Pair::RollerBarrel),
            Self::CollarEnds => None,
        }
    }
}

impl Meeting {
    /// Whether the dimension that moves with the gap of this contact's pair is one of the body with
    /// the corner: the bore for a pin in its bore, the outer spacing for plates, the roller's own
    /// sizes for a roller.
    pub fn moves_at_the_corner(&self) -> bool {
        match self.contact.kind {
            Kind::PinBore => is_inner(self.corner_body),
            Kind::PlateFace => !is_inner(self.corner_body),
            Kind::RollerPlate | Kind::RollerBarrel => is_roller(self.corner_body),
            Kind::CollarEnds => false,
        }
    }
}

fn is_inner(body: Body) -> bool {
    matches!(body, Body::InnerFar | Body::InnerNear)
}

fn is_roller(body: Body) -> bool {
    matches!(body, Body::FirstRoller | Body::SecondRoller)
}
