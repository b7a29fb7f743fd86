//! What is asked of a pitch, and the wishes that say it to a chain.

use super::mode::Mode;
use crate::chain::Sizes;
use crate::contact::{Along, Body, Play, Pose, Wish};
use crate::plane::Point;

/// What is asked.
#[derive(Debug, Clone, PartialEq)]
pub enum Ask {
    /// A share of a movement: 1 is the stop.
    Share {
        /// The movement.
        mode: Mode,
        /// How far, -1 to 1.
        share: f64,
    },
    /// A point of a body, held by a pointer on the drawn plan section.
    Hold {
        /// The body.
        body: Body,
        /// The held point, in the body's axes, mm.
        inside: Point,
        /// Where the pointer is, mm of the drawn section.
        to: Point,
        /// The true and the drawn pose when it was taken hold of.
        rest: Box<[Pose; 2]>,
    },
    /// A pose of the first joint, true sizes.
    Room {
        /// Offset of the inner link across, mm.
        offset_mm: f64,
        /// Its yaw, rad.
        yaw_rad: f64,
    },
}

/// A movement asked for to its stop is asked for this much further, so that metal ends it.
const BEYOND_THE_STOP: f64 = 1.02;

/// At the stop of a slide, how much of that the next outer link asks for.
const NEXT_PUSHES: f64 = 0.05;

impl Ask {
    /// The pose that loose joints keep to: the one in which a hand took hold.
    pub(super) fn rest(&self, which: usize) -> Option<&Pose> {
        match self {
            Self::Hold { rest, .. } => rest.get(which),
            _ => None,
        }
    }

    /// How far the first joint is asked to bend, 0 to 1.
    pub(super) fn bend_share(&self) -> f64 {
        match self {
            Self::Share { mode: Mode::Bend, share } => *share,
            _ => 0.0,
        }
    }

    /// The share of the load that is asked for, if one is.
    pub(super) fn load_share(&self) -> Option<f64> {
        match self {
            Self::Share { mode: Mode::Load, share } => Some(*share),
            _ => None,
        }
    }

    /// The wishes for a chain's plan section. `factor` is how many times this chain's gaps are too
    /// big, `drawn_factor` how many times the drawn one's are.
    pub(super) fn plan_wishes(
        &self,
        sizes: &Sizes,
        play: &Play,
        factor: f64,
        drawn_factor: f64,
    ) -> Vec<Wish> {
        match self {
            Self::Share { mode, share } => movement(*mode, reach(*share), sizes, play),
            Self::Hold { body, inside, to, .. } => {
                let straight = Pose::straight(sizes);
                let from = straight.of(*body).outward(*inside);
                let to = from + (*to - from) * (factor / drawn_factor);
                vec![Wish::Point { body: *body, inside: *inside, to }]
            }
            Self::Room { offset_mm, yaw_rad } => [Body::InnerFar, Body::InnerNear]
                .into_iter()
                .flat_map(|body| [across(body, factor * offset_mm), turn(body, factor * yaw_rad)])
                .collect(),
        }
    }

    /// The wishes for a chain's end section: first axis across, second up.
    pub(super) fn end_wishes(&self, play: &Play) -> Vec<Wish> {
        let Self::Share { mode: Mode::Twist, share } = self else { return Vec::new() };
        let angle_rad = reach(*share) * play.twist.angle_rad;
        [Body::InnerFar, Body::InnerNear]
            .into_iter()
            .flat_map(|body| [turn(body, angle_rad), plain(body, Along::X, 0.0)])
            .collect()
    }
}

/// A share, and past the stop when it is the stop.
fn reach(share: f64) -> f64 {
    if share.abs() < 1.0 { share } else { BEYOND_THE_STOP * share.signum() }
}

fn plain(body: Body, along: Along, value: f64) -> Wish {
    Wish::Coordinate { body, along, value, weight: 1.0 }
}

fn across(body: Body, value_mm: f64) -> Wish {
    plain(body, Along::Y, value_mm)
}

fn turn(body: Body, value_rad: f64) -> Wish {
    plain(body, Along::Yaw, value_rad)
}

/// The wishes of a share of a movement in the plan section.
fn movement(mode: Mode, share: f64, sizes: &Sizes, play: &Play) -> Vec<Wish> {
    use Body::{InnerFar, InnerNear, NextOuter};
    let both = |offset_mm: f64, yaw_rad: f64| {
        [InnerFar, InnerNear]
            .into_iter()
            .flat_map(move |body| [across(body, offset_mm), turn(body, yaw_rad)])
    };
    // Halfway between the two faces that a yaw closes.
    let middle = 0.5 * (sizes.inner_reach_mm() - sizes.outer_reach_mm());
    let mut wishes = Vec::new();
    match mode {
        Mode::Turn => {
            let yaw_rad = 0.5 * share * play.turn.angle_rad;
            wishes.extend(both(middle * yaw_rad, yaw_rad));
            wishes.push(turn(NextOuter, 2.0 * yaw_rad));
        }
        Mode::Aside => {
            // Only the plate that metal stops asks for more; the other one is led where the next link
            // bears on it, and the next link asks for so little more that the plates stay flat.
            let stop = share.clamp(-1.0, 1.0);
            let lead = if share < 0.0 { InnerNear } else { InnerFar };
            let follow = if share < 0.0 { InnerFar } else { InnerNear };
            let next_share = stop + NEXT_PUSHES * (share - stop);
            wishes.extend([across(lead, share * play.offset_mm), turn(lead, 0.0)]);
            let second = Point::new(sizes.pitch_mm, 0.0);
            let to = second + Point::new(0.0, stop * play.offset_mm);
            wishes.push(Wish::Point { body: follow, inside: second, to });
            wishes.push(turn(follow, 0.0));
            let next_mm = 2.0 * next_share * play.offset_mm;
            wishes.extend([across(NextOuter, next_mm), turn(NextOuter, 0.0)]);
        }
        Mode::Lean => {
            let yaw_rad = share * play.shear.angle_rad;
            wishes.extend(both(middle * yaw_rad, yaw_rad));
            wishes.push(turn(NextOuter, 0.0));
        }
        Mode::Twist | Mode::Bend | Mode::Load => {
            wishes.extend(both(0.0, 0.0));
            wishes.push(turn(NextOuter, 0.0));
        }
    }
    wishes
}
