//! The solved strand between its wheels, in the plan section, as plain data for a drawing.
//!
//! First axis x along the strand, its first pin at 0; second y across. The view looks square to the
//! strand, so that a wheel's shaft lies where the strand leaves its pitch circle.

use super::ChainLine;
use crate::sprocket::Wheel;
use crate::strand::Solution;
use serde::Serialize;

/// A wheel seen from above the strand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WheelView {
    /// Its shaft, along.
    pub x_mm: f64,
    /// The middle of its teeth, across.
    pub y_mm: f64,
    /// Radius of its pitch circle.
    pub pitch_radius_mm: f64,
    /// Width of its teeth.
    pub tooth_width_mm: f64,
    /// How many.
    pub teeth: u32,
}

/// A joint of the strand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct JointView {
    /// The pin's centre, along.
    pub x_mm: f64,
    /// The pin's centre, across.
    pub y_mm: f64,
    /// Yaw of the link after it against the one before, anticlockwise.
    pub turn_rad: f64,
    /// Sum of the pin's contact forces.
    pub pin_n: f64,
    /// Sum of the plate faces' contact forces.
    pub face_n: f64,
    /// Times as much friction as in a straight line, if it folded; none without friction.
    pub friction_multiple: Option<f64>,
    /// How far the line of the pull passes from the pin's centre; the joint turns once it is
    /// farther than half the bearing width and its faces do not hold it.
    pub eccentricity_mm: f64,
}

/// The line of action of the force that the strand carries.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ThrustView {
    /// Where it crosses the first pin, across.
    pub start_y_mm: f64,
    /// Where it crosses the last pin, across.
    pub end_y_mm: f64,
}

/// Wheels, joints and the line of the pull.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineView {
    /// The wheel that pulls.
    pub driver: WheelView,
    /// The wheel that is pulled.
    pub driven: WheelView,
    /// Joints from the driver on.
    pub joints: Vec<JointView>,
    /// The line of the pull.
    pub thrust: ThrustView,
    /// Half of the width that bears on a pin.
    pub half_bearing_mm: f64,
}

impl LineView {
    /// The view of a solved strand at an offset of the wheels, mm.
    pub fn of(line: &ChainLine, solution: &Solution, offset_mm: f64) -> Self {
        let joints: Vec<_> = (0..solution.joint.len()).map(|i| joint(line, solution, i)).collect();
        let span_mm = joints.last().map_or(0.0, |last| last.x_mm);
        let thrust = &solution.thrust;
        let [driver, driven] = wheels(line, offset_mm, span_mm);
        Self {
            driver,
            driven,
            joints,
            thrust: ThrustView {
                start_y_mm: thrust.at_start_mm,
                end_y_mm: thrust.at_start_mm + thrust.slope * span_mm,
            },
            half_bearing_mm: 0.5 * line.sizes.bearing_width_mm(),
        }
    }

    /// Its mirror image along the strand: the view of the offset to the other side.
    #[must_use]
    pub fn mirrored(mut self) -> Self {
        // Taken from zero, so that no zero turns into -0.
        let flip = |value: &mut f64| *value = 0.0 - *value;
        for joint in &mut self.joints {
            flip(&mut joint.y_mm);
            flip(&mut joint.turn_rad);
            flip(&mut joint.eccentricity_mm);
        }
        flip(&mut self.driver.y_mm);
        flip(&mut self.driven.y_mm);
        flip(&mut self.thrust.start_y_mm);
        flip(&mut self.thrust.end_y_mm);
        self
    }
}

/// The wheels, half of the rest of the tangent before the first pin and behind the last. Each tooth
/// stands against a plate: the driver's on the side away from the offset.
fn wheels(line: &ChainLine, offset_mm: f64, span_mm: f64) -> [WheelView; 2] {
    let rest_mm = 0.5 * (line.layout.tangent_length_mm() - span_mm);
    let strand_mm = line.strand_offset_mm(offset_mm);
    let lag_mm = 0.5 * (offset_mm - strand_mm);
    let places = [(-rest_mm, -lag_mm), (span_mm + rest_mm, strand_mm + lag_mm)];
    let view = |wheel: &Wheel, (x_mm, y_mm): (f64, f64)| WheelView {
        x_mm,
        y_mm,
        pitch_radius_mm: wheel.pitch_radius_mm(),
        tooth_width_mm: line.tooth_width_mm,
        teeth: wheel.teeth,
    };
    [view(&line.layout.driver, places[0]), view(&line.layout.driven, places[1])]
}

fn joint(line: &ChainLine, solution: &Solution, i: usize) -> JointView {
    let at = solution.joint[i];
    let load = ChainLine::load_at(solution, i);
    JointView {
        x_mm: at.x,
        y_mm: at.y,
        turn_rad: solution.turn_rad[i],
        pin_n: load.pin_n,
        face_n: load.face_n,
        friction_multiple: line.multiple(&load),
        eccentricity_mm: solution.thrust.eccentricity_mm(at),
    }
}
