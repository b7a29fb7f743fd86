//! How a contact is called.

use super::body::Body;

/// Which pair of surfaces meets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The side of the pin in the bore of bush or collar.
    PinBore,
    /// The outer face of an inner plate and the inner face of an outer plate.
    PlateFace,
    /// The end of a roller and the inner face of an inner plate.
    RollerPlate,
    /// The bore of a roller and the barrel it runs on.
    RollerBarrel,
    /// The two collars of one joint, end to end.
    CollarEnds,
}

impl Kind {
    /// Every kind.
    pub const ALL: &'static [Self] =
        &[Self::PinBore, Self::PlateFace, Self::RollerPlate, Self::RollerBarrel, Self::CollarEnds];

    /// The key in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::PinBore => "pin-bore",
            Self::PlateFace => "plate-face",
            Self::RollerPlate => "roller-plate",
            Self::RollerBarrel => "roller-barrel",
            Self::CollarEnds => "collar-ends",
        }
    }
}

/// Which of the two joints of the pitch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Joint {
    /// At the held outer link's pin.
    First,
    /// At the next outer link's pin.
    Second,
}

impl Joint {
    /// Both.
    pub const ALL: &'static [Self] = &[Self::First, Self::Second];

    /// The key in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Second => "second",
        }
    }

    /// The side on which a pull presses the pin in its bore: away from the inner link's middle.
    pub fn loaded(self) -> Side {
        match self {
            Self::First => Side::Left,
            Self::Second => Side::Right,
        }
    }
}

/// Along the chain in the plan section and from the side, left is -x and right is +x; in the end
/// section, below is -z and above is +z.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Towards -x.
    Left,
    /// Towards +x.
    Right,
    /// Towards -z.
    Below,
    /// Towards +z.
    Above,
}

impl Side {
    /// The two along the chain.
    pub const ALONG: &'static [Self] = &[Self::Left, Self::Right];
    /// The two of the end section.
    pub const UPRIGHT: &'static [Self] = &[Self::Below, Self::Above];

    /// -1 or 1.
    pub fn sign(self) -> f64 {
        match self {
            Self::Left | Self::Below => -1.0,
            Self::Right | Self::Above => 1.0,
        }
    }

    /// The key in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Below => "below",
            Self::Above => "above",
        }
    }
}

/// Across the chain: near is -y, far is +y; from the side both are seen as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// Towards -y.
    Near,
    /// Towards +y.
    Far,
    /// The whole length, as seen from the side.
    Whole,
}

impl End {
    /// The two ends.
    pub const ALL: &'static [Self] = &[Self::Near, Self::Far];

    /// -1 or 1; 0 for the whole.
    pub fn sign(self) -> f64 {
        match self {
            Self::Near => -1.0,
            Self::Far => 1.0,
            Self::Whole => 0.0,
        }
    }

    /// The key in ids.
    pub fn key(self) -> &'static str {
        match self {
            Self::Near => "near",
            Self::Far => "far",
            Self::Whole => "whole",
        }
    }
}

/// The name of one contact of a pitch.
///
/// `end` is the end across the chain, `side` the side along it. `inner` tells, in a collared chain,
/// the two ends of one collar apart: false for the mouth at the outer face, true for the inner end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Contact {
    /// Which surfaces.
    pub kind: Kind,
    /// Which joint.
    pub joint: Joint,
    /// Near or far.
    pub end: End,
    /// Left or right.
    pub side: Side,
    /// The inner end of a collar.
    pub inner: bool,
}

impl Contact {
    /// The id: the name in a report, a page and a drawing, such as `first.pin-bore.far.right`.
    pub fn id(&self) -> String {
        let [joint, kind] = [self.joint.key(), self.kind.key()];
        let [end, side] = [self.end.key(), self.side.key()];
        let inner = if self.inner { ".inner" } else { "" };
        [joint, ".", kind, ".", end, ".", side, inner].concat()
    }

    /// The contact of an id; none where no contact is called so.
    pub fn of_id(id: &str) -> Option<Self> {
        let (id, inner) = match id.strip_suffix(".inner") {
            Some(rest) => (rest, true),
            None => (id, false),
        };
        let mut words = id.split('.');
        let contact = Self {
            joint: keyed(Joint::ALL, Joint::key, words.next()?)?,
            kind: keyed(Kind::ALL, Kind::key, words.next()?)?,
            end: keyed(&[End::Near, End::Far, End::Whole], End::key, words.next()?)?,
            side: keyed(
                &[Side::Left, Side::Right, Side::Below, Side::Above],
                Side::key,
                words.next()?,
            )?,
            inner,
        };
        words.next().is_none().then_some(contact)
    }

    /// The outer link's body at this joint.
    pub fn outer(&self) -> Body {
        match self.joint {
            Joint::First => Body::HeldOuter,
            Joint::Second => Body::NextOuter,
        }
    }

    /// The inner plate's body at this end.
    pub fn inner_plate(&self) -> Body {
        match self.end {
            End::Far | End::Whole => Body::InnerFar,
            End::Near => Body::InnerNear,
        }
    }

    /// The roller at this joint.
    pub fn roller(&self) -> Body {
        match self.joint {
            Joint::First => Body::FirstRoller,
            Joint::Second => Body::SecondRoller,
        }
    }
}

/// The one of some names that has this key.
fn keyed<T: Copy>(all: &[T], key_of: fn(T) -> &'static str, key: &str) -> Option<T> {
    all.iter().copied().find(|one| key_of(*one) == key)
}
