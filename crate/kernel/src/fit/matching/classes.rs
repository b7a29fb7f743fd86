//! Limits of a dimension cut into classes of equal width.

use super::super::law::Spread;

/// From here on a number's neighbours are whole numbers, and its last bits their own.
const WHOLE: f64 = 4_503_599_627_370_496.0;

/// The classes; parts outside the limits belong to the class at that end.
#[derive(Debug, Clone, Copy)]
pub struct Classes {
    low_mm: f64,
    per_mm: f64,
    last: f64,
    /// The class that is counted from, with [`WHOLE`] added to it, and which way.
    first: f64,
    way: f64,
}

impl Classes {
    /// As many classes between a dimension's limits, counted from the other end where large goes with
    /// small.
    pub fn of(spread: &Spread, classes: u32, alike: bool) -> Self {
        let width_mm = spread.high_mm - spread.low_mm;
        let per_mm = if width_mm > 0.0 { f64::from(classes) / width_mm } else { 0.0 };
        let last = f64::from(classes.max(1) - 1);
        let (first, way) = if alike { (0.0, 1.0) } else { (last, -1.0) };
        Self { low_mm: spread.low_mm, per_mm, last, first: first + WHOLE, way }
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.last as usize + 1
    }

    /// The class of a size, from 0.
    pub fn class(&self, mm: f64) -> usize {
        Self::index(self.raised(mm))
    }

    /// The class of a size with [`WHOLE`] added to it: its place is rounded down to a whole number by
    /// steps that run on many sizes at once, where a cast does not.
    #[inline]
    pub fn raised(&self, mm: f64) -> f64 {
        let place = (mm - self.low_mm) * self.per_mm;
        let place = if place > 0.0 { place } else { 0.0 };
        let place = if place < self.last { place } else { self.last };
        let near = (place + WHOLE) - WHOLE;
        let class = near - if near > place { 1.0 } else { 0.0 };
        class * self.way + self.first
    }

    /// The class itself: the last bits.
    #[inline]
    pub fn index(raised: f64) -> usize {
        usize::from(raised.to_bits() as u16)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Dimension;
    use crate::fit::Law;

    #[test]
    fn a_class_is_the_whole_part_of_a_place_between_the_limits() {
        let (low_mm, high_mm) = (10.0, 14.0);
        let (law, sigmas, mean_shift) = (Law::Uniform, 3.0, 0.0);
        let dimension = Dimension::Barrel;
        let spread = Spread { dimension, low_mm, high_mm, law, sigmas, mean_shift };
        for classes in [1, 2, 3, 4, 24, 1000] {
            let (up, down) =
                (Classes::of(&spread, classes, true), Classes::of(&spread, classes, false));
            for step in -100..=1100 {
                let mm = low_mm + 0.004 * f64::from(step);
                let place = (mm - low_mm) * f64::from(classes) / 4.0;
                let class = (place as usize).min(up.count() - 1);
                assert_eq!(up.class(mm), class, "{mm} in {classes}");
                assert_eq!(down.class(mm), up.count() - 1 - class, "{mm} in {classes}");
            }
        }
    }
}
