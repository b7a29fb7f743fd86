//! The tightest and the loosest chain that the limits of a scenario allow.

use super::chance::Limit;
use super::fields::{Fields, item_path};
use super::{Scenario, StatedChain};
use crate::chain::{Chain, Dimension, Sizes};
use crate::error::Error;
use crate::quantity::loosening;

/// An extreme of the limits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Corner {
    /// Every limited size where the chain can give least.
    Tightest,
    /// Every limited size where the chain can give most.
    Loosest,
}

impl Corner {
    /// Both.
    pub const ALL: &'static [Self] = &[Self::Tightest, Self::Loosest];

    /// The word for it in addresses and words.
    pub fn key(self) -> &'static str {
        match self {
            Self::Tightest => "tightest",
            Self::Loosest => "loosest",
        }
    }

    /// The extreme of a word; none for the middle.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|corner| corner.key() == key)
    }

    /// The limited sizes that are at an end of their limits here, and whether it is the larger end.
    pub fn ends(self, limits: &[Limit]) -> Vec<(Dimension, bool)> {
        let opens = |limit: &Limit| (limit.dimension, loosening(limit.dimension));
        let moved = limits.iter().map(opens).filter(|(_, way)| way.abs() > 0.0);
        moved.map(|(dimension, way)| (dimension, (way > 0.0) == (self == Self::Loosest))).collect()
    }

    /// The sizes at this extreme. Every limit of `play` moves one way with each size, so one set of
    /// sizes is the extreme of them all; a size that makes no difference stays in the middle.
    pub fn sizes(self, middle: &Sizes, limits: &[Limit]) -> Sizes {
        let mut sizes = *middle;
        for limit in limits {
            let (low_mm, high_mm) = limit.ends_mm(middle);
            let way = match self {
                Self::Tightest => -loosening(limit.dimension),
                Self::Loosest => loosening(limit.dimension),
            };
            let mm = match way {
                _ if way < 0.0 => low_mm,
                _ if way > 0.0 => high_mm,
                _ => limit.dimension.of(middle),
            };
            limit.dimension.put(&mut sizes, mm);
        }
        // A flush bush, as it is where nobody states its length, stays flush at every extreme.
        if middle.is_flush() && !limits.iter().any(|l| l.dimension == Dimension::BearingLength) {
            sizes.make_flush();
        }
        sizes
    }
}

impl Scenario {
    /// The chain at an extreme of the limits; none where no such chain can be made.
    pub fn chain_at(&self, corner: Corner) -> Option<Chain> {
        Chain::new(corner.sizes(self.chain.chain(), &self.limits)).ok()
    }

    /// The same scenario with that chain for its chain.
    pub fn at(&self, corner: Corner) -> Option<Self> {
        Some(Self { chain: StatedChain::of(self.chain_at(corner)?), ..self.clone() })
    }
}

/// Refuses limits at whose extremes no chain exists, each fault once, at the limit that it is about.
pub(super) fn refuse_impossible(fields: &Fields, middle: Option<&Sizes>, limits: &[Limit]) {
    let Some(middle) = middle.filter(|_| !fields.has_fault("limits")) else { return };
    let mut told: Vec<Error> = Vec::new();
    for corner in Corner::ALL {
        for fault in Chain::new(corner.sizes(middle, limits)).err().into_iter().flatten() {
            if !told.contains(&fault) {
                fields.fault(&place(limits, &fault), fault.value.clone(), fault.rule.clone());
                told.push(fault);
            }
        }
    }
}

/// The limit that a fault is about, or all of them.
fn place(limits: &[Limit], fault: &Error) -> String {
    let about = |limit: &Limit| Dimension::of_key(&fault.field) == Some(limit.dimension);
    let index = limits.iter().position(about);
    index.map_or_else(|| "limits".to_owned(), |i| item_path("limits", i))
}
