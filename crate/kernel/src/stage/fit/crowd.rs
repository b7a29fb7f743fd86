//! Sets as they are drawn by chance, and parts as they are sorted.

use crate::answer::{Answer, fit};
use crate::fit::matching::Assembled;
use crate::fit::{Bin, Chance, DemandChance, Tally, bars};
use crate::lot::Lot;
use crate::scenario::Scenario;
use serde::Serialize;

/// Parts of each kind that a page draws one by one.
const DOTS: usize = 120;

/// Sets as far as they have been drawn.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChanceView {
    /// How many sets.
    pub sets: u64,
    /// How many do not go together.
    pub apart: u64,
    /// Share that meets every demand, and its standard error.
    pub yield_fraction: (f64, f64),
    /// One for each demand.
    pub demands: Vec<DemandChanceView>,
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
}

/// What chance makes of one demand; values in its unit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DemandChanceView {
    /// Share that meets it, and its standard error.
    pub yield_fraction: (f64, f64),
    /// Mean and its standard error.
    pub mean: (f64, f64),
    /// Standard deviation and its standard error.
    pub sd: (f64, f64),
    /// Share, value and standard error of some percentiles.
    pub percentiles: Vec<(f64, f64, f64)>,
    /// Lower end, upper end and count of each bar.
    pub histogram: Vec<(f64, f64, f64)>,
    /// Number, value and how far outside: sets that fail by most.
    pub worst: Vec<(u64, f64, f64)>,
}

/// Parts sorted and paired.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MatchView {
    /// The demand that it is about.
    pub demand: usize,
    /// The two dimensions.
    pub dimensions: [&'static str; 2],
    /// Whether large goes with large.
    pub alike: bool,
    /// Into how many classes.
    pub classes: u32,
    /// How many parts of the first dimension are in each class.
    pub firsts: Vec<u32>,
    /// How many of the second are in the class that each is paired with.
    pub seconds: Vec<u32>,
    /// As they come, by class, by rank.
    pub ways: Vec<WayView>,
    /// Some parts of each kind one by one: size, mm, the partner's place, or -1, and the class that
    /// it is paired in.
    pub dots: [Vec<(f64, i64, u32)>; 2],
    /// Limits of both dimensions, mm.
    pub ends_mm: [(f64, f64); 2],
}

/// One way of putting parts together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WayView {
    /// Share of the chains put together that meets the demand.
    pub yield_fraction: f64,
    /// Share of parts left over.
    pub leftover_fraction: f64,
    /// Standard deviation of the number.
    pub sd: f64,
    /// How many chains.
    pub chains: u32,
    /// Lower end, upper end and count of each bar.
    pub histogram: Vec<(f64, f64, f64)>,
}

fn triples(bins: &[Bin]) -> Vec<(f64, f64, f64)> {
    bins.iter().map(|bin| (bin.low, bin.high, bin.count)).collect()
}

impl ChanceView {
    fn of(chance: &Chance) -> Self {
        Self {
            sets: chance.sets,
            apart: chance.apart + chance.unmade,
            yield_fraction: chance.yield_fraction,
            demands: chance.each.iter().map(DemandChanceView::of).collect(),
            answers: fit::fit(chance),
        }
    }
}

impl DemandChanceView {
    pub(super) fn of(chance: &DemandChance) -> Self {
        Self {
            yield_fraction: chance.yield_fraction,
            mean: chance.mean,
            sd: chance.sd,
            percentiles: chance.percentiles.iter().map(|p| (p.share, p.value, p.se)).collect(),
            histogram: triples(&chance.histogram),
            worst: chance.worst.iter().map(|w| (w.set, w.value, w.outside)).collect(),
        }
    }
}

impl WayView {
    fn of(assembled: &Assembled) -> Self {
        Self {
            yield_fraction: assembled.yield_fraction(),
            leftover_fraction: assembled.leftover_fraction,
            sd: assembled.moments.sd(),
            chains: assembled.chains,
            histogram: triples(&bars(&assembled.tally)),
        }
    }
}

impl MatchView {
    /// A scenario's parts sorted into so many classes; none where it asks for no matching, or where
    /// no demand depends on both dimensions.
    pub fn of(scenario: &Scenario, classes: u32) -> Option<Self> {
        let lot = Lot::of(scenario)?;
        let (shop, demand) = (lot.shop()?, lot.paired_demand()?);
        let parts = shop.parts_mm();
        let (sorted, ranked) = (shop.sorted(&parts, classes), shop.ranked(&parts));
        let way = |pairing| WayView::of(&shop.assemble(&parts[1], pairing));
        let ways = vec![way(None), way(Some(&sorted)), way(Some(&ranked))];
        let [first_class, second_class] = shop.classes(classes);
        let place = |partner: Option<usize>| partner.map_or(-1, |partner| partner as i64);
        let first = |(mm, partner): (&f64, _)| (*mm, place(partner), first_class(*mm));
        let firsts = parts[0].iter().zip(sorted.partners()).take(DOTS).map(first).collect();
        let mut taken = vec![-1; parts[1].len()];
        for (i, partner) in sorted.partners().enumerate() {
            if let Some(partner) = partner {
                taken[partner] = i as i64;
            }
        }
        let second = |(mm, partner): (&f64, i64)| (*mm, partner, second_class(*mm));
        let seconds = parts[1].iter().zip(taken).take(DOTS).map(second).collect();
        Some(Self {
            demand,
            dimensions: shop.spreads().map(|spread| spread.dimension.key()),
            alike: shop.is_alike(),
            classes,
            firsts: sorted.firsts,
            seconds: sorted.seconds,
            ways,
            dots: [firsts, seconds],
            ends_mm: shop.spreads().map(|spread| (spread.low_mm, spread.high_mm)),
        })
    }
}

/// The sets of one scenario while they are drawn: tallies come in the order of their blocks.
#[derive(Default)]
pub struct FitDesk {
    drawn: Option<(Lot, Tally)>,
}

impl FitDesk {
    /// Begins anew: nothing drawn.
    pub fn begin(&mut self, scenario: &Scenario) {
        self.drawn = Lot::of(scenario).map(|lot| {
            let tally = lot.study.tally();
            (lot, tally)
        });
    }

    /// Adds packed tallies, and says what all that came so far say; none where nothing was begun or
    /// a row is none of this study's.
    pub fn add(&mut self, row: &[f64]) -> Option<ChanceView> {
        let (lot, tally) = self.drawn.as_mut()?;
        tally.join_packed(row).then(|| ChanceView::of(&lot.study.chance(tally)))
    }

    /// Draws and packs blocks of a scenario, from one up to but without another.
    pub fn run(scenario: &Scenario, from: u64, to: u64) -> Option<Vec<f64>> {
        Lot::of(scenario).map(|lot| lot.study.run(from, to).packed())
    }

    /// Draws so many sets at once.
    pub fn quick(scenario: &Scenario, sets: u64) -> Option<ChanceView> {
        let mut lot = Lot::of(scenario)?;
        lot.study.sets = sets;
        Some(ChanceView::of(&lot.study.whole()))
    }

    /// The differing sizes of one set by their keys, mm.
    pub fn set(scenario: &Scenario, number: u64) -> Option<Vec<(&'static str, f64)>> {
        let lot = Lot::of(scenario)?;
        let sizes = lot.study.many.set(number);
        let spreads = &lot.study.many.spreads;
        let keys = spreads.iter().map(|spread| spread.dimension);
        Some(keys.map(|dimension| (dimension.key(), dimension.of(&sizes))).collect())
    }
}
