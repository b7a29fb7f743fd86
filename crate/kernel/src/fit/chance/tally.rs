//! What is kept of the sets that have been drawn: counts, sums by block and the worst of them.

use super::super::asked::Wanted;
use super::super::stack::Stack;
use super::moments::Moments;

/// How many of the sets that fail are kept.
pub const KEPT: usize = 3;
/// Bins of the fine counts: odd, so that the middle lies in the middle of one.
pub const BINS: usize = 2001;
const LAST_BIN: u32 = BINS as u32 - 1;
/// Standard deviations from the middle to either end of the fine counts.
const SPAN_SDS: f64 = 10.0;

/// Sets that have been drawn. Tallies of one study are joined in the order of their blocks.
#[derive(Debug, Clone, PartialEq)]
pub struct Tally {
    /// How many sets.
    pub sets: u64,
    /// How many of them do not go together.
    pub apart: u64,
    /// How many are no chain at all.
    pub unmade: u64,
    /// How many meet every demand.
    pub passes: u64,
    /// One for each demand.
    pub each: Vec<DemandTally>,
}

/// One demand's part.
#[derive(Debug, Clone, PartialEq)]
pub struct DemandTally {
    /// What deviations are taken from, in the number's unit.
    pub centre: f64,
    /// Width of a bin, in the number's unit; zero when the number does not vary.
    pub bin: f64,
    /// How many sets go together and meet this demand.
    pub passes: u64,
    /// Deviations by block.
    pub blocks: Vec<Moments>,
    /// Counts by bin; the first and the last also hold what lies beyond.
    pub bins: Vec<u32>,
    /// The sets that fail by most, the worst first.
    pub worst: Vec<Worst>,
}

/// A set that fails.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worst {
    /// Its number.
    pub set: u64,
    /// The value, in the number's unit.
    pub value: f64,
    /// How far outside the demand, in the number's unit: a positive number.
    pub outside: f64,
}

impl Tally {
    /// Nothing drawn yet.
    pub(super) fn empty<'a>(stacks: impl Iterator<Item = Option<&'a Stack>>) -> Self {
        let each = stacks.map(DemandTally::empty).collect();
        Self { sets: 0, apart: 0, unmade: 0, passes: 0, each }
    }

    /// Adds the tally of the blocks that follow.
    pub fn join(&mut self, next: &Self) {
        self.sets += next.sets;
        self.apart += next.apart;
        self.unmade += next.unmade;
        self.passes += next.passes;
        for (tally, next) in self.each.iter_mut().zip(&next.each) {
            tally.join(next);
        }
    }
}

impl DemandTally {
    pub(in crate::fit) fn empty(stack: Option<&Stack>) -> Self {
        let (centre, sd) = stack.map_or((0.0, 0.0), |stack| (stack.mean, stack.rss_sd));
        let bin = 2.0 * SPAN_SDS * sd / BINS as f64;
        let bins = vec![0; BINS];
        Self { centre, bin, passes: 0, blocks: Vec::new(), bins, worst: Vec::new() }
    }

    /// Begins another block.
    pub(in crate::fit) fn begin(&mut self) {
        self.blocks.push(Moments::default());
    }

    /// The lower end of a bin, in the number's unit.
    pub(super) fn edge(&self, bin: usize) -> f64 {
        self.centre + (bin as f64 - 0.5 * BINS as f64) * self.bin
    }

    /// Which bin a deviation belongs to; the middle one of a number that does not vary.
    fn bin_of(&self) -> impl Fn(f64) -> usize + use<> {
        let per = if self.bin > 0.0 { 1.0 / self.bin } else { 0.0 };
        // A cast takes what lies below zero as zero.
        move |deviation| ((deviation * per + 0.5 * BINS as f64) as u32).min(LAST_BIN) as usize
    }

    /// Adds the value of a set that goes together or does not, and says whether it meets the demand.
    pub(in crate::fit) fn add(
        &mut self,
        set: u64,
        value: f64,
        whole: bool,
        wanted: &Wanted,
    ) -> bool {
        let mut passes = [whole];
        self.add_each(set, &[value], wanted, &mut passes);
        passes[0]
    }

    /// Adds the values of sets in a row; leaves only those passing that meet the demand.
    #[inline]
    pub(in crate::fit) fn add_each(
        &mut self,
        first: u64,
        values: &[f64],
        wanted: &Wanted,
        passes: &mut [bool],
    ) {
        if let Some(block) = self.blocks.last_mut() {
            let mut sums = *block;
            values.iter().for_each(|value| sums.add(value - self.centre));
            *block = sums;
        }
        let bin_of = self.bin_of();
        values.iter().for_each(|value| self.bins[bin_of(value - self.centre)] += 1);
        let (least, most) = wanted.ends();
        let inside = |value: &f64| *value >= least && *value <= most;
        for (passes, value) in passes.iter_mut().zip(values) {
            *passes &= inside(value);
        }
        self.passes += passes.iter().filter(|passes| **passes).count() as u64;
        for (set, value) in (first..).zip(values).filter(|(_, value)| !inside(value)) {
            self.keep(Worst { set, value: *value, outside: -wanted.margin(*value) });
        }
    }

    /// Keeps a set among the worst if it is one; of two as bad the earlier.
    fn keep(&mut self, worst: Worst) {
        let place = self.worst.partition_point(|kept| kept.outside >= worst.outside);
        if place < KEPT {
            self.worst.insert(place, worst);
            self.worst.truncate(KEPT);
        }
    }

    fn join(&mut self, next: &Self) {
        self.passes += next.passes;
        self.blocks.extend_from_slice(&next.blocks);
        for (count, more) in self.bins.iter_mut().zip(&next.bins) {
            *count += more;
        }
        next.worst.iter().for_each(|worst| self.keep(*worst));
    }

    /// All deviations together, block after block.
    pub(in crate::fit) fn moments(&self) -> Moments {
        let mut whole = Moments::default();
        self.blocks.iter().for_each(|block| whole.join(block));
        whole
    }
}
