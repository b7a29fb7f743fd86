//! What can be demanded of a chain, and what it must lie between.

use crate::chain::{Chain, Sizes};
use crate::quantity::{Quantity, Unit, each};

/// A number of a chain that can be demanded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Asked {
    /// One of the catalogue.
    Catalogue(Quantity),
    /// How far a strand of so many joints goes aside while its links only slide: n a/2, mm, without
    /// what the teeth take up. The number of joints stays that of the middle sizes.
    FreeOffset {
        /// n.
        joints: u32,
    },
    /// Mean distance of the pins while the chain is pulled straight, mm.
    PitchUnderLoad,
}

impl Asked {
    /// The key in a report and in a scenario's `demands`.
    pub fn key(self) -> &'static str {
        match self {
            Self::Catalogue(quantity) => quantity.key(),
            Self::FreeOffset { .. } => "free_offset_mm",
            Self::PitchUnderLoad => "pitch_under_load_mm",
        }
    }

    /// Its unit.
    pub fn unit(self) -> Unit {
        Unit::of_key(self.key())
    }

    /// Its value for these sizes, in its unit.
    pub fn of(self, sizes: &Sizes) -> f64 {
        match self {
            Self::Catalogue(quantity) => quantity.of(sizes),
            Self::FreeOffset { joints } => f64::from(joints) * 0.5 * sizes.side_gap_mm(),
            Self::PitchUnderLoad => sizes.pitch_under_load_mm(),
        }
    }

    /// Its value for each of many chains, in its unit.
    pub fn of_each(self, chains: &[Sizes], values: &mut [f64]) {
        match self {
            Self::Catalogue(quantity) => quantity.of_each(chains, values),
            _ => each(chains, values, |sizes| self.of(sizes)),
        }
    }

    /// Whether only a chain that goes together has it: how far it can give.
    pub fn is_play(self) -> bool {
        matches!(self, Self::Catalogue(quantity) if Quantity::PLAY.contains(&quantity))
    }
}

/// What one number of a chain must lie between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// The number.
    pub asked: Asked,
    /// The smallest allowed, in its unit.
    pub at_least: Option<f64>,
    /// The largest allowed, in its unit.
    pub at_most: Option<f64>,
}

impl Wanted {
    /// The smallest and the largest allowed, in its unit; far away where nothing is said.
    #[inline]
    pub fn ends(&self) -> (f64, f64) {
        (self.at_least.unwrap_or(f64::MIN), self.at_most.unwrap_or(f64::MAX))
    }

    /// How far inside the demand a value lies, in its unit: negative outside.
    pub fn margin(&self, value: f64) -> f64 {
        let (least, most) = self.ends();
        (value - least).min(most - value)
    }
}

/// Whether sizes are a chain, and one that goes together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// A chain.
    Whole,
    /// Parts that exist, and do not go together.
    Apart,
    /// No chain: a part of it cannot exist.
    Nothing,
}

impl Made {
    /// What these sizes are.
    pub fn of(sizes: &Sizes) -> Self {
        match Chain::new(*sizes) {
            Ok(chain) if chain.goes_together() => Self::Whole,
            Ok(_) => Self::Apart,
            Err(_) => Self::Nothing,
        }
    }

    /// Whether such sizes have a value that is asked for.
    pub fn has(self, asked: Asked) -> bool {
        self == Self::Whole || self == Self::Apart && !asked.is_play()
    }
}
