//! A scenario's lot: the many chains that its limits allow, what is demanded of them, how their parts
//! are paired and what their tolerances cost.

mod budget;

pub use budget::{Bill, Budget};

use crate::chain::Dimension;
use crate::drive::ChainLine;
use crate::fit::matching::Shop;
use crate::fit::{Asked, Law, Many, Spread, Study, Wanted};
use crate::quantity::Quantity;
use crate::scenario::{Cost, Demand, Limit, Matching, Scenario};

/// Seed and sets when nobody states them: those of a scenario's `sampling`.
const SEED: u64 = 1;
const SETS: u32 = 100_000;
/// Parts that are sorted at most: so many of two dimensions fit into a small memory.
const MOST_PARTS: u32 = 1_000_000;

/// Many chains of one drawing, and what is asked about them.
#[derive(Debug, Clone)]
pub struct Lot {
    /// Sets to draw and what is demanded of them.
    pub study: Study,
    /// Which parts are paired.
    pub matching: Option<Matching>,
    /// What tolerances cost.
    pub cost: Vec<Cost>,
}

impl Lot {
    /// The lot of a scenario; none without demands, or where the middle chain does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let chain = scenario.chain.chain();
        if scenario.demands.is_empty() || !chain.goes_together() {
            return None;
        }
        let joints = ChainLine::of(scenario).map_or(0, |line| line.joints() as u32);
        let spreads = scenario.limits.iter().map(|limit| spread(limit, chain.sizes())).collect();
        let wanted = scenario.demands.iter().filter_map(|demand| wanted(demand, joints)).collect();
        let (seed, sets) = scenario.sampling.map_or((SEED, SETS), |s| (s.seed, s.sets));
        let many = Many::new(*chain.sizes(), spreads, seed);
        let study = Study::new(many, wanted, u64::from(sets));
        Some(Self { study, matching: scenario.matching, cost: scenario.cost.clone() })
    }

    /// The first demand that all of these dimensions move.
    fn moved_by(&self, dimensions: &[Dimension]) -> Option<usize> {
        let moves = |demand: usize, named: &Dimension| {
            let stack = self.study.stacks[demand].as_ref();
            let mut parts = stack.into_iter().flat_map(|stack| &stack.parts);
            parts.any(|part| part.dimension == *named && part.slope != 0.0)
        };
        (0..self.study.wanted.len()).find(|demand| dimensions.iter().all(|d| moves(*demand, d)))
    }

    /// The demand that pairing is about, by its place in the scenario: the first that both
    /// dimensions move.
    pub fn paired_demand(&self) -> Option<usize> {
        let matching = self.matching?;
        self.moved_by(&[matching.dimension_a, matching.dimension_b])
    }

    /// The shop that pairs the scenario's parts, as many as there are sets; none without matching,
    /// without limits on both dimensions, or where no demand depends on both.
    pub fn shop(&self) -> Option<Shop<'_>> {
        let matching = self.matching?;
        let wanted = self.study.wanted[self.paired_demand()?];
        let parts = self.study.sets.min(u64::from(MOST_PARTS)) as u32;
        let dimensions = [matching.dimension_a, matching.dimension_b];
        Shop::new(&self.study.many, wanted, dimensions, parts)
    }
}

/// One of a scenario's limits.
fn spread(limit: &Limit, sizes: &crate::chain::Sizes) -> Spread {
    let (low_mm, high_mm) = limit.ends_mm(sizes);
    Spread {
        dimension: limit.dimension,
        low_mm,
        high_mm,
        law: Law::of_key(limit.law).unwrap_or(Law::Normal),
        sigmas: limit.sigmas,
        mean_shift: limit.mean_shift,
    }
}

/// One of a scenario's demands.
fn wanted(demand: &Demand, joints: u32) -> Option<Wanted> {
    let asked = match Quantity::of_key(demand.quantity) {
        Some(quantity) => Asked::Catalogue(quantity),
        None => [Asked::FreeOffset { joints }, Asked::PitchUnderLoad]
            .into_iter()
            .find(|asked| asked.key() == demand.quantity)?,
    };
    Some(Wanted { asked, at_least: demand.at_least, at_most: demand.at_most })
}
