//! The section `reach` of a report.

use super::plain;
use crate::chain::Chain;
use crate::contact::{Joint, Pose};
use crate::reach::{Entered, FaceEntry, Liquid, Probes, Pumped};
use crate::scenario::Reach;
use serde::Serialize;

/// What gets into one joint of the straight chain, everything centred.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReachSection {
    /// Every hidden face.
    pub faces: Vec<FaceSection>,
    /// What goes in and comes out as the joint is turned sideways from stop to stop and back.
    pub pumped_mm3_per_cycle: f64,
    /// The share of that round the pin.
    pub pumped_pin_mm3_per_cycle: f64,
    /// What goes in and comes out as it is slid aside from stop to stop and back.
    pub pumped_aside_mm3_per_cycle: f64,
}

/// One hidden face: both walls of a gap, at one end of the joint.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FaceSection {
    /// Its id.
    pub face: String,
    /// Share of it that a straight bristle touches.
    pub bristle_fraction: f64,
    /// Share of it to which a particle rolls.
    pub particle_fraction: f64,
    /// Whether the liquid comes there.
    pub liquid: bool,
    /// Corners on the way there.
    pub corner_count: u32,
    /// Until the liquid has filled its gap; absent where it does not come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fill_time_s: Option<f64>,
    /// Through its gap, pressed from the near side to the far one.
    pub flow_mm3_per_s: f64,
    /// From wall to wall.
    pub height_mm: f64,
}

impl ReachSection {
    /// The section of a chain that goes together and of what is to get in.
    pub fn of(chain: &Chain, reach: &Reach) -> Self {
        let pose = Pose::straight(chain);
        let entered = Entered::of(chain, &pose, Joint::First, &reach.probes(), &reach.liquid());
        let pumped = Pumped::of(chain);
        Self {
            faces: entered.faces.iter().map(FaceSection::of).collect(),
            pumped_mm3_per_cycle: plain(pumped.turned_mm3()),
            pumped_pin_mm3_per_cycle: plain(pumped.turned_pin_mm3),
            pumped_aside_mm3_per_cycle: plain(pumped.slid_mm3),
        }
    }
}

impl FaceSection {
    /// The section of one face.
    pub fn of(entry: &FaceEntry) -> Self {
        Self {
            face: entry.face.id(),
            bristle_fraction: plain(entry.bristle_fraction),
            particle_fraction: plain(entry.particle_fraction),
            liquid: entry.fill_time_s.is_some(),
            corner_count: entry.face.gap.corners(),
            fill_time_s: entry.fill_time_s.map(plain),
            flow_mm3_per_s: plain(entry.flow_mm3_per_s),
            height_mm: plain(entry.height_mm),
        }
    }
}

impl Reach {
    /// What is pushed or rolls in.
    pub fn probes(&self) -> Probes {
        Probes { bristle_mm: self.bristle_mm, particle_mm: self.particle_mm }
    }

    /// What flows in.
    pub fn liquid(&self) -> Liquid {
        Liquid {
            viscosity_pa_s: self.viscosity_pa_s,
            tension_n_per_m: self.surface_tension_n_per_m,
            angle_rad: self.wetting_angle_deg.to_radians(),
            pressure_pa: self.pressure_pa,
        }
    }
}
