//! A rough face, answered as a particle grows and two faces come together.

use super::enter::{MetalView, metal};
use crate::answer::{Answer, rough};
use crate::contact::Pose;
use crate::report::SurfaceSection;
use crate::scenario::Scenario;
use crate::surface::{Facing, Profile, Roughness, Seat};
use serde::Serialize;

/// What a page shows of a rough face.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoughState {
    /// The numbers of the report.
    pub told: SurfaceSection,
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
    /// Between two heights, um.
    pub step_um: f64,
    /// A stretch of the profile, above its mean line, um.
    pub heights_um: Vec<f64>,
    /// The same stretch as the particle feels it.
    pub closed_um: Vec<f64>,
    /// The same stretch of the other face, downwards from its own mean line.
    pub depths_um: Vec<f64>,
    /// The level of the five highest peaks of the whole profile.
    pub peaks_um: f64,
    /// The point of the stretch at which a particle sits lowest.
    pub lowest: usize,
    /// Diameter of the particle.
    pub particle_um: f64,
    /// Film ratio and share of the length that overlaps there, film ratios growing.
    pub touching: Vec<(f64, f64)>,
    /// The film ratio that is asked for.
    pub film_ratio: f64,
    /// The distance of the mean lines at it, um.
    pub distance_um: f64,
    /// Separate spots that overlap at it.
    pub spots: usize,
    /// Half the pin's clearance, mm: the gap that the roughness lies in.
    pub radial_gap_mm: f64,
    /// The straight joint, cut, true to scale, mm.
    pub pieces: Vec<MetalView>,
    /// Where on it the profile lies with the point where a particle sits lowest, mm: on the far inner
    /// plate's outer face, left of the pin.
    pub spot_mm: [f64; 2],
    /// The stretch of the profile about that point, mm.
    pub line_mm: Vec<[f64; 2]>,
    /// The middle of a particle that sits there, above it, mm.
    pub seat_mm: f64,
    /// Its diameter, mm.
    pub particle_mm: f64,
    /// A pitch, mm.
    pub pitch_mm: f64,
}

/// Points that are shown: a fifth of the profile.
const SHOWN: usize = 801;
/// The film ratios of the curve: steps of a tenth up to five.
const RATIOS: u32 = 50;
const RATIO_STEP: f64 = 0.1;
const UM_PER_MM: f64 = 1000.0;

impl RoughState {
    /// The surface of a scenario, two faces of it brought to a film ratio; none where none is asked
    /// for, or the chain does not go together.
    pub fn of(scenario: &Scenario, film_ratio: f64) -> Option<Self> {
        let surface = scenario.surface.as_ref()?;
        let chain = scenario.chain.chain();
        if !chain.goes_together() {
            return None;
        }
        let (roughness, correlation_um) = (Roughness::Rz(surface.rz_um), surface.correlation_um);
        let [face, other] = [surface.seed, surface.other_seed()]
            .map(|seed| Profile::seeded(roughness, correlation_um, seed));
        let told = SurfaceSection::of(chain, surface);
        let seat = Seat::of(&face, surface.particle_um);
        let facing = Facing::of(&face, &other);
        let curve = |i: u32| {
            let ratio = RATIO_STEP * f64::from(i);
            (ratio, facing.touching_fraction(ratio))
        };
        let answers = rough(&told, surface.particle_um, facing.touching_fraction(film_ratio));
        let shown = |mut heights_um: Vec<f64>| {
            heights_um.truncate(SHOWN);
            heights_um
        };
        let closed_um = shown(seat.closed_um);
        let lower = |i: &usize, j: &usize| closed_um[*i].total_cmp(&closed_um[*j]);
        // In the middle third, so that there is some profile either way.
        let middle = closed_um.len() / 3..2 * closed_um.len() / 3;
        let lowest = middle.min_by(lower).unwrap_or(0);
        let heights_um = shown(face.heights_um);
        let along_um = |i: usize| face.step_um * (i as f64 - lowest as f64);
        let line = |(i, height_um): (usize, &f64)| [along_um(i) / UM_PER_MM, height_um / UM_PER_MM];
        let mouth_mm = 0.5 * chain.barrel_mm;
        let spot_x_mm = -0.5 * (mouth_mm + chain.inner_reach_mm());
        Some(Self {
            told,
            answers,
            step_um: face.step_um,
            lowest,
            line_mm: heights_um.iter().enumerate().map(line).collect(),
            heights_um,
            seat_mm: (closed_um.get(lowest).copied().unwrap_or(0.0) + 0.5 * surface.particle_um)
                / UM_PER_MM,
            particle_mm: surface.particle_um / UM_PER_MM,
            pieces: metal(chain, &Pose::straight(chain)),
            spot_mm: [spot_x_mm, 0.5 * chain.inner_link_width_mm()],
            pitch_mm: chain.pitch_mm,
            closed_um,
            depths_um: shown(other.heights_um),
            peaks_um: seat.peaks_um,
            particle_um: surface.particle_um,
            touching: (0..=RATIOS).map(curve).collect(),
            film_ratio,
            distance_um: facing.distance_um(film_ratio),
            spots: facing.spots(film_ratio),
            radial_gap_mm: 0.5 * chain.pin_clearance_mm(),
        })
    }
}
