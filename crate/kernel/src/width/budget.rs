//! Where the width over the pins goes, from the chain's middle out.

use crate::chain::Sizes;

/// A layer of the width, both sides of the middle together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layer {
    /// The roller, in the middle.
    Roller,
    /// Roller side clearance.
    RollerGap,
    /// Inner plates.
    InnerPlates,
    /// Side gap.
    SideGap,
    /// Outer plates.
    OuterPlates,
    /// What the pins stand out of the outer plates.
    Heads,
}

impl Layer {
    /// Every layer, from the middle out.
    pub const ALL: &'static [Self] = &[
        Self::Roller,
        Self::RollerGap,
        Self::InnerPlates,
        Self::SideGap,
        Self::OuterPlates,
        Self::Heads,
    ];

    /// The key in the data of a page.
    pub fn key(self) -> &'static str {
        match self {
            Self::Roller => "roller",
            Self::RollerGap => "roller_gap",
            Self::InnerPlates => "inner_plates",
            Self::SideGap => "side_gap",
            Self::OuterPlates => "outer_plates",
            Self::Heads => "heads",
        }
    }

    /// Its width, mm, both sides together; negative where parts overlap.
    pub fn of(self, s: &Sizes) -> f64 {
        match self {
            Self::Roller => s.roller_length_mm,
            Self::RollerGap => s.roller_side_clearance_mm(),
            Self::InnerPlates => 2.0 * s.inner_plate_mm,
            Self::SideGap => s.side_gap_mm(),
            Self::OuterPlates => 2.0 * s.outer_plate_mm,
            Self::Heads => s.pin_length_mm - s.outer_spacing_mm - 2.0 * s.outer_plate_mm,
        }
    }
}

/// The width over the pins by layer: pin length = b1 + 2 ti + a + 2 to + heads.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Budget {
    /// Each layer of [`Layer::ALL`], mm.
    pub layers_mm: [f64; 6],
}

impl Budget {
    /// The budget of a chain.
    pub fn of(sizes: &Sizes) -> Self {
        let mut layers_mm = [0.0; 6];
        for (place, layer) in layers_mm.iter_mut().zip(Layer::ALL) {
            *place = layer.of(sizes);
        }
        Self { layers_mm }
    }

    /// Over the pins' heads, mm.
    pub fn total_mm(&self) -> f64 {
        self.layers_mm.iter().sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Construction, Dimension};

    #[test]
    fn layers_add_up_to_the_pin() {
        for &construction in Construction::ALL {
            let stated = [
                (Dimension::Pitch, 12.7),
                (Dimension::RollerDiameter, 7.75),
                (Dimension::InnerWidth, 2.4),
                (Dimension::PinDiameter, 3.6),
                (Dimension::PinLength, 7.2),
            ];
            let sizes = Sizes::from_stated(construction, &stated);
            assert!((Budget::of(&sizes).total_mm() - 7.2).abs() < 1e-12);
        }
    }
}
