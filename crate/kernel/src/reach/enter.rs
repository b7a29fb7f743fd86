//! What gets into one joint of a settled pitch.

use super::face::Face;
use super::fill::capillary_pressure_pa;
use super::joint::section;
use super::network::Network;
use super::passage::Passage;
use super::section::{Section, Span};
use crate::chain::Sizes;
use crate::contact::{Joint, Pose};

/// What is pushed or rolls in, diameters in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Probes {
    /// A bristle.
    pub bristle_mm: f64,
    /// A particle.
    pub particle_mm: f64,
}

/// What flows in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liquid {
    /// Viscosity, Pa s.
    pub viscosity_pa_s: f64,
    /// Surface tension, N/m.
    pub tension_n_per_m: f64,
    /// Wetting angle, rad.
    pub angle_rad: f64,
    /// Pressure besides its own pull, Pa.
    pub pressure_pa: f64,
}

impl Liquid {
    /// What drives it into a passage, Pa.
    fn drive_pa(&self, passage: &Passage) -> f64 {
        let own_pa = capillary_pressure_pa(self.tension_n_per_m, self.angle_rad, passage.height_mm);
        own_pa + self.pressure_pa
    }
}

/// One wall and what reaches which part of it.
#[derive(Debug, Clone, PartialEq)]
pub struct WallEntry {
    /// Of which face.
    pub face: Face,
    /// Its length, mm.
    pub length_mm: f64,
    /// What the bristle touches.
    pub bristle: Vec<Span>,
    /// Where the particle rolls.
    pub particle: Vec<Span>,
}

/// One face, both its walls on either side of the pin, and what reaches it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FaceEntry {
    /// Which.
    pub face: Face,
    /// Share of its length that the bristle touches.
    pub bristle_fraction: f64,
    /// Share of its length where the particle rolls.
    pub particle_fraction: f64,
    /// Until the liquid has filled its gap, s; none where it does not come.
    pub fill_time_s: Option<f64>,
    /// Through its gap when the near openings are under the liquid's pressure, mm^3/s.
    pub flow_mm3_per_s: f64,
    /// From wall to wall, the mean round the pin, mm.
    pub height_mm: f64,
}

/// What gets into one joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Entered {
    /// Every hidden face.
    pub faces: Vec<FaceEntry>,
    /// Every wall, in the order of [`section`]'s.
    pub walls: Vec<WallEntry>,
}

impl Entered {
    /// What gets into a joint of a pitch in its pose.
    pub fn of(sizes: &Sizes, pose: &Pose, joint: Joint, probes: &Probes, liquid: &Liquid) -> Self {
        let cut = section(sizes, pose, joint);
        let walls = wall_entries(&cut, probes);
        let network = Network::of(sizes, pose, joint);
        let flows = network.flows_mm3_per_s(liquid.pressure_pa, liquid.viscosity_pa_s);
        let filled = network.fill(liquid.viscosity_pa_s, |passage| liquid.drive_pa(passage));
        let face = |(i, edge): (usize, &super::network::Edge)| FaceEntry {
            face: edge.face,
            bristle_fraction: fraction(&walls, edge.face, |wall| &wall.bristle),
            particle_fraction: fraction(&walls, edge.face, |wall| &wall.particle),
            fill_time_s: filled.times_s[i],
            flow_mm3_per_s: flows[i].abs(),
            height_mm: edge.passage.height_mm,
        };
        let faces = network.edges.iter().enumerate().map(face).collect();
        Self { faces, walls }
    }
}

fn wall_entries(cut: &Section, probes: &Probes) -> Vec<WallEntry> {
    let bristles = cut.straight(probes.bristle_mm);
    let particles = cut.rolling(probes.particle_mm);
    let spans = bristles.into_iter().zip(particles);
    let entry = |(wall, (bristle, particle)): (&super::section::Wall, _)| WallEntry {
        face: wall.face,
        length_mm: wall.length_mm(),
        bristle,
        particle,
    };
    cut.walls.iter().zip(spans).map(entry).collect()
}

/// The share of a face's length that lies in the spans of its walls.
fn fraction(walls: &[WallEntry], face: Face, spans: impl Fn(&WallEntry) -> &Vec<Span>) -> f64 {
    let mut sums = [0.0, 0.0];
    for wall in walls.iter().filter(|wall| wall.face == face) {
        let share: f64 = spans(wall).iter().map(|(from, to)| to - from).sum();
        sums[0] += share * wall.length_mm;
        sums[1] += wall.length_mm;
    }
    if sums[1] > 0.0 { sums[0] / sums[1] } else { 0.0 }
}
