//! A scenario's chain, narrower: where its width goes and what holds it together.

use super::ChainLine;
use crate::chain::{Chain, Interference, Sizes};
use crate::scenario::{Scenario, Width};
use crate::width::{
    Count, Elastic, Material, Press, Rivet, STEEL, bearing_pressure_mpa, inner_plate_mpa, most_mm,
    narrowed, outer_plate_mpa,
};

/// Pitches of a chain where a scenario has no drive: chosen.
const LONE_PITCHES: u32 = 114;
/// The pull where a scenario states none, N: chosen.
const LONE_PULL_N: f64 = 300.0;

/// A narrower chain beside the one it was made from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slim {
    /// What is asked.
    pub width: Width,
    /// The chain as it is.
    pub wide: Sizes,
    /// The chain so much narrower.
    pub slim: Sizes,
    /// The most that it can be narrowed this way, mm.
    pub most_mm: f64,
    /// Pull, N: of the tight strand.
    pub pull_n: f64,
    /// Joints of the free strand; none without a drive.
    pub joints: Option<usize>,
    /// Pitches of the whole chain.
    pub pitches: u32,
}

impl Slim {
    /// The chain of a scenario, its width as asked or as it is; none where it does not go together
    /// as it is.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let chain = scenario.chain.chain();
        let wide = chain.goes_together().then(|| *chain.sizes())?;
        let width = scenario.width.unwrap_or_default();
        let line = ChainLine::of(scenario);
        let load_n = scenario.load.map_or(LONE_PULL_N, |load| load.tension_n);
        Some(Self {
            width,
            wide,
            slim: narrowed(&wide, width.narrower_mm, width.keep),
            most_mm: most_mm(&wide, width.keep),
            pull_n: line.map_or(load_n, |line| line.running.tight_n),
            joints: line.map(|line| line.joints()),
            pitches: line.map_or(LONE_PITCHES, |line| line.layout.whole_pitches()),
        })
    }

    /// What overlaps once it is narrower.
    pub fn interference(&self) -> Vec<Interference> {
        Chain::new(self.slim).map_or_else(|_| Vec::new(), |chain| chain.interference())
    }

    /// Stress of inner and outer plates, MPa, as it is and narrower.
    pub fn plates_mpa(&self) -> [[f64; 2]; 2] {
        let of = |sizes: &Sizes| {
            [inner_plate_mpa(sizes, self.pull_n), outer_plate_mpa(sizes, self.pull_n)]
        };
        [of(&self.wide), of(&self.slim)]
    }

    /// Pressure between pin and bore, MPa, as it is and narrower.
    pub fn pressures_mpa(&self) -> [f64; 2] {
        [&self.wide, &self.slim].map(|sizes| bearing_pressure_mpa(sizes, self.pull_n))
    }

    /// How far links slide sideways before any has to turn, mm, as it is and narrower: n a/2 over
    /// the free strand, a/2 without one.
    pub fn free_offsets_mm(&self) -> [f64; 2] {
        let joints = self.joints.unwrap_or(1) as f64;
        [&self.wide, &self.slim].map(|sizes| 0.5 * joints * sizes.side_gap_mm().max(0.0))
    }

    /// The pin in the eye of an outer plate of a material, the pin of steel.
    pub fn press(&self, plate: Elastic) -> Press {
        Press {
            pin_mm: self.slim.pin_diameter_mm,
            hole_mm: self.slim.pin_bore_mm,
            eye_mm: self.slim.outer_plate_height_mm,
            interference_mm: self.width.press_mm,
            pin: STEEL.elastic(),
            plate,
        }
    }

    /// The riveted pin; its swelling falls over the pin's radius unless stated otherwise.
    pub fn rivet(&self) -> Rivet {
        let decay_mm = self.width.decay_mm.unwrap_or(0.5 * self.slim.pin_diameter_mm);
        Rivet { swelling_mm: self.width.swelling_mm, decay_mm }
    }

    /// Parts and fits of the whole chain.
    pub fn count(&self) -> Count {
        Count::of(self.slim.construction, self.pitches)
    }

    /// The plates of another material: the share of its yield that the pull's stress takes, and that
    /// the press fit takes round the pin's hole.
    pub fn shares(&self, material: &Material) -> [f64; 2] {
        let [_, [inner, outer]] = self.plates_mpa();
        let hoop = self.press(material.elastic()).hoop_mpa();
        [inner.max(outer), hoop].map(|mpa| mpa / material.yield_mpa)
    }
}
