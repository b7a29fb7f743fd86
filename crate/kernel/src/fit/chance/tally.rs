//! What is kept of the sets that have been drawn: counts, sums by block and the worst of them.

use super::super::asked::Wanted;
use super::super::stack::Stack;
use super::moments::Moments;

/// How many of the sets that fail are kept.
pub const KEPT: usize = 3;
/// Bins of the fine counts: odd, so that the middle lies in the middle of one.
pub const BINS: usize = 2001;
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

    /// The bin of a deviation.
    #[inline]
    fn bin_of(&self, deviation: f64) -> usize {
        if self.bin <= 0.0 {
            return BINS / 2;
        }
        let place = deviation / self.bin + 0.5 * BINS as f64;
        // A cast takes what lies below zero as zero.
        (place as usize).min(BINS - 1)
    }

    /// Adds a set's value, and says whether it meets the demand.
    #[inline]
    pub(in crate::fit) fn add(
        &mut self,
        set: u64,
        value: Option<f64>,
        whole: bool,
        wanted: &Wanted,
    ) -> bool {
        let Some(value) = value else { return false };
        let deviation = value - self.centre;
        if let Some(block) = self.blocks.last_mut() {
            block.add(deviation);
        }
        let bin = self.bin_of(deviation);
        self.bins[bin] += 1;
        let margin = wanted.margin(value);
        if margin < 0.0 {
            self.keep(Worst { set, value, outside: -margin });
        }
        let passes = margin >= 0.0 && whole;
        self.passes += u64::from(passes);
        passes
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
