//! Many chains of one drawing: the sizes that everybody has, and those that differ.

use super::law::Spread;
use super::normal::Ziggurat;
use super::stream::Stream;
use crate::chain::{Dimension, Sizes};

/// Sets drawn from one stream: large enough to hide the start of a stream, small enough to stay near
/// the processor.
pub const BLOCK: usize = 2048;

/// The chains of one drawing.
#[derive(Debug, Clone)]
pub struct Many {
    /// The sizes of the drawing.
    pub nominal: Sizes,
    /// The dimensions that differ from chain to chain.
    pub spreads: Vec<Spread>,
    /// The same seed draws the same sets.
    pub seed: u64,
    layers: Ziggurat,
}

impl Many {
    /// The chains of a drawing.
    pub fn new(nominal: Sizes, spreads: Vec<Spread>, seed: u64) -> Self {
        Self { nominal, spreads, seed, layers: Ziggurat::default() }
    }

    /// The sizes of one chain whose differing dimensions are these, mm, in the order of the spreads.
    /// A bush that is flush in the drawing and has no limits of its own stays flush.
    pub fn sizes(&self, values_mm: impl IntoIterator<Item = f64>) -> Sizes {
        let mut sizes = self.nominal;
        for (spread, mm) in self.spreads.iter().zip(values_mm) {
            spread.dimension.put(&mut sizes, mm);
        }
        if self.follows() {
            sizes.make_flush();
        }
        sizes
    }

    /// Whether the bush follows the width of the inner link.
    pub fn follows(&self) -> bool {
        self.nominal.is_flush()
            && !self.spreads.iter().any(|spread| spread.dimension == Dimension::BearingLength)
    }

    /// The middle of every pair of limits.
    pub fn middle(&self) -> Sizes {
        self.sizes(self.spreads.iter().map(Spread::middle_mm))
    }

    /// The mean of every law.
    pub fn mean(&self) -> Sizes {
        self.sizes(self.spreads.iter().map(|spread| spread.moments_mm().0))
    }

    /// Draws the sizes of one dimension for the sets of a block, mm.
    pub fn column(&self, spread: &Spread, block: u64, sizes_mm: &mut [f64]) {
        let mut stream = Stream::of(self.seed, block, spread.dimension as u64);
        spread.fill(&self.layers, &mut stream, sizes_mm);
    }

    /// The sizes of every set of a block.
    pub fn block(&self, block: u64, sets: &mut [Sizes], scratch_mm: &mut [f64; BLOCK]) {
        sets.fill(self.nominal);
        for spread in &self.spreads {
            let column = &mut scratch_mm[..sets.len().min(BLOCK)];
            self.column(spread, block, column);
            spread.dimension.put_each(sets, column);
        }
        if self.follows() {
            sets.iter_mut().for_each(Sizes::make_flush);
        }
    }

    /// The sizes of one set, by its number from 0.
    pub fn set(&self, number: u64) -> Sizes {
        let mut column = [0.0; BLOCK];
        let (block, place) = (number / BLOCK as u64, (number % BLOCK as u64) as usize);
        let mut values_mm = Vec::new();
        for spread in &self.spreads {
            self.column(spread, block, &mut column);
            values_mm.push(column[place]);
        }
        self.sizes(values_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::trike;
    use super::*;

    #[test]
    fn a_set_is_the_same_alone_and_in_its_block() {
        let many = trike();
        let mut sets = vec![Sizes::default(); BLOCK];
        many.block(3, &mut sets, &mut [0.0; BLOCK]);
        for place in [0, 17, BLOCK - 1] {
            assert_eq!(many.set(3 * BLOCK as u64 + place as u64), sets[place]);
        }
        assert_ne!(sets[0], sets[1]);
    }

    #[test]
    fn a_flush_bush_stays_flush() {
        use crate::chain::Construction;
        let mut many = trike();
        many.nominal.construction = Construction::Bushed;
        many.nominal.make_flush();
        let set = many.set(5);
        assert!(set.is_flush() && (set.inner_plate_mm - many.nominal.inner_plate_mm).abs() > 1e-9);
    }
}
