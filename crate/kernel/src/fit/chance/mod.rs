//! Chains drawn by chance: how many meet what is demanded, and how the numbers are spread.
//!
//! A study's sets are numbered; a block of them is drawn and tallied by itself, and blocks are added
//! in the order of their numbers, so that the answer has the same bits however the work is shared.

mod moments;
mod packed;
mod said;
mod tally;

pub use moments::Moments;
pub use said::{Bin, Chance, DemandChance, Percentile, bars};
pub use tally::{DemandTally, Tally, Worst};

use super::asked::{Made, Wanted};
use super::many::{BLOCK, Many};
use super::stack::Stack;
use crate::chain::Sizes;

/// Sets to draw and what is demanded of them.
#[derive(Debug, Clone)]
pub struct Study {
    /// The chains.
    pub many: Many,
    /// What is demanded of each.
    pub wanted: Vec<Wanted>,
    /// How many sets there are.
    pub sets: u64,
    /// How each number depends on the dimensions; none where the middle has no such number.
    pub stacks: Vec<Option<Stack>>,
}

impl Study {
    /// The study of a drawing's chains.
    pub fn new(many: Many, wanted: Vec<Wanted>, sets: u64) -> Self {
        let stacks = wanted.iter().map(|wanted| many.stack(wanted.asked)).collect();
        Self { many, wanted, sets, stacks }
    }

    /// How many blocks its sets fill.
    pub fn blocks(&self) -> u64 {
        self.sets.div_ceil(BLOCK as u64)
    }

    /// An empty tally of this study.
    pub fn tally(&self) -> Tally {
        Tally::empty(self.stacks.iter().map(Option::as_ref))
    }

    /// Draws and tallies blocks, from one up to but without another.
    pub fn run(&self, from: u64, to: u64) -> Tally {
        let mut whole = self.tally();
        let mut sets = vec![Sizes::default(); BLOCK];
        let mut scratch_mm = [0.0; BLOCK];
        for block in from..to.min(self.blocks()) {
            let first = block * BLOCK as u64;
            let count = (self.sets - first).min(BLOCK as u64) as usize;
            self.many.block(block, &mut sets[..count], &mut scratch_mm);
            self.count(first, &sets[..count], &mut whole);
        }
        whole
    }

    /// Adds one block of sets to a tally.
    fn count(&self, first: u64, sets: &[Sizes], whole: &mut Tally) {
        let made: Vec<_> = sets.iter().map(Made::of).collect();
        let mut passes: Vec<_> = made.iter().map(|made| *made == Made::Whole).collect();
        whole.sets += sets.len() as u64;
        whole.apart += made.iter().filter(|made| **made == Made::Apart).count() as u64;
        whole.unmade += made.iter().filter(|made| **made == Made::Nothing).count() as u64;
        for (wanted, tally) in self.wanted.iter().zip(&mut whole.each) {
            tally.begin();
            for (i, sizes) in sets.iter().enumerate() {
                let value = made[i].has(wanted.asked).then(|| wanted.asked.of(sizes));
                let whole = made[i] == Made::Whole;
                passes[i] &= tally.add(first + i as u64, value, whole, wanted);
            }
        }
        whole.passes += passes.iter().filter(|passes| **passes).count() as u64;
    }

    /// What a whole tally says.
    pub fn chance(&self, tally: &Tally) -> Chance {
        Chance::of(self, tally)
    }

    /// Draws, tallies and says: all of it at once.
    pub fn whole(&self) -> Chance {
        self.chance(&self.run(0, self.blocks()))
    }
}

#[cfg(test)]
mod tests;
