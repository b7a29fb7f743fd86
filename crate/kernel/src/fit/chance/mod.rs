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
        let (all, asked) = (self.many.every(), self.asked());
        let (mut columns, usual) = (self.many.columns(), self.many.usual_go_together());
        let mut sets = [self.many.nominal; NEAR];
        for block in from..to.min(self.blocks()) {
            let first = block * BLOCK as u64;
            let count = (self.sets - first).min(BLOCK as u64) as usize;
            self.many.draw(block, count, &mut columns);
            let sure = self.many.all_go_together(&columns, usual);
            whole.each.iter_mut().for_each(DemandTally::begin);
            for near in (0..count).step_by(NEAR) {
                let sets = &mut sets[..NEAR.min(count - near)];
                self.many.lay(&columns, if sure { &asked } else { &all }, near, sets);
                let first = first + near as u64;
                if sure {
                    self.count_whole(first, sets, &mut whole);
                } else {
                    self.count(first, sets, &mut whole);
                }
            }
        }
        whole
    }

    /// The spreads that a number which is asked for depends on: chains that are known to go together
    /// need no others.
    fn asked(&self) -> Vec<usize> {
        let moves = |i: usize, stack: &Option<Stack>| {
            stack.as_ref().is_none_or(|stack| stack.parts[i].way(stack.asked) != 0.0)
        };
        self.many.every().into_iter().filter(|i| self.stacks.iter().any(|s| moves(*i, s))).collect()
    }

    /// Adds sets that are known to go together.
    fn count_whole(&self, first: u64, sets: &[Sizes], whole: &mut Tally) {
        let mut all = [true; NEAR];
        let mut values = [0.0; NEAR];
        let (all, values) = (&mut all[..sets.len()], &mut values[..sets.len()]);
        for (wanted, tally) in self.wanted.iter().zip(&mut whole.each) {
            let mut passes = [true; NEAR];
            wanted.asked.of_each(sets, values);
            tally.add_each(first, values, wanted, &mut passes[..sets.len()]);
            all.iter_mut().zip(passes).for_each(|(all, passes)| *all &= passes);
        }
        whole.sets += sets.len() as u64;
        whole.passes += all.iter().filter(|all| **all).count() as u64;
    }

    /// Adds sets of which some may not go together.
    fn count(&self, first: u64, sets: &[Sizes], whole: &mut Tally) {
        for (set, sizes) in (first..).zip(sets) {
            let made = Made::of(sizes);
            let mut passes = made == Made::Whole;
            for (wanted, tally) in self.wanted.iter().zip(&mut whole.each) {
                passes &= made.has(wanted.asked)
                    && tally.add(set, wanted.asked.of(sizes), made == Made::Whole, wanted);
            }
            whole.sets += 1;
            whole.apart += u64::from(made == Made::Apart);
            whole.unmade += u64::from(made == Made::Nothing);
            whole.passes += u64::from(passes);
        }
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
