//! The section `fit` of a report: many chains of one drawing.

use super::{named, plain};
use crate::fit::matching::Assembled;
use crate::fit::{
    DemandChance, Percentile, Stack, inflated, root_sum_square, shifted, uniform_inflated,
    worst_case,
};
use crate::lot::{Bill, Budget, Lot};
use crate::scenario::Scenario;
use serde::Serialize;

/// Will every one fit? Values of a demand have the unit of its quantity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FitSection {
    /// How many chains were drawn.
    pub sets: u64,
    /// The seed that they were drawn with.
    pub seed: u64,
    /// Share of them that goes together and meets every demand.
    pub yield_fraction: f64,
    /// Its standard error.
    pub yield_se: f64,
    /// Share whose parts do not go together.
    pub apart_fraction: f64,
    /// One for each demand, in the scenario's order.
    pub demands: Vec<DemandSection>,
    /// What sorting parts does; absent where the scenario does not ask.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub matching: Option<MatchingSection>,
    /// What tolerances cost; absent where no price is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<CostSection>,
}

/// One demand.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DemandSection {
    /// The key of the number that is demanded.
    pub quantity: &'static str,
    /// With every dimension at the limit that makes it least; absent where no such chain is there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_low: Option<f64>,
    /// With every dimension at the limit that makes it most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_high: Option<f64>,
    /// Tolerance in the worst case, to first order.
    pub worst_half: f64,
    /// Tolerance as a root sum square of tolerances.
    pub rss_half: f64,
    /// The same for uniform laws: sqrt 3 times as much.
    pub uniform_half: f64,
    /// The same times 1.5.
    pub inflated_half: f64,
    /// Means off the middle added up, the rest as a root sum square.
    pub shifted_half: f64,
    /// Root sum square of the laws' standard deviations.
    pub rss_sd: f64,
    /// Mean of the sets that were drawn, and its standard error.
    pub mean: f64,
    /// Standard error of the mean.
    pub mean_se: f64,
    /// Standard deviation of the sets that were drawn.
    pub sd: f64,
    /// Its standard error.
    pub sd_se: f64,
    /// Share of sets that go together and meet this demand.
    pub yield_fraction: f64,
    /// Its standard error.
    pub yield_se: f64,
    /// How much the number grows for each mm of a dimension.
    #[serde(serialize_with = "named")]
    pub sensitivity: Vec<(&'static str, f64)>,
    /// Each dimension's share of the variance.
    #[serde(serialize_with = "named")]
    pub share_fraction: Vec<(&'static str, f64)>,
    /// Values that a share of the sets does not exceed.
    pub percentiles: Vec<PercentileSection>,
}

/// A value that a share of the sets does not exceed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PercentileSection {
    /// The share.
    pub share_fraction: f64,
    /// The value.
    pub value: f64,
    /// Its standard error.
    pub se: f64,
}

/// What sorting parts does to one demand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MatchingSection {
    /// The key of the number that is demanded.
    pub quantity: &'static str,
    /// Into how many classes.
    pub classes: u32,
    /// Share that meets the demand with parts as they come.
    pub yield_before: f64,
    /// The same of the chains put together from sorted parts.
    pub yield_after: f64,
    /// Share of parts without a partner in their class.
    pub leftover_fraction: f64,
    /// Standard deviation with parts as they come.
    pub sd_before: f64,
    /// Standard deviation from sorted parts.
    pub sd_after: f64,
    /// Standard deviation from parts paired rank by rank.
    pub sd_ranked: f64,
}

/// What tolerances cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CostSection {
    /// The key of the number whose demand limits them.
    pub quantity: &'static str,
    /// Cost as they are.
    pub total: f64,
    /// Cost at half of each.
    pub halved_total: f64,
    /// The cheapest that meet the demand in the worst case.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst: Option<AllocationSection>,
    /// The cheapest that meet it as a root sum square.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rss: Option<AllocationSection>,
}

/// The cheapest tolerances.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AllocationSection {
    /// What they cost together.
    pub total: f64,
    /// The tolerance t of each dimension, mm.
    #[serde(serialize_with = "named")]
    pub allocation: Vec<(&'static str, f64)>,
}

impl FitSection {
    /// The section of a scenario; none without demands.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let lot = Lot::of(scenario)?;
        let chance = lot.study.whole();
        let stacks = lot.study.stacks.iter();
        let share = |count: u64| count as f64 / chance.sets as f64;
        Some(Self {
            sets: chance.sets,
            seed: lot.study.many.seed,
            yield_fraction: chance.yield_fraction.0,
            yield_se: chance.yield_fraction.1,
            apart_fraction: share(chance.apart + chance.unmade),
            demands: stacks
                .zip(&chance.each)
                .filter_map(|(stack, each)| Some(DemandSection::of(stack.as_ref()?, each)))
                .collect(),
            matching: MatchingSection::of(&lot),
            cost: lot.first_budget().and_then(|budget| CostSection::of(&lot, &budget)),
        })
    }
}

impl DemandSection {
    /// One demand.
    pub fn of(stack: &Stack, chance: &DemandChance) -> Self {
        let parts = stack.sum();
        let each = |of: fn(&crate::fit::StackPart) -> f64| {
            stack.parts.iter().map(|part| (part.dimension.key(), plain(of(part)))).collect()
        };
        Self {
            quantity: stack.asked.key(),
            worst_low: stack.worst_low.map(plain),
            worst_high: stack.worst_high.map(plain),
            worst_half: plain(worst_case(&parts)),
            rss_half: plain(root_sum_square(&parts)),
            uniform_half: plain(uniform_inflated(&parts)),
            inflated_half: plain(inflated(&parts)),
            shifted_half: plain(shifted(&parts)),
            rss_sd: plain(stack.rss_sd),
            mean: plain(chance.mean.0),
            mean_se: chance.mean.1,
            sd: chance.sd.0,
            sd_se: chance.sd.1,
            yield_fraction: chance.yield_fraction.0,
            yield_se: chance.yield_fraction.1,
            sensitivity: each(|part| part.slope),
            share_fraction: each(|part| part.share),
            percentiles: chance.percentiles.iter().map(PercentileSection::of).collect(),
        }
    }
}

impl PercentileSection {
    fn of(percentile: &Percentile) -> Self {
        Self { share_fraction: percentile.share, value: plain(percentile.value), se: percentile.se }
    }
}

impl MatchingSection {
    /// What the scenario's own number of classes does; none where it does not ask.
    pub fn of(lot: &Lot) -> Option<Self> {
        let (shop, classes) = (lot.shop()?, lot.matching?.classes);
        let parts = shop.parts_mm();
        let put = |pairing: Option<&_>| -> Assembled { shop.assemble(&parts[1], pairing) };
        let before = put(None);
        let after = put(Some(&shop.sorted(&parts, classes)));
        let ranked = put(Some(&shop.ranked(&parts)));
        Some(Self {
            quantity: shop.wanted.asked.key(),
            classes,
            yield_before: before.yield_fraction(),
            yield_after: after.yield_fraction(),
            leftover_fraction: after.leftover_fraction,
            sd_before: before.moments.sd(),
            sd_after: after.moments.sd(),
            sd_ranked: ranked.moments.sd(),
        })
    }
}

impl CostSection {
    /// What a budget's tolerances cost; none where it is more than any number.
    pub fn of(lot: &Lot, budget: &Budget) -> Option<Self> {
        let Bill { total, halved, worst, rss } = budget.bill()?;
        let allocation = |found: crate::fit::cost::Allocation| AllocationSection {
            total: found.total,
            allocation: budget
                .priced
                .iter()
                .map(|priced| priced.dimension.key())
                .zip(found.halves_mm)
                .collect(),
        };
        Some(Self {
            quantity: lot.wanted(budget.demand).asked.key(),
            total,
            halved_total: halved,
            worst: worst.map(allocation),
            rss: rss.map(allocation),
        })
    }
}
