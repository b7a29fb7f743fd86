//! The movements of one pitch that can be asked for by name.

/// A movement. Its share runs from -1 to 1, the stop either way; bending and a load
/// run from 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// The next outer link turns sideways, both joints alike.
    Turn,
    /// The links slide aside, each as far as its neighbour lets it, without turning.
    Aside,
    /// The inner link leans between two outer links that stay parallel.
    Lean,
    /// The inner link twists about the chain's own axis.
    Twist,
    /// The first joint bends, as it does on a sprocket.
    Bend,
    /// A load on the next outer link brings the pitch to rest; the share is that of the load.
    Load,
}

impl Mode {
    /// Every mode.
    pub const ALL: &'static [Self] =
        &[Self::Turn, Self::Aside, Self::Lean, Self::Twist, Self::Bend, Self::Load];

    /// The word of the page and of an address.
    pub fn key(self) -> &'static str {
        match self {
            Self::Turn => "turn",
            Self::Aside => "aside",
            Self::Lean => "lean",
            Self::Twist => "twist",
            Self::Bend => "bend",
            Self::Load => "load",
        }
    }

    /// The mode of a word.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|mode| mode.key() == key)
    }

    /// Whether it moves links in the plan section.
    pub fn is_plan(self) -> bool {
        matches!(self, Self::Turn | Self::Aside | Self::Lean | Self::Load)
    }

    /// The smallest share.
    pub fn least_share(self) -> f64 {
        if self.runs_one_way() { 0.0 } else { -1.0 }
    }

    /// Whether its share runs from 0, not from -1.
    pub fn runs_one_way(self) -> bool {
        matches!(self, Self::Bend | Self::Load)
    }
}
