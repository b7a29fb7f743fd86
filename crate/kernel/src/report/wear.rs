//! The section `wear` of a report.

use super::plain;
use crate::drive::Tired;
use crate::wear::{Centres, limit_fraction};
use serde::Serialize;

/// Pitches between the two rollers that a gauge pushes apart: chosen.
pub const GAUGE_PITCHES: u32 = 8;

/// What wear has added.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WearSection {
    /// Wear w of a joint, pin and bore together.
    pub joint_wear_mm: f64,
    /// Between rollers across an outer link, p + 2 w.
    pub outer_pitch_mm: f64,
    /// Between rollers across an inner link, p.
    pub inner_pitch_mm: f64,
    /// w / p.
    pub elongation_fraction: f64,
    /// The elongation at which the chain is replaced where its shafts can be moved.
    pub limit_fraction: f64,
    /// The same where they cannot.
    pub limit_fixed_fraction: f64,
    /// What wear has added to the whole chain.
    pub longer_mm: f64,
    /// How far the slack strand hangs if nothing takes that up; absent without a drive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag_mm: Option<f64>,
    /// Teeth of the wheel that the next three are about: the larger of the drive.
    pub sprocket_teeth_count: u32,
    /// How much larger the polygon of the rollers is than the pitch circle.
    pub sprocket_rise_mm: f64,
    /// How far the lower rollers have risen.
    pub low_rise_mm: f64,
    /// How far the higher ones have.
    pub high_rise_mm: f64,
    /// The elongation at which those come to the tips of the lowest teeth of ISO 606.
    pub sprocket_pass_fraction: f64,
    /// What a rule reads over an even number of pitches under load.
    pub rule_reading_fraction: f64,
    /// What a gauge reads that pushes two rollers apart.
    pub gauge_reading_fraction: f64,
    /// So many pitches apart.
    pub gauge_pitches_count: u32,
    /// Clearance of the pin along the load, c + w.
    pub clearance_along_mm: f64,
    /// Clearance across it, c.
    pub clearance_across_mm: f64,
    /// The next outer link's turn as new.
    pub turn_limit_new_rad: f64,
    /// The same worn.
    pub turn_limit_worn_rad: f64,
    /// The twist as new, which wear leaves as it was.
    pub twist_limit_rad: f64,
    /// Times as much friction as in a straight line, at the drive's offset, as new; absent without a
    /// drive or a pose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_multiple_new: Option<f64>,
    /// The same worn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_multiple_worn: Option<f64>,
}

impl WearSection {
    /// The section of a worn chain.
    pub fn of(tired: &Tired) -> Self {
        let multiples = tired.costs().map(|costs| costs.map(|cost| cost.multiple()));
        let [new, worn] = multiples.unwrap_or([None, None]);
        Self { friction_multiple_new: new, friction_multiple_worn: worn, ..Self::at_once(tired) }
    }

    /// The section without what takes a solve of the drive's strand.
    pub fn at_once(tired: &Tired) -> Self {
        let (length, wheel, climb) = (&tired.length, tired.wheel(), tired.climb());
        let limit = |centres| limit_fraction(wheel.teeth, centres);
        let rise_mm = |radius_mm: f64| plain((radius_mm - wheel.pitch_radius_mm()).max(0.0));
        let [new, worn] = tired.plays();
        Self {
            joint_wear_mm: length.joint_wear_mm,
            outer_pitch_mm: length.outer_pitch_mm(),
            inner_pitch_mm: length.inner_pitch_mm(),
            elongation_fraction: length.elongation_fraction(),
            limit_fraction: limit(Centres::Adjustable),
            limit_fixed_fraction: limit(Centres::Fixed),
            longer_mm: tired.longer_mm(),
            sag_mm: tired.sag_mm(),
            sprocket_teeth_count: wheel.teeth,
            sprocket_rise_mm: plain(climb.rise_mm),
            low_rise_mm: rise_mm(climb.low_mm),
            high_rise_mm: rise_mm(climb.high_mm),
            sprocket_pass_fraction: tired.passing_fraction(),
            rule_reading_fraction: length.rule_fraction(),
            gauge_reading_fraction: length.gauge_fraction(f64::from(GAUGE_PITCHES)),
            gauge_pitches_count: GAUGE_PITCHES,
            clearance_along_mm: tired.worn.along_mm(&tired.sizes),
            clearance_across_mm: tired.worn.across_mm(&tired.sizes),
            turn_limit_new_rad: plain(new.turn.angle_rad),
            turn_limit_worn_rad: plain(worn.turn.angle_rad),
            twist_limit_rad: plain(worn.twist.angle_rad),
            friction_multiple_new: None,
            friction_multiple_worn: None,
        }
    }
}
