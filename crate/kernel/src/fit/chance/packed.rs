//! A tally as a row of numbers, to be handed from worker to worker.

use super::moments::Moments;
use super::tally::{BINS, DemandTally, KEPT, Tally, Worst};

const HEAD: usize = 4;
const MOMENTS: usize = 5;
const WORST: usize = 3;

impl Tally {
    /// Every count, sum and worst set in a fixed order. Counts and set numbers are whole numbers below
    /// 2^53, which a number holds exactly.
    pub fn packed(&self) -> Vec<f64> {
        let counts = [self.sets, self.apart, self.unmade, self.passes];
        let mut row: Vec<f64> = counts.iter().map(|count| *count as f64).collect();
        self.each.iter().for_each(|each| each.pack(&mut row));
        row
    }

    /// Adds the blocks that follow from their packed tally; false, and nothing added, when the row is
    /// none of this study's.
    pub fn join_packed(&mut self, row: &[f64]) -> bool {
        let Some(next) = self.unpacked(row) else { return false };
        self.join(&next);
        true
    }

    fn unpacked(&self, row: &[f64]) -> Option<Self> {
        let (head, mut rest) = row.split_at_checked(HEAD)?;
        let each = self.each.iter().map(|each| each.unpack(&mut rest)).collect::<Option<_>>()?;
        let [sets, apart, unmade, passes] = [0, 1, 2, 3].map(|i| head[i] as u64);
        rest.is_empty().then_some(Self { sets, apart, unmade, passes, each })
    }
}

impl DemandTally {
    fn pack(&self, row: &mut Vec<f64>) {
        row.extend([self.passes as f64, self.blocks.len() as f64, self.worst.len() as f64]);
        for block in &self.blocks {
            row.push(block.count);
            row.extend(block.sums);
        }
        row.extend(self.bins.iter().map(|count| f64::from(*count)));
        for worst in &self.worst {
            row.extend([worst.set as f64, worst.value, worst.outside]);
        }
    }

    /// The same demand's tally from the front of a row.
    fn unpack(&self, row: &mut &[f64]) -> Option<Self> {
        let mut take = |count: usize| {
            let (front, rest) = row.split_at_checked(count)?;
            *row = rest;
            Some(front)
        };
        let [passes, blocks, worst] = *take(3)? else { return None };
        let blocks = take((blocks as usize).checked_mul(MOMENTS)?)?
            .chunks_exact(MOMENTS)
            .map(|m| Moments { count: m[0], sums: [m[1], m[2], m[3], m[4]] })
            .collect();
        let bins = take(BINS)?.iter().map(|count| *count as u32).collect();
        let worst = take((worst as usize).min(KEPT) * WORST)?
            .chunks_exact(WORST)
            .map(|w| Worst { set: w[0] as u64, value: w[1], outside: w[2] })
            .collect();
        Some(Self { passes: passes as u64, blocks, bins, worst, ..*self })
    }
}
