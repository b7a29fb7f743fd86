//! A chain whose gaps are all so many times too big, so that they can be seen.
//!
//! Metal keeps its thickness and the widths b1, b2 and B stay, so that tilts grow by the same factor
//! as gaps and the same face stops first: the bore grows by the pin's clearance; barrel, roller bore
//! and roller follow it with their walls kept; outer plates and heads move out; the roller gets
//! shorter; wear gets deeper. An overlap is a negative gap and grows too.

use super::play::Play;
use crate::chain::{Chain, Construction, Sizes};

/// Gaps are never drawn more times too big than this.
pub const MOST_TIMES: u32 = 30;

/// The sizes with every gap so many times as big, the metal as it is.
pub fn widen(sizes: &Sizes, factor: f64) -> Sizes {
    let s = sizes;
    let bore_mm = s.pin_diameter_mm + factor * s.pin_clearance_mm();
    let barrel_mm = bore_mm + (s.barrel_mm - s.bore_mm);
    let roller_bore_mm = barrel_mm + factor * s.roller_clearance_mm();
    let outer_spacing_mm = s.inner_link_width_mm() + factor * s.side_gap_mm();
    Sizes {
        bore_mm,
        barrel_mm,
        roller_bore_mm,
        roller_diameter_mm: roller_bore_mm + (s.roller_diameter_mm - s.roller_bore_mm),
        roller_length_mm: s.inner_width_mm - factor * s.roller_side_clearance_mm(),
        outer_spacing_mm,
        pin_length_mm: s.pin_length_mm + (outer_spacing_mm - s.outer_spacing_mm),
        worn: s.worn.times(factor),
        ..*s
    }
}

/// The largest whole factor up to [`MOST_TIMES`] such that it and every smaller one can be drawn
/// honestly: the shape exists, the pin has grown by at most 40 %, the roller keeps half its length,
/// and what stops the drawn chain is what stops the true one. At least 1.
pub fn cap(chain: &Chain) -> u32 {
    let sizes = chain.sizes();
    let truth = chain.goes_together().then(|| Play::of(sizes));
    let honest = |factor: &u32| can_be_drawn(sizes, truth.as_ref(), f64::from(*factor));
    (2..=MOST_TIMES).take_while(honest).last().unwrap_or(1)
}

fn can_be_drawn(sizes: &Sizes, truth: Option<&Play>, factor: f64) -> bool {
    /// Share by which the pin may grow.
    const PIN_GROWTH: f64 = 0.4;
    /// Share of its length that the roller must keep.
    const ROLLER_LEFT: f64 = 0.5;
    /// Share of its wall, and of its pin, that wear may take.
    const WORN: f64 = 0.7;
    let wide = widen(sizes, factor);
    let Ok(chain) = Chain::new(wide) else { return false };
    wide.worn.bore_mm <= WORN * 0.5 * (wide.barrel_mm - wide.bore_mm)
        && wide.worn.pin_mm <= WORN * wide.pin_diameter_mm
        && wide.pin_length_mm <= (1.0 + PIN_GROWTH) * sizes.pin_length_mm
        && wide.roller_length_mm >= ROLLER_LEFT * sizes.roller_length_mm
        && holds_plates_alike(sizes, &wide)
        && truth.is_none_or(|truth| chain.goes_together() && stops_alike(truth, &Play::of(&wide)))
}

/// Whether the same faces stop both.
fn stops_alike(one: &Play, other: &Play) -> bool {
    let stops = |play: &Play| [play.yaw.by, play.turn.by, play.shear.by, play.twist.by];
    stops(one) == stops(other)
}

/// Whether the same parts, roller ends or collar ends, keep the inner plates of a collared chain
/// apart in both.
fn holds_plates_alike(one: &Sizes, other: &Sizes) -> bool {
    let roller_first = |s: &Sizes| {
        s.roller_side_clearance_mm() <= s.inner_link_width_mm() - 2.0 * s.bearing_length_mm
    };
    one.construction == Construction::Bushed || roller_first(one) == roller_first(other)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Dimension, Pair};

    fn example(construction: Construction, extra: &[(Dimension, f64)]) -> Chain {
        let mut stated = vec![
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 6.35),
            (Dimension::PinDiameter, 3.58),
            (Dimension::MouthRadius, 0.2),
        ];
        stated.extend_from_slice(extra);
        Chain::new(Sizes::from_stated(construction, &stated)).unwrap()
    }

    #[test]
    fn every_gap_grows_alike_and_no_metal_does() {
        for construction in Construction::ALL {
            let sizes = *example(*construction, &[]).sizes();
            let wide = widen(&sizes, 7.0);
            for pair in Pair::ALL {
                assert!((pair.gap_mm(&wide) - 7.0 * pair.gap_mm(&sizes)).abs() < 1e-12);
            }
            let metal = |s: &Sizes| {
                [
                    s.barrel_mm - s.bore_mm,
                    s.roller_diameter_mm - s.roller_bore_mm,
                    s.pin_length_mm - s.outer_spacing_mm,
                    s.inner_link_width_mm(),
                    s.bearing_width_mm(),
                ]
            };
            for (a, b) in metal(&sizes).into_iter().zip(metal(&wide)) {
                assert!((a - b).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn an_overlap_grows_too() {
        let tight = example(Construction::Bushed, &[(Dimension::Bore, 3.57)]);
        let wide = widen(&tight, 3.0);
        assert!((wide.pin_clearance_mm() + 0.03).abs() < 1e-12);
        assert!(cap(&tight) > 1, "a drawn overlap may grow up to what can be drawn");
    }

    #[test]
    fn tilts_grow_with_the_gaps_to_second_order() {
        for construction in Construction::ALL {
            let chain = example(*construction, &[]);
            let factor = f64::from(cap(&chain));
            let (truth, drawn) = (Play::of(&chain), Play::of(&widen(&chain, factor)));
            let ratio = drawn.turn.angle_rad / (factor * truth.turn.angle_rad);
            assert!((ratio - 1.0).abs() < 0.1, "{ratio} at {factor}");
        }
    }

    #[test]
    fn the_cap_is_honest_and_no_higher_factor_is() {
        for construction in Construction::ALL {
            for side_gap in [0.02, 0.1, 0.2, 0.4] {
                let b2 = example(*construction, &[]).inner_link_width_mm();
                let chain = example(*construction, &[(Dimension::OuterSpacing, b2 + side_gap)]);
                let (most, truth) = (cap(&chain), Play::of(&chain));
                for factor in 1..=most {
                    let drawn = Play::of(&widen(&chain, f64::from(factor)));
                    assert!(stops_alike(&truth, &drawn), "{factor} of {most}");
                }
                let next = f64::from(most + 1);
                assert!(most == MOST_TIMES || !can_be_drawn(&chain, Some(&truth), next));
            }
        }
    }
}
