//! A roller pushed against the working flank of its tooth gap, at any height above the seat.
//!
//! In axes whose first points outward through the middle of the gap: while a roller of diameter d1
//! touches the seat, its centre is e = seat radius - d1/2 from the seat's; while it touches the
//! flank, flank radius + d1/2 from the flank's. Derived from the form of the gap.

use super::seat::{Form, Gap, Seat};
use super::wheel::Wheel;
use crate::plane::Point;
use core::f64::consts::PI;

/// Where a roller can stand against one flank of a gap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Perch {
    /// Of the seated pin, mm: the pitch radius.
    seated_mm: f64,
    /// From the seat's centre to that of a roller that touches it, mm.
    play_mm: f64,
    /// Centre of the flank's arc.
    flank: Point,
    /// From there to the centre of a roller that touches the flank, mm.
    reach_mm: f64,
    /// Radius of a roller's centre where seat and flank meet, mm.
    meet_mm: f64,
    /// Radius of a roller's centre at the end of the flank, mm.
    highest_mm: f64,
}

impl Perch {
    /// The perch of a wheel's gaps in one of the forms that the standard allows.
    pub fn of(wheel: &Wheel, form: Form) -> Self {
        let seat = Seat::of(wheel, form);
        let gap = Gap::of(&seat, wheel);
        let roller_mm = 0.5 * wheel.roller_diameter_mm;
        let (play_mm, flank) = (gap.seat_mm - roller_mm, gap.flank_centre());
        let reach_mm = gap.flank_mm + roller_mm;
        let away = |angle_rad: f64, from: Point, by_mm: f64| {
            let (sin, cos) = libm::sincos(angle_rad);
            (from + by_mm * Point::new(cos, sin)).length()
        };
        let seated = Point::new(gap.roller_mm, 0.0);
        Self {
            seated_mm: gap.roller_mm,
            play_mm,
            flank,
            reach_mm,
            meet_mm: away(PI - gap.half_seat_rad, seated, play_mm),
            highest_mm: away(gap.flank_rad - gap.half_seat_rad, flank, reach_mm),
        }
    }

    /// Radius of the roller's centre at the bottom of the seat, mm.
    pub fn lowest_mm(&self) -> f64 {
        self.seated_mm - self.play_mm
    }

    /// Radius of the roller's centre where it leaves the flank at the tooth's tip, mm.
    pub fn highest_mm(&self) -> f64 {
        self.highest_mm
    }

    /// How far from the middle of the gap a roller stands, rad, with its centre at a radius, mm.
    pub fn lean_rad(&self, radius_mm: f64) -> f64 {
        if radius_mm < self.meet_mm {
            return apex_rad(radius_mm, self.seated_mm, self.play_mm);
        }
        let far_mm = self.flank.length();
        let to_flank_rad = libm::atan2(self.flank.y, self.flank.x);
        to_flank_rad - apex_rad(radius_mm, far_mm, self.reach_mm)
    }
}

/// The angle between two sides of a triangle, rad, from their lengths and that of the side across.
fn apex_rad(one: f64, other: f64, across: f64) -> f64 {
    let cos = (one * one + other * other - across * across) / (2.0 * one * other);
    libm::acos(cos.clamp(-1.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_roller_rises_from_the_middle_of_its_seat_to_the_tip_of_the_tooth() {
        for teeth in [7, 11, 16, 44, 104] {
            let wheel = Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
            for form in [Form::Least, Form::Most] {
                let perch = Perch::of(&wheel, form);
                let (low, high) = (perch.lowest_mm(), perch.highest_mm());
                assert!(low < wheel.pitch_radius_mm() && wheel.pitch_radius_mm() < high);
                assert!(perch.lean_rad(low).abs() < 1e-6);
                let steps = 200;
                let at = |i: i32| low + (high - low) * f64::from(i) / f64::from(steps);
                for i in 0..steps {
                    assert!(perch.lean_rad(at(i)) < perch.lean_rad(at(i + 1)), "{teeth} {i}");
                }
                assert!(perch.lean_rad(high) < 0.5 * wheel.articulation_rad());
            }
        }
    }

    #[test]
    fn seat_and_flank_give_one_lean_where_they_meet() {
        let wheel = Wheel { teeth: 17, pitch_mm: 12.7, roller_diameter_mm: 8.51 };
        let perch = Perch::of(&wheel, Form::Most);
        let step = 1e-9;
        let jump = perch.lean_rad(perch.meet_mm + step) - perch.lean_rad(perch.meet_mm - step);
        assert!(jump.abs() < 1e-7, "{jump}");
    }
}
