//! Wheels and friction against published figures: `reference/drive.csv`.

use super::Sheet;
use crate::Row;
use core::f64::consts::PI;
use lightgap::friction::{
    Coefficients, Rubbing, Running, Turning, uniform_pressure_mm, uniform_wear_mm,
};
use lightgap::sprocket::{Form, Seat, Wheel};

const MM_PER_M: f64 = 1000.0;

/// The wheel that `pitch x teeth` names; its roller is 8.51 mm.
fn wheel(of: &str) -> Option<Wheel> {
    let (pitch, teeth) = of.split_once(" x ")?;
    let (pitch_mm, teeth) = (pitch.parse().ok()?, teeth.parse().ok()?);
    Some(Wheel { teeth, pitch_mm, roller_diameter_mm: 8.51 })
}

/// What the kernel says of a wheel, in the unit of the row.
fn of_wheel(what: &str, wheel: &Wheel) -> Option<f64> {
    let (least, most) = (Seat::of(wheel, Form::Least), Seat::of(wheel, Form::Most));
    Some(match what {
        "pitch_diameter" => wheel.pitch_diameter_mm(),
        "articulation" => wheel.articulation_rad().to_degrees(),
        "least_seat_radius" => least.seat_radius_mm,
        "largest_seat_radius" => most.seat_radius_mm,
        "largest_seat_angle" => least.seat_angle_rad.to_degrees(),
        "least_seat_angle" => most.seat_angle_rad.to_degrees(),
        "least_flank_radius" => most.flank_radius_mm,
        "largest_flank_radius" => least.flank_radius_mm,
        "root_diameter" => least.root_diameter_mm,
        "least_tip_diameter" => least.tip_diameter_mm,
        "largest_tip_diameter" => most.tip_diameter_mm,
        "over_pins" => wheel.over_pins_mm(),
        _ => return None,
    })
}

/// Moment, N m, of a ring under a load, N.
fn ring_moment(law: &str, load_n: f64, mu: f64, outer_mm: f64, inner_mm: f64) -> Option<f64> {
    let arm_mm = match law {
        "uniform pressure" => uniform_pressure_mm(outer_mm, inner_mm),
        "uniform wear" => uniform_wear_mm(outer_mm, inner_mm),
        _ => return None,
    };
    Some(mu * load_n * arm_mm / MM_PER_M)
}

/// The drive of 44 and 16 teeth, its slack strand without pull.
fn running() -> Running {
    let wheel = |teeth| Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
    let rubbing = Rubbing {
        friction: Coefficients { pin: 0.1, face: 0.12, roller: 0.1 },
        pin_radius_mm: 1.8,
        barrel_radius_mm: 2.5,
        roller_radius_mm: 3.875,
        rollers_turn: true,
    };
    let (driver, driven) = (wheel(44), wheel(16));
    Running { driver, driven, tight_n: 300.0, slack_n: 0.0, rubbing }
}

fn got(row: &Row) -> Option<f64> {
    const TURNS_PER_S: f64 = 100.0 / 60.0;
    const W_PER_KW: f64 = 1000.0;
    let collar = |law: &str| ring_moment(law, 120e3, 0.15, 300.0, 150.0);
    match row.what.as_str() {
        "collar_moment" => collar(&row.of),
        "collar_power" => Some(collar(&row.of)? * 2.0 * PI * TURNS_PER_S / W_PER_KW),
        "pivot_moment" => ring_moment(&row.of, 20e3, 0.05, 75.0, 0.0),
        "net_pull" => {
            Some(Turning { wheel: running().driver, turns_per_minute: 90.0 }.net_n(200.0))
        }
        "straight_loss" => Some(100.0 * running().straight_fraction()),
        what => of_wheel(what, &wheel(&row.of)?),
    }
}

pub(super) fn sheet() -> Sheet {
    Sheet::of_rows("Wheels and friction", "tests/reference/drive.csv", got)
}
