//! How many parts and how many fits one chain holds.

use crate::chain::Construction;

/// Parts and fits of a chain of an even number of pitches, half of them outer links.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    /// Loose parts before assembly: plates, pins, bushes, rollers.
    pub parts: u32,
    /// Places where one part is pressed into another: pins in outer plates, bushes in inner plates.
    pub press_fits: u32,
    /// Places where one part turns on another: pins in bores, rollers on barrels; each collar is a
    /// bore and a barrel of its own.
    pub running_fits: u32,
    /// Places where faces lie beside each other: inner plates between outer plates, rollers between
    /// inner plates, two each a joint.
    pub side_fits: u32,
}

impl Count {
    /// Of a chain of so many pitches, which are as many joints.
    pub fn of(construction: Construction, pitches: u32) -> Self {
        // A pair of pitches: an outer link of 2 plates and 2 pins, an inner one of 2 plates and 2
        // rollers, with 2 bushes besides where it is bushed; a joint has a pin in 2 outer plates.
        let bushed = construction == Construction::Bushed;
        let parts_a_joint = if bushed { 5 } else { 4 };
        let press_a_joint = if bushed { 4 } else { 2 };
        let running_a_joint = if bushed { 2 } else { 4 };
        Self {
            parts: parts_a_joint * pitches,
            press_fits: press_a_joint * pitches,
            running_fits: running_a_joint * pitches,
            side_fits: 4 * pitches,
        }
    }

    /// All fits.
    pub fn fits(&self) -> u32 {
        self.press_fits + self.running_fits + self.side_fits
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_chain_holds_several_hundred_parts() {
        // Common practice, no source: several hundred parts in one chain.
        for &construction in Construction::ALL {
            let count = Count::of(construction, 114);
            assert!((300..=700).contains(&count.parts), "{count:?}");
            assert!(count.fits() >= 2 * count.parts);
        }
    }
}
