//! Numbers between 0 and 1 from a seed.

/// A stream of even draws: a counter that goes up by the golden ratio of 2^64, each value mixed by two
/// multiplications with shifts between them. Source: Steele, Lea, Flood, Fast Splittable Pseudorandom
/// Number Generators, OOPSLA 2014 (constants from memory; the first draws of seed 0 are tested).
pub(super) struct Draws {
    state: u64,
}

/// 2^64 over the golden ratio, made odd.
const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;
const MIX: [u64; 2] = [0xBF58_476D_1CE4_E5B9, 0x94D0_49BB_1331_11EB];
const SHIFTS: [u32; 3] = [30, 27, 31];
/// The bits that an f64 holds without rounding, and their weight.
const DROPPED_BITS: u32 = 11;
const LAST_BIT: f64 = 1.0 / 9_007_199_254_740_992.0;

impl Draws {
    /// The stream of a seed.
    pub(super) fn new(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 bits.
    pub(super) fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(GOLDEN);
        let mut z = self.state;
        z = (z ^ (z >> SHIFTS[0])).wrapping_mul(MIX[0]);
        z = (z ^ (z >> SHIFTS[1])).wrapping_mul(MIX[1]);
        z ^ (z >> SHIFTS[2])
    }

    /// The next number from -0.5 to below 0.5.
    pub(super) fn about_zero(&mut self) -> f64 {
        (self.bits() >> DROPPED_BITS) as f64 * LAST_BIT - 0.5
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first outputs of seed 0 as they are widely reprinted (from memory).
    #[test]
    fn seed_zero_gives_the_known_stream() {
        let mut draws = Draws::new(0);
        assert_eq!(draws.bits(), 0xE220_A839_7B1D_CDAF);
        assert_eq!(draws.bits(), 0x6E78_9E6A_A1B9_65F4);
        assert_eq!(draws.bits(), 0x06C4_5D18_8009_454F);
    }

    #[test]
    fn draws_are_even_about_zero() {
        let mut draws = Draws::new(5);
        let many: Vec<f64> = (0..100_000).map(|_| draws.about_zero()).collect();
        assert!(many.iter().all(|draw| (-0.5..0.5).contains(draw)));
        let mean = many.iter().sum::<f64>() / 1e5;
        let square = many.iter().map(|draw| draw * draw).sum::<f64>() / 1e5;
        // Four standard errors.
        assert!(mean.abs() < 0.004, "{mean}");
        assert!((square - 1.0 / 12.0).abs() < 0.001, "{square}");
    }
}
