//! Answers to "How narrow can it go?".

use super::{Answer, answer};
use crate::drive::Slim;
use crate::report::WidthSection;
use crate::width::{Keep, Layer};

/// Widths up to this, mm, are none but for rounding.
const ROUNDING_MM: f64 = 1e-9;
/// A gap within this of nothing, mm, is no room to move: a micrometre.
const NO_ROOM_MM: f64 = 1e-3;

/// What a narrower chain gives up, what holds its pins, and how many fits it is made of.
pub fn width(slim: &Slim) -> Vec<Answer> {
    let section = WidthSection::of(slim);
    vec![
        narrower(slim, &section),
        free(slim),
        stress(slim, &section),
        pressed(&section),
        swollen(slim, &section),
        counted(slim, &section),
    ]
}

/// The headline: where the width goes, or what giving it up costs.
fn narrower(slim: &Slim, section: &WidthSection) -> Answer {
    let [before, _] = slim.plates_mpa();
    let before_mpa = before[0].max(before[1]);
    let gap_mm = Layer::SideGap.of(&slim.slim);
    let id = match (section.narrower_mm <= ROUNDING_MM, slim.width.keep) {
        (true, _) => "width.budget",
        (_, Keep::Gaps) => "width.plates",
        (_, Keep::Plates) if gap_mm < -NO_ROOM_MM => "width.apart",
        (_, Keep::Plates) if gap_mm <= NO_ROOM_MM => "width.stuck",
        (_, Keep::Plates) => "width.gap",
    };
    let metal_mm = section.inner_plates_mm + section.outer_plates_mm;
    let numbers = vec![
        ("narrower_mm", section.narrower_mm),
        ("width_mm", section.width_over_pins_mm),
        ("metal_mm", metal_mm),
        ("gap_mm", section.side_gap_mm),
        ("gap_before_mm", slim.wide.side_gap_mm()),
        ("too_little_mm", (-gap_mm).max(0.0)),
        ("stress_mpa", section.plate_stress_mpa),
        ("stress_before_mpa", before_mpa),
        ("more_fraction", section.plate_stress_mpa / before_mpa.max(f64::MIN_POSITIVE) - 1.0),
        ("gap_fraction", section.side_gap_mm / section.width_over_pins_mm),
        ("most_mm", section.narrowest_mm),
    ];
    answer(id, numbers)
}

/// How far a crooked line is free.
fn free(slim: &Slim) -> Answer {
    let [before_mm, now_mm] = slim.free_offsets_mm();
    let joints = slim.joints.unwrap_or(1) as f64;
    let same = (before_mm - now_mm).abs() <= ROUNDING_MM;
    let id = match (slim.joints.is_some(), same) {
        (true, true) => "width.free.same",
        (true, false) => "width.free",
        (false, true) => "width.free.joint.same",
        (false, false) => "width.free.joint",
    };
    answer(id, vec![("free_mm", now_mm), ("before_mm", before_mm), ("joints", joints)])
}

fn stress(slim: &Slim, section: &WidthSection) -> Answer {
    let numbers = vec![
        ("inner_mpa", section.inner_plate_stress_mpa),
        ("outer_mpa", section.outer_plate_stress_mpa),
        ("pressure_mpa", section.pin_pressure_mpa),
        ("pull_n", slim.pull_n),
    ];
    answer("width.stress", numbers)
}

fn pressed(section: &WidthSection) -> Answer {
    let numbers = vec![
        ("pressure_mpa", section.press_pressure_mpa),
        ("hoop_mpa", section.press_hoop_mpa),
        ("growth_mm", section.eye_growth_mm),
        ("times", section.press_hoop_mpa / section.plate_stress_mpa.max(f64::MIN_POSITIVE)),
    ];
    answer("width.press", numbers)
}

/// What riveting leaves at the bore's ends.
fn swollen(slim: &Slim, section: &WidthSection) -> Answer {
    let id = if section.clearance_left_mm < 0.0 { "width.jammed" } else { "width.left" };
    let numbers = vec![
        ("left_mm", section.clearance_left_mm),
        ("inside_mm", section.clearance_left_inside_mm),
        ("clearance_mm", slim.slim.pin_clearance_mm()),
        ("swelling_mm", slim.width.swelling_mm),
        ("decay_mm", slim.rivet().decay_mm),
    ];
    answer(id, numbers)
}

fn counted(slim: &Slim, section: &WidthSection) -> Answer {
    let numbers = vec![
        ("parts", f64::from(section.parts_count)),
        ("fits", f64::from(slim.count().fits())),
        ("press", f64::from(section.press_fits_count)),
        ("running", f64::from(section.running_fits_count)),
        ("side", f64::from(section.side_fits_count)),
        ("pitches", f64::from(slim.pitches)),
    ];
    answer("width.count", numbers)
}
