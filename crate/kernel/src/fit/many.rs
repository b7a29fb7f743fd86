//! Many chains of one drawing: the sizes that everybody has, and those that differ.

use super::law::Spread;
use super::normal::Ziggurat;
use super::rank::ends;
use super::stream::Stream;
use crate::chain::{Dimension, Sizes, all_go_together};

/// Sets drawn from one stream: large enough to hide the start of a stream, small enough to stay near
/// the processor.
pub const BLOCK: usize = 2048;

/// Sets that are worked on together: so many lie close to the processor.
pub const NEAR: usize = 64;

/// The drawn sizes of a block.
#[derive(Debug, Clone)]
pub struct Columns {
    /// One column for each spread, mm.
    each_mm: Vec<Vec<f64>>,
    /// Whether a rare size is among them.
    rare: bool,
}

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

    /// Draws the sizes of one dimension for the sets of a block, mm, and says whether a rare one is
    /// among them.
    pub fn column(&self, spread: &Spread, block: u64, sizes_mm: &mut [f64]) -> bool {
        let stream = Stream::of(self.seed, block, spread.dimension as u64);
        spread.fill(&self.layers, &stream, sizes_mm)
    }

    /// Room for the drawn sizes of a block.
    pub fn columns(&self) -> Columns {
        Columns { each_mm: vec![Vec::with_capacity(BLOCK); self.spreads.len()], rare: false }
    }

    /// Draws every column of a block, mm.
    pub fn draw(&self, block: u64, count: usize, columns: &mut Columns) {
        columns.rare = false;
        for (spread, sizes_mm) in self.spreads.iter().zip(&mut columns.each_mm) {
            sizes_mm.resize(count.min(BLOCK), 0.0);
            columns.rare |= self.column(spread, block, sizes_mm);
        }
    }

    /// Every spread by its place.
    pub fn every(&self) -> Vec<usize> {
        (0..self.spreads.len()).collect()
    }

    /// Puts some sets of a block, from one on, in place of the sizes of as many chains: those
    /// dimensions that are named by the places of their spreads.
    pub fn lay(&self, columns: &Columns, spreads: &[usize], from: usize, sets: &mut [Sizes]) {
        for &i in spreads {
            self.spreads[i].dimension.put_each(sets, &columns.each_mm[i][from..]);
        }
        if self.follows() {
            sets.iter_mut().for_each(Sizes::make_flush);
        }
    }

    /// Whether every set goes together that holds no rare size, so far as this can be told at once.
    pub fn usual_go_together(&self) -> bool {
        self.go_together(self.spreads.iter().map(Spread::usual_mm))
    }

    /// Whether every set of a block goes together, so far as can be told without looking at each:
    /// because it holds nothing rare, where that is `enough`, or by the ends of its columns.
    pub fn all_go_together(&self, columns: &Columns, enough: bool) -> bool {
        enough && !columns.rare || self.go_together(columns.each_mm.iter().map(|mm| ends(mm)))
    }

    /// Whether every set goes together whose sizes lie between these ends, mm.
    fn go_together(&self, ends_mm: impl Iterator<Item = (f64, f64)>) -> bool {
        let bound = |(spread, (low_mm, high_mm)): (&Spread, _)| (spread.dimension, low_mm, high_mm);
        let bounds: Vec<_> = self.spreads.iter().zip(ends_mm).map(bound).collect();
        let follows = self.follows();
        all_go_together(&self.middle(), &bounds, |sizes| {
            if follows {
                sizes.make_flush();
            }
        })
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
        let mut sets = vec![many.nominal; BLOCK];
        let mut columns = many.columns();
        many.draw(3, BLOCK, &mut columns);
        many.lay(&columns, &many.every(), 0, &mut sets);
        for place in [0, 17, BLOCK - 1] {
            assert_eq!(many.set(3 * BLOCK as u64 + place as u64), sets[place]);
        }
        assert_ne!(sets[0], sets[1]);
    }

    #[test]
    fn a_block_that_goes_together_by_its_ends_does_so_set_by_set() {
        use crate::fit::Made;
        let (mut told, mut apart) = (0, 0);
        for step in 0..40 {
            let mut many = trike();
            // From a pin that is loose to one that fills its hole, and chamfers that use up plates.
            many.nominal.pin_diameter_mm += 0.001 * f64::from(step);
            for spread in &mut many.spreads[..1] {
                spread.low_mm += 0.001 * f64::from(step);
                spread.high_mm += 0.001 * f64::from(step);
            }
            let mut columns = many.columns();
            many.draw(step as u64, 300, &mut columns);
            let mut sets = vec![many.nominal; 300];
            many.lay(&columns, &many.every(), 0, &mut sets);
            let whole = sets.iter().all(|sizes| Made::of(sizes) == Made::Whole);
            assert!(
                whole || !many.all_go_together(&columns, many.usual_go_together()),
                "step {step}"
            );
            told += usize::from(many.all_go_together(&columns, false));
            apart += usize::from(!whole);
        }
        assert!(told > 5 && apart > 5, "{told} told, {apart} apart");
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
