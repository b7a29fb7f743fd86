//! Selective assembly: parts are measured, sorted into classes, and classes are paired so that a
//! thick part meets a wide one. Or all are sorted by size and paired rank by rank.
//!
//! Two dimensions that a number takes with opposite signs pair large with large, others large with
//! small. With m classes the pair's share of the number's spread shrinks to about 1/m, if both
//! dimensions are spread alike; where they are not, parts are left over.

mod classes;
mod pairing;

pub use pairing::Pairing;

use super::asked::{Made, Wanted};
use super::chance::{DemandTally, Moments};
use super::law::Spread;
use super::many::{BLOCK, Many};
use crate::chain::Dimension;
use classes::Classes;

/// Parts of two dimensions, and what sorting them does to one demand.
#[derive(Debug, Clone)]
pub struct Shop<'a> {
    /// The chains.
    pub many: &'a Many,
    /// What is demanded of each.
    pub wanted: Wanted,
    /// Which of the spreads are paired.
    pub paired: [usize; 2],
    /// How many parts of each.
    pub parts: u32,
}

/// What became of the parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Assembled {
    /// How many chains were put together.
    pub chains: u32,
    /// How many of them go together and meet the demand.
    pub passes: u32,
    /// The share of all parts that is left over.
    pub leftover_fraction: f64,
    /// How the demanded number is spread about `centre`, in its unit.
    pub moments: Moments,
    /// The whole tally, for a histogram.
    pub tally: DemandTally,
}

impl Assembled {
    /// The share of chains that meet the demand; zero of none.
    pub fn yield_fraction(&self) -> f64 {
        if self.chains > 0 { f64::from(self.passes) / f64::from(self.chains) } else { 0.0 }
    }
}

impl<'a> Shop<'a> {
    /// A shop for two dimensions of a drawing; none where one of them has no limits.
    pub fn new(
        many: &'a Many,
        wanted: Wanted,
        dimensions: [Dimension; 2],
        parts: u32,
    ) -> Option<Self> {
        let find = |named| many.spreads.iter().position(|spread| spread.dimension == named);
        let paired = [find(dimensions[0])?, find(dimensions[1])?];
        Some(Self { many, wanted, paired, parts })
    }

    /// The two spreads.
    pub fn spreads(&self) -> [&'a Spread; 2] {
        self.paired.map(|i| &self.many.spreads[i])
    }

    /// Whether large goes with large: the number takes the two with opposite signs.
    pub fn is_alike(&self) -> bool {
        let middle = self.many.middle();
        let [a, b] = self
            .spreads()
            .map(|spread| self.many.slope(self.wanted.asked, &middle, spread.dimension));
        a * b <= 0.0
    }

    /// The parts of both dimensions, mm: those of the sets 0, 1, 2, ...
    pub fn parts_mm(&self) -> [Vec<f64>; 2] {
        self.spreads().map(|spread| {
            let mut all = vec![0.0; self.parts as usize];
            for (block, column) in all.chunks_mut(BLOCK).enumerate() {
                self.many.column(spread, block as u64, column);
            }
            all
        })
    }

    /// The class of a first part of this size, mm, and the class that a second part is paired with.
    pub fn classes(&self, classes: u32) -> [impl Fn(f64) -> u32 + use<>; 2] {
        let [first, second] = self.spreads();
        [Classes::of(first, classes, true), Classes::of(second, classes, self.is_alike())]
            .map(|own| move |mm| own.class(mm) as u32)
    }

    /// Sorted into classes.
    pub fn sorted(&self, parts_mm: &[Vec<f64>; 2], classes: u32) -> Pairing {
        let [first, second] = parts_mm;
        Pairing::by_class([first, second], self.spreads(), classes, self.is_alike())
    }

    /// Sorted by rank.
    pub fn ranked(&self, [first, second]: &[Vec<f64>; 2]) -> Pairing {
        Pairing::by_rank([first, second], self.is_alike())
    }

    /// Puts chains together: each set with the second part that its own first part was paired with;
    /// as they come when there is no pairing.
    pub fn assemble(&self, second_mm: &[f64], pairing: Option<&Pairing>) -> Assembled {
        let stack = self.many.stack(self.wanted.asked);
        let mut tally = DemandTally::empty(stack.as_ref());
        let mut sets = vec![self.many.nominal; BLOCK];
        let mut chains = 0;
        let second = self.spreads()[1].dimension;
        let (every, mut columns) = (self.many.every(), self.many.columns());
        for first in (0..self.parts as usize).step_by(BLOCK) {
            let count = BLOCK.min(self.parts as usize - first);
            let sets = &mut sets[..count];
            self.many.draw((first / BLOCK) as u64, count, &mut columns);
            self.many.lay(&columns, &every, 0, sets);
            tally.begin();
            for (i, sizes) in sets.iter_mut().enumerate() {
                if let Some(pairing) = pairing {
                    let Some(partner) = pairing.partner(first + i) else { continue };
                    second.put(sizes, second_mm[partner]);
                    if self.many.follows() {
                        sizes.make_flush();
                    }
                }
                let made = Made::of(sizes);
                let asked = self.wanted.asked;
                if made.has(asked) {
                    let whole = made == Made::Whole;
                    tally.add((first + i) as u64, asked.of(sizes), whole, &self.wanted);
                }
                chains += 1;
            }
        }
        Assembled {
            chains,
            passes: tally.passes as u32,
            leftover_fraction: pairing.map_or(0.0, Pairing::leftover_fraction),
            moments: tally.moments(),
            tally,
        }
    }
}

#[cfg(test)]
mod tests;
