//! The section `width` of a report.

use super::plain;
use crate::drive::Slim;
use crate::width::{Layer, STEEL};
use serde::Serialize;

/// Where the width goes, and what it holds: of the chain so much narrower as is asked.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WidthSection {
    /// How much narrower it is than the scenario's chain.
    pub narrower_mm: f64,
    /// `gaps` or `plates`.
    pub keeps: &'static str,
    /// The most that it can be narrowed this way.
    pub narrowest_mm: f64,
    /// Over the pins' heads: the sum of the six that follow.
    pub width_over_pins_mm: f64,
    /// The roller, in the middle.
    pub roller_mm: f64,
    /// Roller side clearance.
    pub roller_gap_mm: f64,
    /// Both inner plates.
    pub inner_plates_mm: f64,
    /// Side gap, negative where it does not go together.
    pub side_gap_mm: f64,
    /// Both outer plates.
    pub outer_plates_mm: f64,
    /// Both heads.
    pub heads_mm: f64,
    /// How far links slide before any turns: over the drive's strand, or one joint.
    pub free_offset_mm: f64,
    /// Pull that the stresses are for.
    pub pull_n: f64,
    /// Stress of the inner plates.
    pub inner_plate_stress_mpa: f64,
    /// Stress of the outer plates.
    pub outer_plate_stress_mpa: f64,
    /// The greater of the two.
    pub plate_stress_mpa: f64,
    /// Between pin and bore.
    pub pin_pressure_mpa: f64,
    /// Between pin and outer plate, steel on steel.
    pub press_pressure_mpa: f64,
    /// Round the pin's hole in the plate, from the press fit alone.
    pub press_hoop_mpa: f64,
    /// How much the outside of the eye grows.
    pub eye_growth_mm: f64,
    /// What riveting leaves of the pin's clearance at the mouth of the bore.
    pub clearance_left_mm: f64,
    /// The same at the inner end of a collar, or in the middle of a bush.
    pub clearance_left_inside_mm: f64,
    /// Loose parts of the whole chain.
    pub parts_count: u32,
    /// Press fits.
    pub press_fits_count: u32,
    /// Running fits.
    pub running_fits_count: u32,
    /// Side fits.
    pub side_fits_count: u32,
}

impl WidthSection {
    /// The section of a chain.
    pub fn of(slim: &Slim) -> Self {
        let layer = |layer: Layer| plain(layer.of(&slim.slim));
        let [_, [inner_mpa, outer_mpa]] = slim.plates_mpa();
        let press = slim.press(STEEL.elastic());
        let [mouth_mm, inside_mm] = slim.rivet().ends_left_mm(&slim.slim);
        let count = slim.count();
        Self {
            narrower_mm: slim.width.narrower_mm,
            keeps: slim.width.keep.key(),
            narrowest_mm: slim.most_mm,
            width_over_pins_mm: plain(slim.slim.width_over_pins_mm()),
            roller_mm: layer(Layer::Roller),
            roller_gap_mm: layer(Layer::RollerGap),
            inner_plates_mm: layer(Layer::InnerPlates),
            side_gap_mm: layer(Layer::SideGap),
            outer_plates_mm: layer(Layer::OuterPlates),
            heads_mm: layer(Layer::Heads),
            free_offset_mm: slim.free_offsets_mm()[1],
            pull_n: slim.pull_n,
            inner_plate_stress_mpa: inner_mpa,
            outer_plate_stress_mpa: outer_mpa,
            plate_stress_mpa: inner_mpa.max(outer_mpa),
            pin_pressure_mpa: slim.pressures_mpa()[1],
            press_pressure_mpa: press.pressure_mpa(),
            press_hoop_mpa: press.hoop_mpa(),
            eye_growth_mm: press.growth_mm(),
            clearance_left_mm: plain(mouth_mm),
            clearance_left_inside_mm: plain(inside_mm),
            parts_count: count.parts,
            press_fits_count: count.press_fits,
            running_fits_count: count.running_fits,
            side_fits_count: count.side_fits,
        }
    }
}
