//! A worn chain as a page shows it: what is said of it and its pictures.

mod joint;
mod strip;
mod wheel;

pub use joint::JointView;
pub use strip::StripView;
pub use wheel::{Height, WheelView};

use crate::answer::{Answer, wear, wear_friction};
use crate::chain::WornBore;
use crate::contact::{RoomPoint, worn_room};
use crate::drive::Tired;
use crate::report::WearSection;
use crate::scenario::Scenario;
use crate::wear::large_wheel_fraction;
use serde::Serialize;

/// Steps of the curve of heights.
const STEPS: u32 = 40;
/// How far slider and chart go past the wear that the teeth hold.
const TO: f64 = 1.15;
/// How near the slider goes to no metal at all.
const LAST_METAL: f64 = 0.98;

/// Wear of a joint at which something happens.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Limits {
    /// Replaced where the shafts cannot be moved: a rule reads 1.5 %.
    pub fixed_mm: f64,
    /// Replaced where they can, by a rule's reading.
    pub adjustable_mm: f64,
    /// The rule of 200 over the teeth.
    pub rule_mm: f64,
    /// The higher rollers come to the tips of the teeth.
    pub pass_mm: f64,
    /// Where slider and chart end.
    pub to_mm: f64,
}

/// A corner of the room to move.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Corner {
    /// Offset across, mm.
    pub offset_mm: f64,
    /// Yaw, rad.
    pub yaw_rad: f64,
}

impl Corner {
    fn of(point: &RoomPoint) -> Self {
        Self { offset_mm: point.offset_mm + 0.0, yaw_rad: point.yaw_rad + 0.0 }
    }
}

/// What a page shows of a worn chain.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WearState {
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
    /// Every number, as in a report but for the drive's offset.
    pub section: WearSection,
    /// Where limits lie.
    pub limits: Limits,
    /// How the rollers rise as wear grows.
    pub heights: Vec<Height>,
    /// The joint, new and worn.
    pub joint: JointView,
    /// The wheel.
    pub wheel: WheelView,
    /// Rule and gauge.
    pub strip: StripView,
    /// Room to move as new and worn: outlines.
    pub rooms: [Vec<Corner>; 2],
}

impl WearState {
    /// The worn chain of a scenario; of one that says nothing of wear, worn by 0.5 %. None where the
    /// chain does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let tired = Tired::shown(scenario)?;
        let section = WearSection::at_once(&tired);
        let room = |worn: &WornBore| worn_room(&tired.sizes, worn).iter().map(Corner::of).collect();
        Some(Self {
            answers: wear(&tired),
            limits: Limits::of(&tired, &section),
            heights: wheel::heights(&tired.wheel(), STEPS),
            joint: JointView::of(&tired.sizes, &tired.worn),
            wheel: WheelView::of(&tired),
            strip: StripView::of(&tired.sizes, &tired.length),
            rooms: [room(&WornBore::NONE), room(&tired.worn)],
            section,
        })
    }

    /// What the drive's offset costs as new and worn, which takes two solves of its strand.
    pub fn friction(scenario: &Scenario) -> Option<Answer> {
        wear_friction(&Tired::shown(scenario)?)
    }
}

impl Limits {
    fn of(tired: &Tired, section: &WearSection) -> Self {
        let wear_mm = |fraction: f64| fraction * tired.sizes.pitch_mm;
        // A rule finds the pin gaps of the new chain too.
        let new_mm = tired.length.rule_mm() - tired.length.joint_wear_mm;
        let read_mm = |fraction: f64| (wear_mm(fraction) - new_mm).max(0.0);
        let pass_mm = wear_mm(section.sprocket_pass_fraction);
        let limit_mm = read_mm(section.limit_fraction);
        let deepest_mm = LAST_METAL * WornBore::deepest_mm(&tired.sizes);
        Self {
            fixed_mm: read_mm(section.limit_fixed_fraction),
            adjustable_mm: limit_mm,
            rule_mm: wear_mm(large_wheel_fraction(section.sprocket_teeth_count)),
            pass_mm,
            to_mm: (TO * pass_mm.max(limit_mm)).min(deepest_mm),
        }
    }
}

#[cfg(test)]
mod tests;
