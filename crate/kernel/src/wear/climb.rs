//! How the rollers of a worn chain ride up the teeth.
//!
//! Every roller is pushed against the working flank of its own gap. Rollers at the same height would
//! stand equally far apart, but a worn chain's pitches alternate: so every second roller rides
//! higher, and leans further out of its gap, than the ones between. With R1 < R2 their radii, phi(R)
//! the lean of a roller at R and d = phi(R2) - phi(R1):
//!
//! - p^2 = R1^2 + R2^2 - 2 R1 R2 cos(2 pi/z - d) across an inner link,
//! - (p + 2 w)^2 = R1^2 + R2^2 - 2 R1 R2 cos(2 pi/z + d) across an outer one.
//!
//! Static and rigid; the load that each tooth takes, and what worn teeth do, are left out. Derived.

use crate::solve::root_between;
use crate::sprocket::{Form, Perch, Wheel};

/// Two neighbouring rollers on their flanks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Climb {
    /// Radius of the lower roller's centre, mm.
    pub low_mm: f64,
    /// Radius of the higher one's, mm.
    pub high_mm: f64,
    /// How far the lower one leans out of its gap, rad.
    pub low_rad: f64,
    /// How far the higher one does, rad.
    pub high_rad: f64,
    /// Radius of the polygon of equal heights, less the pitch radius, mm.
    pub rise_mm: f64,
    /// Whether the higher one has come to the tip of its tooth: past it nothing holds it.
    pub past_tip: bool,
}

/// A chain of pitch p on a wheel of one form.
struct Rack {
    perch: Perch,
    pitch_mm: f64,
    alpha_rad: f64,
}

/// Width of a root, mm: rounding of a pitch radius.
const ROOT_MM: f64 = 1e-12;

impl Rack {
    fn of(wheel: &Wheel, form: Form) -> Self {
        let perch = Perch::of(wheel, form);
        Self { perch, pitch_mm: wheel.pitch_mm, alpha_rad: wheel.articulation_rad() }
    }

    /// Distance of two neighbouring rollers, mm, `sense` 1 where the higher leans away, -1 where it
    /// leans towards the lower.
    fn chord_mm(&self, low_mm: f64, high_mm: f64, sense: f64) -> f64 {
        let lean_rad = self.perch.lean_rad(high_mm) - self.perch.lean_rad(low_mm);
        let cos = libm::cos(self.alpha_rad + sense * lean_rad);
        (low_mm * low_mm + high_mm * high_mm - 2.0 * low_mm * high_mm * cos).max(0.0).sqrt()
    }

    /// Where the lower roller stands, mm, given the higher one: an inner link holds them p apart.
    fn low_mm(&self, high_mm: f64) -> f64 {
        let lowest_mm = self.perch.lowest_mm();
        let short = |low_mm: f64| self.chord_mm(low_mm, high_mm, -1.0) - self.pitch_mm;
        if short(lowest_mm) >= 0.0 {
            return lowest_mm;
        }
        if short(high_mm) <= 0.0 {
            return high_mm;
        }
        root_between(short, lowest_mm, high_mm, ROOT_MM).at
    }

    /// Wear, mm, that puts the higher roller at a radius.
    fn wear_mm(&self, high_mm: f64) -> f64 {
        0.5 * (self.chord_mm(self.low_mm(high_mm), high_mm, 1.0) - self.pitch_mm)
    }
}

/// Wear of a joint, mm, at which every second roller comes to the tip of its tooth.
pub fn passing_wear_mm(wheel: &Wheel, form: Form) -> f64 {
    let rack = Rack::of(wheel, form);
    rack.wear_mm(rack.perch.highest_mm()).max(0.0)
}

impl Climb {
    /// Wear of a joint, mm, that puts the higher rollers at a radius, and the radius of the lower
    /// ones, mm.
    pub fn under(wheel: &Wheel, form: Form, high_mm: f64) -> (f64, f64) {
        let rack = Rack::of(wheel, form);
        (rack.wear_mm(high_mm), rack.low_mm(high_mm))
    }

    /// How a chain of such a wear stands on a wheel.
    pub fn of(wheel: &Wheel, form: Form, joint_wear_mm: f64) -> Self {
        let rack = Rack::of(wheel, form);
        let (seated_mm, highest_mm) = (wheel.pitch_radius_mm(), rack.perch.highest_mm());
        let over = |high_mm: f64| rack.wear_mm(high_mm) - joint_wear_mm;
        let past_tip = over(highest_mm) <= 0.0;
        let high_mm = match () {
            () if past_tip => highest_mm,
            () if over(seated_mm) >= 0.0 => seated_mm,
            () => root_between(over, seated_mm, highest_mm, ROOT_MM).at,
        };
        let low_mm = rack.low_mm(high_mm);
        Self {
            low_mm,
            high_mm,
            low_rad: rack.perch.lean_rad(low_mm),
            high_rad: rack.perch.lean_rad(high_mm),
            rise_mm: super::rise_mm(wheel, joint_wear_mm),
            past_tip,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wheel(teeth: u32) -> Wheel {
        Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 }
    }

    #[test]
    fn both_pitches_come_out_as_they_are() {
        for teeth in [9, 11, 16, 17, 44, 104] {
            for form in [Form::Least, Form::Most] {
                for share in [0.0, 0.1, 0.5, 0.9] {
                    let w = share * passing_wear_mm(&wheel(teeth), form);
                    let climb = Climb::of(&wheel(teeth), form, w);
                    let lean = climb.high_rad - climb.low_rad;
                    let chord = |angle: f64| {
                        let (r, q) = (climb.low_mm, climb.high_mm);
                        (r * r + q * q - 2.0 * r * q * libm::cos(angle)).sqrt()
                    };
                    let alpha = wheel(teeth).articulation_rad();
                    assert!((chord(alpha - lean) - 12.7).abs() < 1e-9, "{teeth} {form:?} {share}");
                    assert!((chord(alpha + lean) - 12.7 - 2.0 * w).abs() < 1e-8, "{teeth} {share}");
                    assert!(!climb.past_tip);
                }
            }
        }
    }

    #[test]
    fn heights_stand_about_the_polygon_of_equal_heights_and_grow_with_wear() {
        let mut last = Climb::of(&wheel(16), Form::Least, 0.0);
        assert!((last.high_mm - last.low_mm).abs() < 1e-6 && last.rise_mm.abs() < 1e-9);
        for i in 1..20 {
            let climb = Climb::of(&wheel(16), Form::Least, 0.02 * f64::from(i));
            let mean_mm = 0.5 * (climb.low_mm + climb.high_mm) - wheel(16).pitch_radius_mm();
            // Heights that differ lie on no one circle; the difference is of second order.
            let apart_mm = climb.high_mm - climb.low_mm;
            assert!((mean_mm - climb.rise_mm).abs() < 0.1 * apart_mm, "{mean_mm} {climb:?}");
            assert!(climb.high_mm > last.high_mm && climb.rise_mm > last.rise_mm);
            assert!(climb.high_mm > climb.low_mm);
            last = climb;
        }
    }

    #[test]
    fn a_large_wheel_gives_up_near_the_rule_of_two_hundred_over_its_teeth() {
        // 200/z %: public notes on ANSI B29.1. It stands within what the lowest and the highest
        // teeth of the standard's form hold.
        for teeth in [68, 80, 104, 130, 150] {
            let holds = |form| {
                let w = passing_wear_mm(&wheel(teeth), form);
                f64::from(teeth) * w / 12.7
            };
            let (lowest, highest) = (holds(Form::Least), holds(Form::Most));
            println!("{teeth} teeth: {lowest} to {highest} over z");
            assert!(lowest > 1.7 && lowest < 2.0 && highest > 2.0 && highest < 2.4, "{teeth}");
        }
    }

    #[test]
    fn the_more_teeth_the_sooner_a_chain_is_past_their_tips() {
        let mut before = f64::MAX;
        for teeth in [11, 16, 25, 44, 67, 104, 150] {
            let w = passing_wear_mm(&wheel(teeth), Form::Least);
            assert!(w > 0.0 && w < before, "{teeth} {w}");
            assert!(Climb::of(&wheel(teeth), Form::Least, 1.01 * w).past_tip);
            before = w;
        }
    }
}
