//! The sections `drive` and `span` of a report.

use super::plain;
use crate::drive::ChainLine;
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
    /// The same with the drive's offset, joints elastic, ends held; absent when the solve does not
    /// settle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_fraction_offset: Option<f64>,
    /// Loss at rollers that turn, of the power carried; the offset does not change it here.
    pub loss_fraction_rollers: f64,
    /// Flat face lever arm, same pressure everywhere, over the pin's radius.
    pub face_lever_ratio: f64,
    /// Rise and fall of the chain at the wheel with fewer teeth, of its pitch radius.
    pub chordal_rise_fraction: f64,
}

impl DriveSection {
    /// The section of a drive; the loss with its offset is worked out elsewhere.
    pub fn of(line: &ChainLine, loss_fraction_offset: Option<f64>) -> Self {
        let (driver, driven) = (line.layout.driver, line.layout.driven);
        let smaller = if driver.teeth < driven.teeth { driver } else { driven };
        let [turning, _stuck] = line.roller_fractions();
        Self {
            articulation_driver_rad: driver.articulation_rad(),
            articulation_driven_rad: driven.articulation_rad(),
            tight_n: line.running.tight_n,
            loss_fraction_straight: plain(line.running.straight_fraction()),
            loss_fraction_offset: loss_fraction_offset.map(plain),
            loss_fraction_rollers: plain(turning),
            face_lever_ratio: line.face_arms().flat_ratio(&line.sizes),
            chordal_rise_fraction: smaller.chordal_rise_fraction(),
        }
    }
}
