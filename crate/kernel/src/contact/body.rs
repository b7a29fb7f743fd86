//! The bodies of one pitch and where they stand in the plan section.

use crate::chain::{Construction, Sizes};
use crate::plane::Placement;

/// A rigid body of one pitch. A bushed inner link is one body: its far and near plates move as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Body {
    /// The outer link that is held, with the first pin.
    HeldOuter,
    /// The far plate of the inner link; with a bush, the whole inner link.
    InnerFar,
    /// The near plate of the inner link; with a bush, the same body as [`Body::InnerFar`].
    InnerNear,
    /// The next outer link, with the second pin.
    NextOuter,
    /// The roller on the first pin.
    FirstRoller,
    /// The roller on the second pin.
    SecondRoller,
}

impl Body {
    /// Every body, in the order of [`Pose`].
    pub const ALL: &'static [Self] = &[
        Self::HeldOuter,
        Self::InnerFar,
        Self::InnerNear,
        Self::NextOuter,
        Self::FirstRoller,
        Self::SecondRoller,
    ];

    /// The key in ids and reports.
    pub fn key(self) -> &'static str {
        match self {
            Self::HeldOuter => "held",
            Self::InnerFar => "inner",
            Self::InnerNear => "inner-near",
            Self::NextOuter => "next",
            Self::FirstRoller => "first-roller",
            Self::SecondRoller => "second-roller",
        }
    }

    /// The place in [`Pose`].
    pub fn index(self) -> usize {
        self as usize
    }

    /// The rigid body that it belongs to: both inner plates are one with a bush.
    pub(super) fn rigid(self, construction: Construction) -> Self {
        let bushed = construction == Construction::Bushed;
        if bushed && self == Self::InnerNear { Self::InnerFar } else { self }
    }
}

/// Where every body of a pitch stands in the plan section. Each body's own origin is: a link's, its
/// first pin or bore centre (the next outer link's, the second pin); a roller's, its centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose(pub [Placement; 6]);

impl Pose {
    /// The straight chain, everything centred.
    pub fn straight(sizes: &Sizes) -> Self {
        let first = Placement::default();
        let second = Placement::new(sizes.pitch_mm, 0.0, 0.0);
        Self([first, first, first, second, first, second])
    }

    /// Where a body stands.
    pub fn of(&self, body: Body) -> &Placement {
        &self.0[body.index()]
    }

    /// Puts a body somewhere; a bushed inner link moves as one.
    pub fn put(&mut self, construction: Construction, body: Body, place: Placement) {
        let inner = matches!(body, Body::InnerFar | Body::InnerNear);
        if inner && construction == Construction::Bushed {
            self.0[Body::InnerFar.index()] = place;
            self.0[Body::InnerNear.index()] = place;
        } else {
            self.0[body.index()] = place;
        }
    }

    /// The first joint: the far inner plate as seen from the held outer link.
    pub fn first_joint(&self) -> Placement {
        self.of(Body::InnerFar).seen_from(self.of(Body::HeldOuter))
    }

    /// The second joint's yaw: the next outer link as seen from the far inner plate, rad.
    pub fn second_yaw_rad(&self) -> f64 {
        self.of(Body::NextOuter).yaw_rad - self.of(Body::InnerFar).yaw_rad
    }
}
