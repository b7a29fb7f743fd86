//! Rollers of a worn chain on the teeth of its wheel, from the side.

use super::super::shape::Shape;
use crate::drive::Tired;
use crate::plane::{Pen, Point};
use crate::sprocket::{Form, Perch, Seat, Wheel};
use crate::wear::Climb;
use core::f64::consts::FRAC_PI_2;
use serde::Serialize;

/// Wear is drawn at most so many times too big.
const MOST_TIMES: u32 = 30;
/// The share of the wear that the teeth hold up to which it is drawn.
const MOST_SHARE: f64 = 0.85;
/// Gaps to either side of the middle one.
const GAPS: u32 = 3;

/// A roller on its tooth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Seated {
    /// Its centre, drawn; the middle of the picture's pitch circle is at the origin, second axis down.
    pub x_mm: f64,
    /// Its centre, drawn.
    pub y_mm: f64,
    /// Whether it is one of those that ride higher.
    pub high: bool,
    /// How far it has truly risen.
    pub rise_mm: f64,
}

/// The picture.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WheelView {
    /// How many times too deep the wear is drawn.
    pub times: u32,
    /// Teeth of the wheel.
    pub teeth: u32,
    /// The teeth in sight, and the pitch circle.
    pub shapes: Vec<Shape>,
    /// The rollers in sight, in their order; across each pair in turn an outer or an inner link.
    pub rollers: Vec<Seated>,
    /// Whether the first two rollers are held together by an inner link.
    pub inner_first: bool,
    /// Radius of a roller.
    pub roller_mm: f64,
    /// Radius of the pitch circle; the picture's origin is its topmost point.
    pub pitch_radius_mm: f64,
    /// Whether the higher rollers have truly come to the tips.
    pub past_tip: bool,
}

impl WheelView {
    /// The view of a worn chain.
    pub fn of(tired: &Tired) -> Self {
        let (wheel, form) = (tired.wheel(), Form::Least);
        let times = times(tired);
        let drawn = Climb::of(&wheel, form, f64::from(times) * tired.length.joint_wear_mm);
        let (truth, seated_mm) = (tired.climb(), wheel.pitch_radius_mm());
        let top = Point::new(0.0, -seated_mm);
        let roller = |gap: i32| {
            let high = gap.rem_euclid(2) == 1;
            let (radius, lean, true_mm) = if high {
                (drawn.high_mm, drawn.high_rad, truth.high_mm)
            } else {
                (drawn.low_mm, drawn.low_rad, truth.low_mm)
            };
            let angle = FRAC_PI_2 + f64::from(gap) * wheel.articulation_rad() + lean;
            let (sin, cos) = libm::sincos(angle);
            let rise_mm = (true_mm - seated_mm).max(0.0);
            Seated { x_mm: radius * cos, y_mm: -(radius * sin + top.y), high, rise_mm }
        };
        let gaps = GAPS as i32;
        Self {
            times,
            teeth: wheel.teeth,
            shapes: shapes(&wheel, form, top),
            rollers: (-gaps..=gaps).map(roller).collect(),
            // A low roller and the high one after it lean apart: an outer link holds them.
            inner_first: (-gaps).rem_euclid(2) == 1,
            roller_mm: 0.5 * wheel.roller_diameter_mm,
            pitch_radius_mm: seated_mm,
            past_tip: truth.past_tip,
        }
    }
}

/// The largest whole factor that leaves the rollers on their flanks; 1 once they have left them.
fn times(tired: &Tired) -> u32 {
    let held_mm = MOST_SHARE * tired.passing_fraction() * tired.sizes.pitch_mm;
    let fits = |times: &u32| f64::from(*times) * tired.length.joint_wear_mm <= held_mm;
    (1..=MOST_TIMES).take_while(fits).last().unwrap_or(1)
}

fn shapes(wheel: &Wheel, form: Form, moved: Point) -> Vec<Shape> {
    let teeth = Seat::of(wheel, form).stretch(wheel, GAPS, FRAC_PI_2);
    let (mut circle, half) = (Pen::new(), f64::from(GAPS) * wheel.articulation_rad());
    let radius = wheel.pitch_radius_mm();
    let start = FRAC_PI_2 - half;
    circle.go(radius * libm::cos(start), radius * libm::sin(start));
    circle.arc((0.0, 0.0), radius, start, 2.0 * half);
    vec![Shape::new("teeth", &teeth.steps, moved), Shape::new("pitch", &circle.steps, moved)]
}

/// Heights of the rollers above the pitch circle as wear grows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Height {
    /// Wear of a joint.
    pub wear_mm: f64,
    /// Of the lower rollers.
    pub low_mm: f64,
    /// Of the higher ones.
    pub high_mm: f64,
}

/// Heights up to the tips of the teeth, in so many steps.
pub(super) fn heights(wheel: &Wheel, steps: u32) -> Vec<Height> {
    let seated_mm = wheel.pitch_radius_mm();
    let highest_mm = Perch::of(wheel, Form::Least).highest_mm();
    let at = |i: u32| {
        let share = f64::from(i) / f64::from(steps);
        let high_mm = seated_mm + share * (highest_mm - seated_mm);
        let (wear_mm, low_mm) = Climb::under(wheel, Form::Least, high_mm);
        Height {
            wear_mm: wear_mm.max(0.0) + 0.0,
            low_mm: (low_mm - seated_mm).max(0.0) + 0.0,
            high_mm: high_mm - seated_mm,
        }
    };
    (0..=steps).map(at).collect()
}
