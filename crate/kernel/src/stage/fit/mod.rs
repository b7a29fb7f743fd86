//! Many chains of one drawing, as a page shows them: what tolerances add up to, and money; sets as they
//! are drawn and parts as they are sorted in [`crowd`].

mod crowd;
mod tried;

pub use crowd::{ChanceView, FitDesk, MatchView};
pub use tried::{TriedView, bought};

use crate::answer::{Answer, fit};
use crate::chain::Dimension;
use crate::fit::cost::Allocation;
use crate::fit::{
    BLOCK, Stack, StackPart, Wanted, inflated, root_sum_square, shifted, uniform_inflated,
    worst_case,
};
use crate::lot::{Budget, Lot};
use crate::scenario::{Limit, Scenario};
use serde::Serialize;

/// What a page shows before anything is drawn by chance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FitState {
    /// The limits, one for each dimension that has some.
    pub limits: Vec<LimitView>,
    /// What is demanded.
    pub demands: Vec<DemandView>,
    /// Sets in a block, which are drawn together.
    pub block_sets: usize,
    /// Sets to draw.
    pub sets: u64,
    /// Tolerances and their price; none where no price is given.
    pub money: Option<MoneyView>,
    /// The demand that matching is about.
    pub paired: Option<usize>,
    /// Classes of the scenario's matching.
    pub classes: Option<u32>,
}

/// The limits of one dimension, mm.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitView {
    /// Its key.
    pub dimension: &'static str,
    /// The size of the drawing.
    pub nominal_mm: f64,
    /// How far below it.
    pub minus_mm: f64,
    /// How far above it.
    pub plus_mm: f64,
    /// Half of what lies between the limits.
    pub half_mm: f64,
    /// The word of its law.
    pub law: &'static str,
}

/// One demand; values in the unit of its quantity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DemandView {
    /// The key of the number.
    pub quantity: &'static str,
    /// The smallest allowed.
    pub at_least: Option<f64>,
    /// The largest allowed.
    pub at_most: Option<f64>,
    /// With every dimension in the middle of its limits; none where no such chain is there.
    pub middle: Option<f64>,
    /// With every dimension at the limit that makes it least.
    pub worst_low: Option<f64>,
    /// With every dimension at the limit that makes it most.
    pub worst_high: Option<f64>,
    /// Tolerances by rule: worst case, root sum square, inflated, for uniform laws, with means off
    /// the middle.
    pub halves: Vec<(&'static str, f64)>,
    /// Standard deviation as a root sum square.
    pub rss_sd: f64,
    /// What each dimension does to it.
    pub parts: Vec<PartView>,
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
}

/// What one dimension does to a number.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PartView {
    /// Its key.
    pub dimension: &'static str,
    /// How much the number grows for each mm.
    pub slope: f64,
    /// Its tolerance, mm.
    pub half_mm: f64,
    /// What it eats of the number either way.
    pub reach: f64,
    /// Its share of the variance.
    pub share: f64,
}

/// What tolerances cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MoneyView {
    /// The demand that limits them.
    pub demand: usize,
    /// Cost as they are.
    pub total: f64,
    /// Cost at half of each.
    pub halved: f64,
    /// Cost with the two paired dimensions held to the share that classes would give.
    pub tightened: Option<f64>,
    /// One for each dimension with a price.
    pub parts: Vec<PriceView>,
    /// The cheapest total in the worst case, and as a root sum square.
    pub least: [Option<f64>; 2],
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
}

/// One dimension's price.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PriceView {
    /// Its key.
    pub dimension: &'static str,
    /// Its tolerance as it is, at the cheapest in the worst case, and as a root sum square, mm.
    pub half_mm: [Option<f64>; 3],
    /// What they cost.
    pub cost: [Option<f64>; 3],
}

impl FitState {
    /// What a scenario's limits and demands add up to; none where there are no demands, or where the
    /// middle chain does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let lot = Lot::of(scenario)?;
        let sizes = *scenario.chain.chain().sizes();
        let study = &lot.study;
        let demands = study.wanted.iter().zip(&study.stacks);
        Some(Self {
            limits: scenario.limits.iter().map(|limit| LimitView::of(limit, &sizes)).collect(),
            demands: demands.map(|(w, stack)| DemandView::of(w, stack.as_ref())).collect(),
            block_sets: BLOCK,
            sets: study.sets,
            money: lot.first_budget().and_then(|budget| MoneyView::of(&lot, &budget)),
            paired: lot.paired_demand(),
            classes: lot.matching.map(|matching| matching.classes),
        })
    }
}

impl LimitView {
    fn of(limit: &Limit, sizes: &crate::chain::Sizes) -> Self {
        let (low_mm, high_mm) = limit.ends_mm(sizes);
        let nominal_mm = limit.dimension.of(sizes);
        let (minus_mm, plus_mm) = limit.band.deviations_mm(nominal_mm);
        Self {
            dimension: limit.dimension.key(),
            nominal_mm,
            minus_mm,
            plus_mm,
            half_mm: 0.5 * (high_mm - low_mm),
            law: limit.law,
        }
    }
}

impl DemandView {
    fn of(wanted: &Wanted, stack: Option<&Stack>) -> Self {
        let sum = stack.map(Stack::sum).unwrap_or_default();
        let ends = stack.and_then(|stack| Some([stack.worst_low?, stack.worst_high?]));
        let margin = ends.map(|[low, high]| wanted.margin(low).min(wanted.margin(high)));
        Self {
            quantity: wanted.asked.key(),
            at_least: wanted.at_least,
            at_most: wanted.at_most,
            middle: stack.map(|stack| stack.middle),
            worst_low: stack.and_then(|stack| stack.worst_low),
            worst_high: stack.and_then(|stack| stack.worst_high),
            halves: vec![
                ("worst", worst_case(&sum)),
                ("rss", root_sum_square(&sum)),
                ("inflated", inflated(&sum)),
                ("uniform", uniform_inflated(&sum)),
                ("shifted", shifted(&sum)),
            ],
            rss_sd: stack.map_or(0.0, |stack| stack.rss_sd),
            parts: stack.iter().flat_map(|stack| &stack.parts).map(PartView::of).collect(),
            answers: stack.map(|stack| fit::worst(stack, margin)).into_iter().collect(),
        }
    }
}

impl PartView {
    fn of(part: &StackPart) -> Self {
        Self {
            dimension: part.dimension.key(),
            slope: part.slope,
            half_mm: part.half_mm,
            reach: part.reach,
            share: part.share,
        }
    }
}

impl MoneyView {
    fn of(lot: &Lot, budget: &Budget) -> Option<Self> {
        let bill = budget.bill()?;
        let at = |found: &Option<Allocation>, i: usize| found.as_ref().map(|a| a.halves_mm[i]);
        let part = |i: usize| {
            let priced = &budget.priced[i];
            let half_mm = [Some(budget.halves_mm[i]), at(&bill.worst, i), at(&bill.rss, i)];
            let cost = half_mm.map(|half_mm| half_mm.map(|half_mm| priced.cost(half_mm)));
            PriceView { dimension: priced.dimension.key(), half_mm, cost }
        };
        let pair = lot.matching.map(|m| ([m.dimension_a, m.dimension_b], m.classes));
        let tightened = |(pair, classes): ([Dimension; 2], u32)| {
            budget.tightened(&pair, 1.0 / f64::from(classes))
        };
        Some(Self {
            demand: budget.demand,
            total: bill.total,
            halved: bill.halved,
            tightened: pair.map(tightened).filter(|cost| cost.is_finite()),
            parts: (0..budget.priced.len()).map(part).collect(),
            least: [&bill.worst, &bill.rss].map(|found| found.as_ref().map(|a| a.total)),
            answers: fit::cost(&bill),
        })
    }
}
