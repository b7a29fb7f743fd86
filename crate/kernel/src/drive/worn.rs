//! A scenario's worn chain on its wheels.

use super::{ChainLine, Cost};
use crate::chain::{Sizes, WornBore};
use crate::contact::Play;
use crate::scenario::{Scenario, Wear};
use crate::sprocket::{Form, Wheel};
use crate::wear::{Climb, Grind, Length, Sliding, passing_wear_mm, sag_mm};

/// Teeth of the wheel where a scenario has no drive: chosen.
const LONE_TEETH: u32 = 17;
/// Pitches of the chain where a scenario has no drive: chosen.
const LONE_PITCHES: u32 = 100;
/// The form of teeth that is taken: the lowest that the standard allows, which gives up first.
pub(super) const TEETH: Form = Form::Least;

/// What wears a joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usage {
    /// Its sliding at the wheels, on average.
    pub sliding: Sliding,
    /// Passes of a joint over a wheel in an hour; none where the speed is not known.
    pub passes_per_hour: Option<f64>,
}

/// A worn chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tired {
    /// The chain as new; its parts go together.
    pub sizes: Sizes,
    /// How its joints have worn.
    pub worn: WornBore,
    /// Its length under load.
    pub length: Length,
    /// Its drive, with the chain as new; none where the scenario has none.
    pub line: Option<ChainLine>,
    /// What wears it.
    pub usage: Usage,
    /// Pitches of the whole chain.
    pub pitches: u32,
    /// Whether its wear has used up the bush, the collar or the pin.
    pub worn_through: bool,
}

impl Tired {
    /// The worn chain of a scenario; none without wear, or where the chain does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        Self::with(scenario, scenario.wear?)
    }

    /// The same, worn by 0.5 % where the scenario says nothing of wear: chosen.
    pub fn shown(scenario: &Scenario) -> Option<Self> {
        const SHOWN_FRACTION: f64 = 0.005;
        let joint_wear_mm = SHOWN_FRACTION * scenario.chain.chain().pitch_mm;
        Self::with(scenario, scenario.wear.unwrap_or(Wear::Measured { joint_wear_mm }))
    }

    fn with(scenario: &Scenario, wear: Wear) -> Option<Self> {
        let chain = scenario.chain.chain();
        let sizes = chain.goes_together().then(|| *chain.sizes())?;
        let line = ChainLine::of(scenario);
        let usage = Usage::of(scenario, &sizes, line.as_ref());
        let asked_mm = match wear {
            Wear::Measured { joint_wear_mm } => joint_wear_mm,
            Wear::Worked { hardness_mpa, wear_coefficient, engagements } => {
                let grind = Grind { hardness_mpa, wear_coefficient };
                grind.pass_mm(&usage.sliding) * engagements
            }
        };
        let deepest_mm = WornBore::deepest_mm(&sizes);
        let joint_wear_mm = asked_mm.min(deepest_mm);
        Some(Self {
            sizes,
            worn: WornBore::shared(joint_wear_mm),
            length: Length::of(&sizes, joint_wear_mm),
            line,
            usage,
            pitches: line.map_or(LONE_PITCHES, |line| line.layout.whole_pitches()),
            worn_through: asked_mm >= deepest_mm,
        })
    }

    /// The wheel with more teeth, on which a worn chain rises most.
    pub fn wheel(&self) -> Wheel {
        self.line.map_or(lone_wheel(&self.sizes), |line| {
            let (driver, driven) = (line.layout.driver, line.layout.driven);
            if driver.teeth < driven.teeth { driven } else { driver }
        })
    }

    /// How the rollers stand on that wheel.
    pub fn climb(&self) -> Climb {
        Climb::of(&self.wheel(), TEETH, self.length.joint_wear_mm)
    }

    /// Elongation at which that wheel no longer holds the chain.
    pub fn passing_fraction(&self) -> f64 {
        passing_wear_mm(&self.wheel(), TEETH) / self.sizes.pitch_mm
    }

    /// How far the chain can give, as new and worn.
    pub fn plays(&self) -> [Play; 2] {
        [WornBore::NONE, self.worn].map(|worn| Play::worn(&self.sizes, &worn))
    }

    /// What wear adds to the whole chain, mm.
    pub fn longer_mm(&self) -> f64 {
        self.length.longer_mm(f64::from(self.pitches))
    }

    /// How far the slack strand hangs if nothing takes up what wear adds, mm; none without a drive.
    pub fn sag_mm(&self) -> Option<f64> {
        self.line.map(|line| sag_mm(line.layout.tangent_length_mm(), self.longer_mm()))
    }

    /// What the drive's offset costs the chain as new and worn, its joints elastic; none without a
    /// drive or a pose.
    pub fn costs(&self) -> Option<[Cost; 2]> {
        let line = self.line?;
        let sizes = self.worn.plan_sizes(&self.sizes);
        Some([line.own_cost().ok()?, ChainLine { sizes, ..line }.own_cost().ok()?])
    }

    /// Passes over a wheel until a chain of such a wear is so much longer.
    pub fn passes(&self, grind: &Grind, elongation_fraction: f64) -> f64 {
        let pass_mm = grind.pass_mm(&self.usage.sliding);
        if pass_mm > 0.0 { elongation_fraction * self.sizes.pitch_mm / pass_mm } else { 0.0 }
    }
}

fn lone_wheel(sizes: &Sizes) -> Wheel {
    Wheel {
        teeth: LONE_TEETH,
        pitch_mm: sizes.pitch_mm,
        roller_diameter_mm: sizes.roller_diameter_mm,
    }
}

impl Usage {
    /// Of a scenario's drive: pulls of the two strands, the mean of the two wheels' angles. Without
    /// a drive: the load's tension running on, none running off, a wheel of 17 teeth.
    fn of(scenario: &Scenario, sizes: &Sizes, line: Option<&ChainLine>) -> Self {
        let load_n = scenario.load.map_or(0.0, |load| load.tension_n);
        let lone_rad = lone_wheel(sizes).articulation_rad();
        let (on_n, off_n, articulation_rad) = line.map_or((load_n, 0.0, lone_rad), |line| {
            let [one, other] =
                [line.layout.driver, line.layout.driven].map(|w| w.articulation_rad());
            (line.running.tight_n, line.running.slack_n, 0.5 * (one + other))
        });
        let sliding = Sliding {
            on_n,
            off_n,
            area_mm2: sizes.bearing_area_mm2(),
            pin_radius_mm: 0.5 * sizes.pin_diameter_mm,
            articulation_rad,
        };
        Self { sliding, passes_per_hour: line.and_then(passes_per_hour) }
    }
}

/// How often a joint passes a wheel in an hour: twice in each circuit of the chain.
fn passes_per_hour(line: &ChainLine) -> Option<f64> {
    const MINUTES_PER_HOUR: f64 = 60.0;
    const PASSES: f64 = 2.0;
    let pitches_per_minute = line.power?.turns_per_minute * line.layout.driver.z();
    let circuits_per_minute = pitches_per_minute / f64::from(line.layout.whole_pitches());
    Some(PASSES * circuits_per_minute * MINUTES_PER_HOUR)
}
