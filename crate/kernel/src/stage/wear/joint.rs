//! The same joint as new and worn, cut square to the pin, under load.

use super::super::shape::Shape;
use crate::chain::outline::{bore_outline, pin_outline};
use crate::chain::{Sizes, WornBore};
use crate::contact::widen;
use crate::plane::{Pen, Point};
use serde::Serialize;

/// Gaps are drawn at most so many times too big.
const MOST_TIMES: u32 = 30;
/// The largest drawn clearance, in pin diameters, and the largest drawn depth, in walls.
const MOST_GAP: f64 = 0.45;
const MOST_DEPTH: f64 = 0.7;

/// One state of the joint.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Section {
    /// Bush or collar, and pin, the bore's centre at the origin; the pull is along the first axis.
    pub shapes: Vec<Shape>,
    /// The open gap along the load, drawn: from the pin's side to the bore's, along.
    pub along_drawn_mm: [f64; 2],
    /// Half of the clearance across, drawn: from the pin's side to the bore's, upward from the pin's
    /// middle.
    pub across_drawn_mm: [f64; 2],
    /// The pin's middle, drawn, along.
    pub pin_drawn_mm: f64,
    /// True clearance along the load.
    pub along_mm: f64,
    /// True clearance across.
    pub across_mm: f64,
}

/// A joint as new and worn.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JointView {
    /// How many times too big every gap and depth is drawn.
    pub times: u32,
    /// Radius of the outside, drawn.
    pub outside_mm: f64,
    /// As new.
    pub new: Section,
    /// Worn.
    pub worn: Section,
}

impl JointView {
    /// The view of a chain whose joints have worn.
    pub fn of(sizes: &Sizes, worn: &WornBore) -> Self {
        let times = times(sizes, worn);
        let wide = widen(sizes, f64::from(times));
        let section = |worn: &WornBore| Section::of(sizes, &wide, worn, f64::from(times));
        Self {
            times,
            outside_mm: 0.5 * wide.barrel_mm,
            new: section(&WornBore::NONE),
            worn: section(worn),
        }
    }
}

/// The largest whole factor that keeps the gap within a share of the pin and the depth in the wall.
fn times(sizes: &Sizes, worn: &WornBore) -> u32 {
    let wall_mm = 0.5 * (sizes.barrel_mm - sizes.bore_mm);
    let fits = |times: &u32| {
        let factor = f64::from(*times);
        factor * worn.along_mm(sizes) <= MOST_GAP * sizes.pin_diameter_mm
            && factor * worn.bore_mm <= MOST_DEPTH * wall_mm
    };
    (1..=MOST_TIMES).take_while(fits).last().unwrap_or(1)
}

impl Section {
    fn of(sizes: &Sizes, wide: &Sizes, worn: &WornBore, factor: f64) -> Self {
        let drawn = worn.times(factor);
        let (bore_mm, pin_mm) = (0.5 * wide.bore_mm, 0.5 * wide.pin_diameter_mm);
        // Pulled apart: the pin lies at the worn side of its bore.
        let pin_at = -(0.5 * wide.pin_clearance_mm() + drawn.depth_mm());
        let mut ring = Pen::new();
        ring.circle((0.0, 0.0), 0.5 * wide.barrel_mm);
        ring.steps.extend(bore_outline(wide, &drawn));
        let pin = pin_outline(wide, &drawn);
        let mut was = Pen::new();
        was.circle((0.0, 0.0), bore_mm);
        Self {
            shapes: vec![
                Shape::new("bush", &ring.steps, Point::ZERO),
                Shape::new("pin", &pin, Point::new(pin_at, 0.0)),
                Shape::new("was", &was.steps, Point::ZERO),
            ],
            along_drawn_mm: [pin_at + pin_mm, bore_mm],
            across_drawn_mm: [pin_mm, (bore_mm * bore_mm - pin_at * pin_at).max(0.0).sqrt()],
            pin_drawn_mm: pin_at,
            along_mm: worn.along_mm(sizes),
            across_mm: worn.across_mm(sizes),
        }
    }
}
