//! The sections `drive` and `span` of a report.

use super::plain;
use crate::drive::{ChainLine, Crooked, Missing};
use crate::strand::Solution;
use serde::Serialize;

/// What a drive does to its chain, and what it loses at the chain's joints.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DriveSection {
    /// How far a joint folds at the driver.
    pub articulation_driver_rad: f64,
    /// How far a joint folds at the driven wheel.
    pub articulation_driven_rad: f64,
    /// Pull of the tight strand.
    pub tight_n: f64,
    /// Loss at pins and faces in a straight line, of the power carried.
    pub loss_fraction_straight: f64,
    /// The same with the drive's offset, joints elastic, ends held; absent without a pose of theirs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_fraction_offset: Option<f64>,
    /// Why there is none: as `elastic_missing`, or `locked` where friction would take all that is
    /// carried, so that the drive cannot turn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_offset_missing: Option<&'static str>,
    /// Loss at rollers that turn, of the power carried; the offset does not change it here.
    pub loss_fraction_rollers: f64,
    /// Flat face lever arm, same pressure everywhere, over the pin's radius.
    pub face_lever_ratio: f64,
    /// Rise and fall of the chain at the wheel with fewer teeth, of its pitch radius.
    pub chordal_rise_fraction: f64,
}

/// The tight strand between the wheels, in the plan section; forces by joint from the driver's end.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpanSection {
    /// Joints n of the free span.
    pub joints: usize,
    /// The strand's offset up to which its links only slide, n a/2.
    pub free_offset_mm: f64,
    /// What the teeth take up besides, both ends together.
    pub tooth_float_mm: f64,
    /// The largest offset of the strand with rigid joints, no link of it more than 30 degrees out of line,
    /// without the teeth's share.
    pub max_offset_mm: f64,
    /// Whether rigid joints find a pose at the drive's offset.
    pub rigid_pose_exists: bool,
    /// By how much the offset is too large for them.
    pub shortfall_mm: f64,
    /// With rigid joints.
    pub rigid: Option<StrandSection>,
    /// Why there is none: `no_pose`, or `unsettled` where the solve came to no rest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rigid_missing: Option<&'static str>,
    /// With elastic joints.
    pub elastic: Option<StrandSection>,
    /// Why there is none: `no_pose`, `bent` where the offset is so far past the rigid end that the
    /// estimate of the joints' stiffness says nothing, or `unsettled`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub elastic_missing: Option<&'static str>,
}

/// One solved strand, by joint.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StrandSection {
    /// Yaw of each joint, anticlockwise, its springy part included.
    pub turn_rad: Vec<f64>,
    /// Sum of the pin's contact forces.
    pub pin_force_n: Vec<f64>,
    /// Sum of the plate faces' contact forces.
    pub face_force_n: Vec<f64>,
    /// Times as much friction as in a straight line; empty where friction takes nothing there.
    pub friction_multiple: Vec<f64>,
}

impl SpanSection {
    /// The section of a solved drive.
    pub fn of(crooked: &Crooked) -> Self {
        let line = &crooked.line;
        let strand = |solution: &Solution| StrandSection::of(line, solution);
        Self {
            joints: line.joints(),
            free_offset_mm: plain(line.strand_free_mm()),
            tooth_float_mm: plain(line.float_mm()),
            max_offset_mm: plain(crooked.largest_mm),
            rigid_pose_exists: crooked.rigid != Err(Missing::NoPose),
            shortfall_mm: plain(crooked.shortfall_mm()),
            rigid: crooked.rigid.as_ref().ok().map(strand),
            rigid_missing: crooked.rigid.as_ref().err().map(|missing| missing.key()),
            elastic: crooked.elastic.as_ref().ok().map(strand),
            elastic_missing: crooked.elastic.as_ref().err().map(|missing| missing.key()),
        }
    }
}

impl StrandSection {
    fn of(line: &ChainLine, solution: &Solution) -> Self {
        let plainly = |numbers: &[f64]| numbers.iter().copied().map(plain).collect();
        Self {
            turn_rad: plainly(&solution.turn_rad),
            pin_force_n: plainly(&solution.pin_force_n),
            face_force_n: plainly(&solution.face_force_n),
            friction_multiple: line.multiples(solution),
        }
    }
}

impl DriveSection {
    /// The section of a solved drive.
    pub fn of(crooked: &Crooked) -> Self {
        let line = &crooked.line;
        let (driver, driven) = (line.layout.driver, line.layout.driven);
        let cost = crooked.cost();
        let smaller = if driver.teeth < driven.teeth { driver } else { driven };
        let [turning, _stuck] = line.roller_fractions();
        Self {
            articulation_driver_rad: driver.articulation_rad(),
            articulation_driven_rad: driven.articulation_rad(),
            tight_n: line.running.tight_n,
            loss_fraction_straight: plain(line.running.straight_fraction()),
            loss_fraction_offset: cost.ok().map(|cost| plain(cost.loss_fraction)),
            loss_offset_missing: cost.err().map(Missing::key),
            loss_fraction_rollers: plain(turning),
            face_lever_ratio: line.face_arms().flat_ratio(&line.sizes),
            chordal_rise_fraction: smaller.chordal_rise_fraction(),
        }
    }
}
