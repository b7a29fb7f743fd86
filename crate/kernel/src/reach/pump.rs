//! What a joint breathes as it is worked.

use super::joint::bearing;
use crate::chain::Sizes;
use crate::contact::Play;
use core::f64::consts::PI;

/// What goes in and comes out of one joint in one cycle, mm^3.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pumped {
    /// Turned sideways from stop to stop and back, inner against outer link: the side gaps' share.
    pub turned_side_mm3: f64,
    /// The same: the share of the gap round the pin.
    pub turned_pin_mm3: f64,
    /// Slid aside from stop to stop and back.
    pub slid_mm3: f64,
    /// What both side gaps hold together.
    pub side_volume_mm3: f64,
}

/// The four quarters of a joint: far and near, left and right.
const QUARTERS: f64 = 4.0;
/// The first moment of half a disk is this times its radius cubed.
const HALF_DISK: f64 = 2.0 / 3.0;

impl Pumped {
    /// One joint of a chain that goes together. Turned by an angle psi either way, each quarter of the
    /// side gaps grows and shrinks by 2 psi (2/3) (R^3 - r^3) between the plates' rim R (the mean of
    /// both plates') and the bore's mouth r, and each quarter of the gap round the pin by
    /// 2 psi d2 (v1^2 - v0^2) / 2 between the ends v0, v1 of its metal; each fills once a cycle. Slid
    /// from stop to stop, both side gaps fill once with a pi (R^2 - r^2). Source: derived.
    pub fn of(s: &Sizes) -> Self {
        let play = Play::of(s);
        let swing_rad = 2.0 * play.yaw.angle_rad;
        let rim = 0.5 * (s.inner_reach_mm() + s.outer_reach_mm());
        let mouth = 0.5 * s.bore_mm + s.mouth_radius_mm;
        let (from, to) = bearing(s);
        let moment_mm3 = HALF_DISK * (rim * rim * rim - mouth * mouth * mouth);
        let ring_mm2 = PI * (rim * rim - mouth * mouth);
        let pin_mm3 = 0.5 * s.pin_diameter_mm * (to * to - from * from);
        Self {
            turned_side_mm3: QUARTERS * swing_rad * moment_mm3,
            turned_pin_mm3: QUARTERS * swing_rad * pin_mm3,
            slid_mm3: 2.0 * s.side_gap_mm() * ring_mm2,
            side_volume_mm3: s.side_gap_mm() * ring_mm2,
        }
    }

    /// All that goes in and out as the joint is turned, mm^3.
    pub fn turned_mm3(&self) -> f64 {
        self.turned_side_mm3 + self.turned_pin_mm3
    }
}
