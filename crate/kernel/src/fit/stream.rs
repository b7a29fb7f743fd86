//! Random numbers that belong to a place: one stream for each dimension of each block of sets.
//!
//! The numbers of a block depend on the seed, the block and the dimension alone, so that any number
//! of workers draws the same sets, and other limits on one dimension leave the others' draws alone.

/// Random numbers in a row: a counter in steps, each mixed up, so that any number of a stream can be
/// had without those before it (Steele, Lea, Flood, Fast Splittable Pseudorandom Number Generators,
/// 2014: `SplitMix64`).
#[derive(Debug, Clone)]
pub struct Stream {
    counter: u64,
}

/// One step of the counter and what mixes it up.
const STEP: u64 = 0x9e37_79b9_7f4a_7c15;
const MIX: [u64; 2] = [0xbf58_476d_1ce4_e5b9, 0x94d0_49bb_1331_11eb];

/// A number of 64 bits from another, every bit of it depending on every bit.
#[inline]
fn mixed(counter: u64) -> u64 {
    let mut z = counter.wrapping_add(STEP);
    z = (z ^ (z >> 30)).wrapping_mul(MIX[0]);
    z = (z ^ (z >> 27)).wrapping_mul(MIX[1]);
    z ^ (z >> 31)
}

impl Stream {
    /// The stream of a seed, a block of sets and a column of numbers within it.
    pub fn of(seed: u64, block: u64, column: u64) -> Self {
        let place = mixed(mixed(seed) ^ block);
        Self { counter: mixed(mixed(place ^ column)) }
    }

    /// The bits that stand so many places further on; the stream stays where it is.
    #[inline]
    pub fn at(&self, place: usize) -> u64 {
        mixed(self.counter.wrapping_add(STEP.wrapping_mul(place as u64)))
    }

    /// The same stream from so many places further on.
    pub fn beyond(&self, places: usize) -> Self {
        Self { counter: self.counter.wrapping_add(STEP.wrapping_mul(places as u64)) }
    }

    /// The next 64 bits.
    #[inline]
    pub fn bits(&mut self) -> u64 {
        let bits = mixed(self.counter);
        self.counter = self.counter.wrapping_add(STEP);
        bits
    }

    /// The next number between 0 and 1, never either of them: the middle of one of 2^52 steps.
    #[inline]
    pub fn share(&mut self) -> f64 {
        share(self.bits())
    }
}

/// A number between 0 and 1 from 64 bits.
#[inline]
pub fn share(bits: u64) -> f64 {
    const STEP: f64 = 1.0 / 4_503_599_627_370_496.0;
    const KEPT: u32 = 12;
    ((bits >> KEPT) as f64 + 0.5) * STEP
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_has_its_own_numbers_every_time() {
        let first = |seed, block, column| Stream::of(seed, block, column).bits();
        assert_eq!(first(1, 2, 3), first(1, 2, 3));
        let mut seen = Vec::new();
        for (seed, block, column) in [(1, 2, 3), (2, 1, 3), (1, 3, 2), (3, 2, 1), (0, 0, 0)] {
            seen.push(first(seed, block, column));
        }
        seen.sort_unstable();
        seen.dedup();
        assert_eq!(seen.len(), 5);
    }

    #[test]
    fn a_number_is_the_same_in_its_row_and_alone() {
        let stream = Stream::of(5, 6, 7);
        let mut row = stream.clone();
        for place in 0..9 {
            assert_eq!(
                (stream.at(place), stream.beyond(place).bits()),
                (row.bits(), stream.at(place))
            );
        }
    }

    #[test]
    fn shares_are_spread_evenly_over_neighbouring_streams() {
        // The first numbers of many streams, in 16 bins: chi square with 15 degrees of freedom is
        // 15 +- 5.5; 50 is out of the question.
        let mut counts = [0.0; 16];
        for block in 0..16_000 {
            let share = Stream::of(7, block, 4).share();
            assert!(share > 0.0 && share < 1.0);
            counts[(16.0 * share) as usize] += 1.0;
        }
        let chi: f64 = counts.iter().map(|n: &f64| (n - 1000.0) * (n - 1000.0) / 1000.0).sum();
        assert!(chi < 50.0, "{chi}");
    }
}
