//! Clearance and tolerance moved each by itself, to see that they are two things; and tolerances that
//! are taken over from the cheapest.

use super::crowd::DemandChanceView;
use super::{BLOCK, DemandView};
use crate::chain::{Dimension, Pair};
use crate::fit::{Asked, Many, Study};
use crate::lot::Lot;
use crate::quantity::{Quantity, loosening};
use crate::scenario::Scenario;
use serde::Serialize;

/// Pins are made so much longer, mm, that wider plates still find their heads beyond them: chosen.
const LONGER_MM: f64 = 1.0;

/// One demand on chains whose gap is bigger and whose limits stray further.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TriedView {
    /// The demand with what the limits do to it; its middle is none where no such chain goes together.
    pub demand: DemandView,
    /// What chance makes of it.
    pub chance: DemandChanceView,
    /// Share that fails it.
    pub fails_fraction: f64,
}

/// The pair of parts whose gap is asked for.
fn pair_of(asked: Asked) -> Option<Pair> {
    Pair::ALL.iter().copied().find(|pair| asked == Asked::Catalogue(Quantity::of_pair(*pair)))
}

impl Many {
    /// The same with one gap bigger, mm, by the size that moves it and no other.
    fn opened(&mut self, pair: Pair, bigger_mm: f64) {
        let mut moved = vec![(pair.moves(), loosening(pair.moves()) * bigger_mm)];
        if pair == Pair::SideGap {
            moved.push((Dimension::PinLength, LONGER_MM));
        }
        for (dimension, by_mm) in moved {
            let mm = dimension.of(&self.nominal) + by_mm;
            dimension.put(&mut self.nominal, mm);
            for spread in self.spreads.iter_mut().filter(|spread| spread.dimension == dimension) {
                spread.low_mm += by_mm;
                spread.high_mm += by_mm;
            }
        }
    }

    /// The same with every limit so many times as far from the size of the drawing.
    fn strayed(&mut self, times: f64) {
        for spread in &mut self.spreads {
            let nominal_mm = spread.dimension.of(&self.nominal);
            spread.low_mm = nominal_mm + times * (spread.low_mm - nominal_mm);
            spread.high_mm = nominal_mm + times * (spread.high_mm - nominal_mm);
        }
    }
}

impl TriedView {
    /// The first demand on a gap that one size moves, with that gap bigger, mm, and limits so many
    /// times as far; none where there is no such demand.
    pub fn of(scenario: &Scenario, bigger_mm: f64, times: f64) -> Option<Self> {
        /// Sets that are drawn: a few blocks.
        const SETS: u64 = 10 * BLOCK as u64;
        let mut study = Lot::of(scenario)?.study;
        let gaps = |wanted: &&crate::fit::Wanted| pair_of(wanted.asked).is_some();
        let wanted = *study.wanted.iter().find(gaps)?;
        study.many.opened(pair_of(wanted.asked)?, bigger_mm);
        study.many.strayed(times.max(0.0));
        let study = Study::new(study.many, vec![wanted], SETS);
        let chance = study.whole();
        let [each] = chance.each.as_slice() else { return None };
        Some(Self {
            demand: DemandView::of(&wanted, study.stacks[0].as_ref()),
            chance: DemandChanceView::of(each),
            fails_fraction: 1.0 - each.yield_fraction.0,
        })
    }
}

/// How far below and above its size, mm, each dimension with a price may stray at the cheapest, half
/// way between where it was: in the worst case, or as a root sum square. None where there is no room.
pub fn bought(scenario: &Scenario, worst: bool) -> Option<Vec<(&'static str, [f64; 2])>> {
    let lot = Lot::of(scenario)?;
    let budget = lot.first_budget()?;
    let bill = budget.bill()?;
    let least = if worst { bill.worst } else { bill.rss }?;
    let many = &lot.study.many;
    let ends = |(priced, half_mm): (&crate::fit::cost::Priced, f64)| {
        let spread = many.spreads.iter().find(|spread| spread.dimension == priced.dimension)?;
        let off_mm = spread.middle_mm() - priced.dimension.of(&many.nominal);
        Some((priced.dimension.key(), [half_mm - off_mm, half_mm + off_mm]))
    };
    budget.priced.iter().zip(least.halves_mm).map(ends).collect()
}
