//! A narrower chain: something has to give, the plates or the side gap.

use crate::chain::{Chain, Construction, Sizes};

/// What a narrower chain keeps as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keep {
    /// Gaps: the plates get thinner, all in the same proportion.
    Gaps,
    /// Plates: the side gap gets smaller, then overlaps.
    Plates,
}

impl Keep {
    /// The word of a scenario.
    pub fn key(self) -> &'static str {
        match self {
            Self::Gaps => "gaps",
            Self::Plates => "plates",
        }
    }
}

/// The chain so much narrower over its pins, mm. Between the inner plates and the heads nothing
/// changes: a tooth has to go in, and a head has to hold.
///
/// With gaps kept, the four plates lose it in proportion to their thickness, and what bears on the
/// pin gets shorter as the inner plates do: a bush by both, a collar by its own. With plates kept,
/// the side gap loses it all.
pub fn narrowed(sizes: &Sizes, by_mm: f64, keep: Keep) -> Sizes {
    let s = sizes;
    match keep {
        Keep::Plates => Sizes {
            outer_spacing_mm: s.outer_spacing_mm - by_mm,
            pin_length_mm: s.pin_length_mm - by_mm,
            ..*s
        },
        Keep::Gaps => {
            let plates_mm = 2.0 * (s.inner_plate_mm + s.outer_plate_mm);
            let share = by_mm / plates_mm;
            let inner_mm = s.inner_plate_mm * share;
            let bearing_mm = match s.construction {
                Construction::Bushed => 2.0 * inner_mm,
                Construction::Collared => inner_mm,
            };
            Sizes {
                inner_plate_mm: s.inner_plate_mm - inner_mm,
                outer_plate_mm: s.outer_plate_mm * (1.0 - share),
                bearing_length_mm: s.bearing_length_mm - bearing_mm,
                outer_spacing_mm: s.outer_spacing_mm - 2.0 * inner_mm,
                pin_length_mm: s.pin_length_mm - by_mm,
                ..*s
            }
        }
    }
}

/// The most that a chain can be narrowed before it cannot be built, mm, to within a micrometre.
pub fn most_mm(sizes: &Sizes, keep: Keep) -> f64 {
    const WITHIN_MM: f64 = 1e-3;
    let builds = |by_mm: f64| Chain::new(narrowed(sizes, by_mm, keep)).is_ok();
    let (mut builds_mm, mut fails_mm) = (0.0, sizes.pin_length_mm);
    while fails_mm - builds_mm > WITHIN_MM {
        let middle_mm = 0.5 * (builds_mm + fails_mm);
        if builds(middle_mm) { builds_mm = middle_mm } else { fails_mm = middle_mm }
    }
    builds_mm
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Dimension;
    use crate::width::{Budget, Layer};

    fn sizes(construction: Construction) -> Sizes {
        let stated = [
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 2.4),
            (Dimension::PinDiameter, 3.6),
            (Dimension::InnerPlate, 1.0),
            (Dimension::EdgeChamfer, 0.1),
            (Dimension::OuterSpacing, 4.6),
            (Dimension::PinLength, 7.2),
        ];
        Sizes::from_stated(construction, &stated)
    }

    #[test]
    fn a_chain_is_as_much_narrower_as_is_asked_and_only_what_may_give_gives() {
        for &construction in Construction::ALL {
            let wide = sizes(construction);
            for (keep, gives) in [
                (Keep::Gaps, &[Layer::InnerPlates, Layer::OuterPlates] as &[_]),
                (Keep::Plates, &[Layer::SideGap]),
            ] {
                let slim = narrowed(&wide, 0.15, keep);
                let total_mm = Budget::of(&wide).total_mm() - Budget::of(&slim).total_mm();
                assert!((total_mm - 0.15).abs() < 1e-12);
                for layer in Layer::ALL {
                    let less_mm = layer.of(&wide) - layer.of(&slim);
                    let gave = less_mm > 1e-6;
                    assert_eq!(gave, gives.contains(layer), "{keep:?} {layer:?} {less_mm}");
                }
                assert!(Chain::new(slim).is_ok());
            }
        }
    }

    #[test]
    fn the_most_is_where_the_next_chain_cannot_be_built() {
        for &construction in Construction::ALL {
            for keep in [Keep::Gaps, Keep::Plates] {
                let wide = sizes(construction);
                let most = most_mm(&wide, keep);
                assert!(Chain::new(narrowed(&wide, most, keep)).is_ok());
                assert!(Chain::new(narrowed(&wide, most + 0.002, keep)).is_err());
            }
        }
    }
}
