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
use super::many::{BLOCK, Many, NEAR};
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
        let mut sets = [self.many.nominal; NEAR];
        for block in from..to.min(self.blocks()) {
            let first = block * BLOCK as u64;
            let count = (self.sets - first).min(BLOCK as u64) as usize;
            let columns = self.many.draw(block, count);
            let sure = self.many.all_go_together(&columns);
            whole.each.iter_mut().for_each(DemandTally::begin);
            for near in (0..count).step_by(NEAR) {
                let sets = &mut sets[..NEAR.min(count - near)];
                self.many.lay(&columns, near, sets);
                self.count(first + near as u64, sets, sure, &mut whole);
            }
        }
        whole
    }

    /// Adds some sets to a tally; `sure` when all of them are known to go together.
    fn count(&self, first: u64, sets: &[Sizes], sure: bool, whole: &mut Tally) {
        let mut made = [Made::Whole; NEAR];
        if !sure {
            made.iter_mut().zip(sets).for_each(|(made, sizes)| *made = Made::of(sizes));
        }
        let made = &made[..sets.len()];
        let of_kind = |kind| made.iter().filter(|made| **made == kind).count() as u64;
        whole.sets += sets.len() as u64;
        whole.apart += of_kind(Made::Apart);
        whole.unmade += of_kind(Made::Nothing);
        let mut passes = [true; NEAR];
        for (wanted, tally) in self.wanted.iter().zip(&mut whole.each) {
            for (i, sizes) in sets.iter().enumerate() {
                let value = made[i].has(wanted.asked).then(|| wanted.asked.of(sizes));
                let goes_together = made[i] == Made::Whole;
                passes[i] &= tally.add(first + i as u64, value, goes_together, wanted);
            }
        }
        let passing = |i: usize| passes[i] && made[i] == Made::Whole;
        whole.passes += (0..sets.len()).filter(|i| passing(*i)).count() as u64;
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
