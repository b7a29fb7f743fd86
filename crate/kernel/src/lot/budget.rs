//! The money of a lot: what its tolerances cost as they are, and the cheapest that meet a demand.

use super::Lot;
use crate::chain::Dimension;
use crate::fit::cost::{Allocation, Priced, Rule, cheapest, total};
use crate::fit::{StackPart, Wanted};

/// The tolerances that have a price, and the room that one demand leaves them.
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    /// Which demand, by its place in the scenario.
    pub demand: usize,
    /// What has a price and moves the demanded number.
    pub priced: Vec<Priced>,
    /// Their tolerances t as they are, mm.
    pub halves_mm: Vec<f64>,
    /// From the middle to the nearer end of the demand, in its unit.
    pub room: f64,
    /// What the unpriced tolerances use of it, in the worst case and as a root sum square.
    pub taken: [f64; 2],
}

/// A budget solved.
#[derive(Debug, Clone, PartialEq)]
pub struct Bill {
    /// What the tolerances cost as they are.
    pub total: f64,
    /// What they would cost at half of each.
    pub halved: f64,
    /// The cheapest that meet the demand in the worst case.
    pub worst: Option<Allocation>,
    /// The cheapest that meet it as a root sum square.
    pub rss: Option<Allocation>,
}

impl Lot {
    /// The budget of one demand; none where no priced dimension with limits moves it, or where
    /// tolerances are zero and cost without end.
    pub fn budget(&self, demand: usize) -> Option<Budget> {
        let stack = self.study.stacks.get(demand)?.as_ref()?;
        let price = |part: &StackPart| {
            let cost = self.cost.iter().find(|cost| cost.dimension == part.dimension)?;
            Some(Priced {
                dimension: part.dimension,
                slope: part.slope,
                fixed: cost.fixed,
                factor: cost.factor,
                exponent: cost.exponent,
            })
        };
        let moving: Vec<_> =
            stack.parts.iter().filter(|p| p.slope != 0.0 && p.half_mm > 0.0).collect();
        let priced: Vec<_> = moving.iter().filter_map(|part| price(part)).collect();
        let is_priced = |named: Dimension| priced.iter().any(|priced| priced.dimension == named);
        let (bought, given): (Vec<&StackPart>, Vec<_>) =
            moving.iter().partition(|part| is_priced(part.dimension));
        let taken = |rule: Rule| rule.used(given.iter().map(|part| (part.slope, part.half_mm)));
        (!priced.is_empty()).then(|| Budget {
            demand,
            halves_mm: bought.iter().map(|part| part.half_mm).collect(),
            room: self.study.wanted[demand].margin(stack.middle).max(0.0),
            taken: [taken(Rule::Worst), taken(Rule::RootSumSquare)],
            priced,
        })
    }

    /// The budget of the first demand that has one.
    pub fn first_budget(&self) -> Option<Budget> {
        (0..self.study.wanted.len()).find_map(|demand| self.budget(demand))
    }

    /// A demand by its place in the scenario.
    pub fn wanted(&self, demand: usize) -> &Wanted {
        &self.study.wanted[demand]
    }
}

impl Budget {
    /// What the tolerances cost as they are and at the cheapest; none where it is more than any
    /// number.
    pub fn bill(&self) -> Option<Bill> {
        let halved: Vec<_> = self.halves_mm.iter().map(|half_mm| 0.5 * half_mm).collect();
        let least =
            |rule: Rule, taken: f64| cheapest(rule, &self.priced, rule.left(self.room, taken));
        let [worst, rss] = self.taken;
        let bill = Bill {
            total: total(&self.priced, &self.halves_mm),
            halved: total(&self.priced, &halved),
            worst: least(Rule::Worst, worst),
            rss: least(Rule::RootSumSquare, rss),
        };
        (bill.total.is_finite() && bill.halved.is_finite()).then_some(bill)
    }

    /// What it would cost to hold these dimensions to a share of their tolerances, instead of sorting
    /// parts into as many classes.
    pub fn tightened(&self, dimensions: &[Dimension], share: f64) -> f64 {
        let each = self.priced.iter().zip(&self.halves_mm);
        let cost = |(priced, half_mm): (&Priced, &f64)| {
            let share = if dimensions.contains(&priced.dimension) { share } else { 1.0 };
            priced.cost(half_mm * share)
        };
        each.map(cost).sum()
    }
}
