//! A scenario's drive put together: wheels, pulls, friction and the taut strand between them, and
//! what a crooked line costs.
//!
//! The offset D of the wheels is taken up first by the teeth: an inner link slides on a tooth by
//! (b1 - tooth width)/2 each way, at both ends. The strand has to take the rest. Of the strand's
//! joints only the first, at the driver, and the last, at the driven wheel, fold under the tight
//! pull; what presses at joints in between does no work.

mod arrangement;
mod crooked;
mod curve;
mod gears;
mod slim;
mod stiffness;
mod study;
mod sweep;
mod view;
mod worn;

pub use arrangement::{Arrangement, PairView, Wanted};
pub use crooked::{Costs, Crooked, Missing};
pub use curve::{Curve, Curves, Marks, Sample, Variant};
pub use gears::{Gear, Gears, Pair};
pub use slim::Slim;
pub use stiffness::{default_stiffness_n_mm, link_stiffness_n_mm};
pub use study::Study;
pub use sweep::Sweep;
pub use view::{JointView, LineView, ThrustView, WheelView};
pub use worn::{Tired, Usage};

use crate::chain::Sizes;
use crate::friction::{FaceArms, JointLoad, Rubbing, Running};
use crate::scenario::{Drive, Pull, Scenario};
use crate::sprocket::{Layout, default_tooth_width_mm, tooth_float_mm};

/// A chain in its drive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainLine {
    /// The chain's sizes; its parts go together.
    pub sizes: Sizes,
    /// The wheels in their places.
    pub layout: Layout,
    /// The pulls and what rubs.
    pub running: Running,
    /// Power carried, W, and the driver's speed, where they are known.
    pub power: Option<Power>,
    /// Width of a tooth, mm.
    pub tooth_width_mm: f64,
    /// Stiffness K of a joint in yaw, N mm/rad.
    pub joint_n_mm_per_rad: f64,
}

/// Power and speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Power {
    /// Power carried, W.
    pub watts: f64,
    /// Speed of the driver.
    pub turns_per_minute: f64,
}

/// What an offset costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// How many times as much as in a straight line the driver's joint takes, and the driven
    /// wheel's; none where friction takes nothing of a straight joint.
    pub multiples: Option<[f64; 2]>,
    /// Loss at pins and faces, as a fraction of the power carried.
    pub loss_fraction: f64,
}

impl Cost {
    /// The greater of the two multiples.
    pub fn multiple(&self) -> Option<f64> {
        self.multiples.map(|[first, last]| first.max(last))
    }

    /// The cost of a drive that turns.
    ///
    /// # Errors
    /// Where friction takes all that is carried, or more: the loss of a drive that turns is less.
    pub fn turns(self) -> Result<Self, Missing> {
        if self.loss_fraction < 1.0 { Ok(self) } else { Err(Missing::Locked) }
    }
}

impl ChainLine {
    /// The drive of a scenario; none without one, or where the chain does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let chain = scenario.chain.chain();
        let drive = scenario.drive.as_ref().filter(|_| chain.goes_together())?;
        Some(Self::new(chain.sizes(), drive))
    }

    /// A drive with a chain that goes together.
    fn new(sizes: &Sizes, drive: &Drive) -> Self {
        let power = match drive.pull {
            Pull::Tight(_) => None,
            Pull::Power { watts, turns_per_minute } => Some(Power { watts, turns_per_minute }),
        };
        let default_mm = default_tooth_width_mm(sizes.pitch_mm, sizes.inner_width_mm);
        Self {
            sizes: *sizes,
            layout: drive.layout(sizes),
            running: drive.running(sizes),
            power,
            tooth_width_mm: drive.tooth_width_mm.unwrap_or(default_mm),
            joint_n_mm_per_rad: drive
                .joint_n_mm_per_rad
                .unwrap_or_else(|| default_stiffness_n_mm(sizes)),
        }
    }

    /// Joints n of the free span.
    pub fn joints(&self) -> usize {
        self.layout.joints() as usize
    }

    /// What the teeth take up of an offset, both ends together, mm.
    pub fn float_mm(&self) -> f64 {
        2.0 * tooth_float_mm(self.sizes.inner_width_mm, self.tooth_width_mm)
    }

    /// The offset up to which the links only slide in their side gaps, n a/2, mm.
    pub fn strand_free_mm(&self) -> f64 {
        0.5 * self.joints() as f64 * self.sizes.side_gap_mm().max(0.0)
    }

    /// The offset of the wheels up to which nothing turns, mm: the strand's and the teeth's.
    pub fn free_mm(&self) -> f64 {
        self.strand_free_mm() + self.float_mm()
    }

    /// What of an offset of the wheels the strand has to take, mm, with the offset's sign.
    pub fn strand_offset_mm(&self, offset_mm: f64) -> f64 {
        (offset_mm.abs() - self.float_mm()).max(0.0) * offset_mm.signum()
    }

    /// What joints that are loaded like this cost at the two wheels.
    pub fn cost(&self, ends: &[JointLoad; 2]) -> Cost {
        let [first, last] = [self.multiple(&ends[0]), self.multiple(&ends[1])];
        Cost {
            multiples: first.zip(last).map(|(first, last)| [first, last]),
            loss_fraction: self.running.offset_fraction(ends),
        }
    }

    /// What a straight line costs.
    pub fn straight(&self) -> Cost {
        self.cost(&[JointLoad::straight(self.running.tight_n); 2])
    }

    fn multiple(&self, load: &JointLoad) -> Option<f64> {
        self.running.rubbing.multiple(load, self.running.tight_n)
    }

    /// Lever arms of the plates' faces.
    pub fn face_arms(&self) -> FaceArms {
        FaceArms::of(&self.sizes)
    }

    /// Loss at the rollers, as a fraction of the power carried, when they turn and when they are
    /// stuck.
    pub fn roller_fractions(&self) -> [f64; 2] {
        [true, false].map(|rollers_turn| {
            let rubbing = Rubbing { rollers_turn, ..self.running.rubbing };
            Running { rubbing, ..self.running }.roller_fraction()
        })
    }
}

#[cfg(test)]
mod tests;
