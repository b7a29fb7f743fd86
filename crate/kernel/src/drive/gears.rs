//! "My gears": one or more wheels at the driver, several at the driven shaft, each so many steps
//! aside, and what each pair costs.

use super::{ChainLine, Cost, Missing};
use crate::friction::{JointLoad, Turning};
use crate::sprocket::{Layout, Wheel};
use serde::Serialize;

/// One wheel of a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gear {
    /// Its teeth.
    pub teeth: u32,
    /// Its middle plane aside from the middle of the frame, mm.
    pub aside_mm: f64,
}

/// The wheels of a rider.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Gears {
    /// At the driver.
    pub front: Vec<Gear>,
    /// At the driven shaft.
    pub back: Vec<Gear>,
    /// Teeth of the small guide wheels in the slack strand.
    pub guides: Vec<u32>,
}

/// What a pair of wheels costs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Pair {
    /// Teeth of the driver.
    pub front_teeth: u32,
    /// Teeth of the driven wheel.
    pub back_teeth: u32,
    /// Turns of the driven wheel for one of the driver.
    pub ratio: f64,
    /// The driven wheel aside from the driver.
    pub offset_mm: f64,
    /// The offset up to which this pair runs free.
    pub free_mm: f64,
    /// Pull of the tight strand.
    pub tight_n: f64,
    /// Times as much as straight, at the joint of the two that costs more; none without friction or
    /// where the solve does not settle.
    pub friction_multiple: Option<f64>,
    /// Loss at pins and faces in a straight line, of the power carried.
    pub straight_fraction: f64,
    /// The same with this offset.
    pub loss_fraction: Option<f64>,
    /// Why there is none, as [`Missing::key`] tells it.
    pub missing: Option<&'static str>,
    /// What the guide wheels' joints take besides.
    pub guide_fraction: f64,
}

impl Gears {
    /// A row of wheels one step apart, mm, its middle aside by so much, mm; the first stands lowest.
    pub fn row(teeth: &[u32], step_mm: f64, middle_mm: f64) -> Vec<Gear> {
        let middle = 0.5 * (teeth.len() as f64 - 1.0);
        let gear = |(i, &teeth): (usize, &u32)| Gear {
            teeth,
            aside_mm: middle_mm + (i as f64 - middle) * step_mm,
        };
        teeth.iter().enumerate().map(gear).collect()
    }

    /// The smallest and the largest offset of all pairs, mm; none without wheels.
    pub fn range_mm(&self) -> Option<[f64; 2]> {
        let offsets = self.pairs().map(|(front, back)| back.aside_mm - front.aside_mm);
        offsets.fold(None, |range: Option<[f64; 2]>, mm| match range {
            Some([low, high]) => Some([low.min(mm), high.max(mm)]),
            None => Some([mm, mm]),
        })
    }

    /// Every pair, by front wheel and then by back wheel.
    fn pairs(&self) -> impl Iterator<Item = (Gear, Gear)> + '_ {
        self.front.iter().flat_map(|front| self.back.iter().map(move |back| (*front, *back)))
    }

    /// What each pair costs in a drive whose own wheels they replace: same chain, centre distance,
    /// power or tight pull, slack pull and friction. Pairs whose wheels do not fit between the
    /// shafts are left out.
    pub fn costs(&self, line: &ChainLine) -> Vec<Pair> {
        self.pair_costs(line).into_iter().flatten().collect()
    }

    /// The same pair by pair, none where the wheels do not fit. Pairs with as many joints, the same
    /// pull and the same offset either way share one strand.
    pub(super) fn pair_costs(&self, line: &ChainLine) -> Vec<Option<Pair>> {
        let mut strands = Strands::default();
        let cost = |(front, back): (Gear, Gear)| {
            let line = with(line, front, back)?;
            Some(pair(&line, strands.cost(&line), &self.guides))
        };
        self.pairs().map(cost).collect()
    }
}

/// What a strand is solved for: its joints, its pull, what it has to take of the offset.
type Key = (usize, [u64; 2]);

/// The loads of strands that were solved.
#[derive(Default)]
struct Strands(Vec<(Key, Result<[JointLoad; 2], Missing>)>);

impl Strands {
    /// What a drive's own offset costs.
    fn cost(&mut self, line: &ChainLine) -> Result<Cost, Missing> {
        let offset_mm = line.strand_offset_mm(line.layout.offset_mm).abs();
        let key = (line.joints(), [line.running.tight_n, offset_mm].map(f64::to_bits));
        let known = self.0.iter().find(|(of, _)| *of == key).map(|(_, loads)| *loads);
        let loads = known.unwrap_or_else(|| {
            let loads = line.own_loads();
            self.0.push((key, loads));
            loads
        });
        line.cost(&loads?).turns()
    }
}

/// The same drive with other wheels; none where they do not fit.
fn with(line: &ChainLine, front: Gear, back: Gear) -> Option<ChainLine> {
    /// Joints that a strand needs.
    const LEAST_JOINTS: u32 = 2;
    let driver = Wheel { teeth: front.teeth, ..line.layout.driver };
    let driven = Wheel { teeth: back.teeth, ..line.layout.driven };
    let offset_mm = back.aside_mm - front.aside_mm;
    let layout = Layout { driver, driven, offset_mm, ..line.layout };
    let radii_mm = driver.pitch_radius_mm() + driven.pitch_radius_mm();
    let fits = layout.centre_distance_mm > radii_mm && layout.joints() >= LEAST_JOINTS;
    let mut running = line.running;
    (running.driver, running.driven) = (driver, driven);
    if let Some(power) = line.power {
        let turning = Turning { wheel: driver, turns_per_minute: power.turns_per_minute };
        running.tight_n = running.slack_n + turning.net_n(power.watts);
    }
    fits.then_some(ChainLine { layout, running, ..*line })
}

/// The cost of a drive's own offset.
fn pair(line: &ChainLine, cost: Result<Cost, Missing>, guides: &[u32]) -> Pair {
    let (driver, driven) = (line.layout.driver, line.layout.driven);
    Pair {
        front_teeth: driver.teeth,
        back_teeth: driven.teeth,
        ratio: driver.z() / driven.z(),
        offset_mm: line.layout.offset_mm,
        free_mm: line.free_mm(),
        tight_n: line.running.tight_n,
        friction_multiple: cost.ok().and_then(|cost| cost.multiple()),
        straight_fraction: line.running.straight_fraction(),
        loss_fraction: cost.ok().map(|cost| cost.loss_fraction),
        missing: cost.err().map(Missing::key),
        guide_fraction: line.running.guide_fraction(guides),
    }
}
