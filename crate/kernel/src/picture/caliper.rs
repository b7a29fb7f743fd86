//! A chain made of a caliper's readings, as a page shows it.

use crate::caliper::{Doubtful, Made, Measured, Reading};
use crate::chain::Dimension;
use crate::paint::{Leaves, leaves};
use crate::report::named;
use crate::scene::Scene;
use serde::Serialize;

/// Text of the picture, pixels.
const TEXT_PX: f64 = 12.0;

/// What readings make.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CaliperState {
    /// How the inner links are made.
    pub construction: &'static str,
    /// The sizes that were measured, mm.
    #[serde(serialize_with = "named")]
    pub stated: Vec<(&'static str, f64)>,
    /// The sizes that are chosen, mm.
    #[serde(serialize_with = "named")]
    pub chosen: Vec<(&'static str, f64)>,
    /// What follows from two readings, with its doubt.
    pub doubts: [Doubtful; 4],
    /// `clear`, `lost` or `apart`: what the doubt leaves of the side gap.
    pub gap: &'static str,
    /// Whether its parts go together.
    pub fits: bool,
    /// Where to put the caliper.
    pub picture: Leaves,
}

impl CaliperState {
    /// What is shown of a chain that was made, a reading in focus, so many pixels wide.
    pub fn of(made: &Made, focus: Option<Reading>, width_px: f64) -> Self {
        let sizes = made.chain.chain();
        let chosen = made.chain.defaulted().map(|size| (size.key(), size.of(sizes)));
        let stated = made.chain.stated().iter().map(|(size, mm)| (Dimension::key(*size), *mm));
        let scene = Scene::of_caliper(sizes, focus, width_px / TEXT_PX);
        Self {
            construction: sizes.construction.key(),
            stated: stated.collect(),
            chosen: chosen.collect(),
            doubts: made.doubts,
            gap: made.gap,
            fits: sizes.goes_together(),
            picture: leaves(&scene, TEXT_PX),
        }
    }
}

/// The readings that a chain would give, by their keys, mm.
pub fn readings_of(measured: &Measured) -> Vec<(&'static str, f64)> {
    Reading::ALL.iter().map(|reading| reading.key()).zip(measured.readings_mm).collect()
}

#[cfg(test)]
mod tests {
    use super::CaliperState;
    use crate::caliper::{Measured, Reading};
    use crate::scenario::sample::aside;

    #[test]
    fn every_reading_shows_two_jaws_and_lit_metal() {
        const TWO: usize = 2;
        let scenario = aside(0.0);
        let made = Measured::like(scenario.chain.chain(), 10.0, 0.02).chain().expect("a chain");
        let of = |focus| CaliperState::of(&made, focus, 400.0);
        let count = |state: &CaliperState, ink| {
            state.picture.leaves.iter().filter(|leaf| leaf.line == Some(ink)).count()
        };
        let none = of(None);
        assert_eq!((count(&none, "lit"), count(&none, "touch")), (0, 0));
        for reading in Reading::ALL {
            let state = of(Some(reading));
            assert!(count(&state, "lit") > 0, "{}", reading.key());
            assert_eq!(count(&state, "touch"), TWO, "{}", reading.key());
        }
    }
}
