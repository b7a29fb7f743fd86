//! The polygon that a chain makes on a wheel when its pitches alternate.

use crate::sprocket::Wheel;
use core::f64::consts::PI;

/// Corners on one circle, chords alternately short and long.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Polygon {
    /// Radius of the circle, mm.
    pub radius_mm: f64,
    /// Angle of a short chord at the centre, rad.
    pub short_rad: f64,
    /// Angle of a long chord, rad.
    pub long_rad: f64,
    /// Whether it closes. Of an odd number of teeth it is an open arc: the short and the long chord
    /// do not come out even, and somewhere two of a kind follow each other.
    pub closes: bool,
}

impl Polygon {
    /// The polygon of alternating chords a and b that takes two of them to two teeth:
    /// R = sqrt(a^2 + b^2 + 2 a b cos(2 pi/z)) / (2 sin(2 pi/z)).
    ///
    /// Derived: two chords that follow each other turn by 2 pi/z at the corner between them, and
    /// their ends are 4 pi/z apart on the circle. At a = b = p it is the pitch circle.
    pub fn of(teeth: u32, short_mm: f64, long_mm: f64) -> Self {
        let (a, b) = (short_mm, long_mm);
        let (sin, cos) = libm::sincos(2.0 * PI / f64::from(teeth));
        let radius_mm = (a * a + b * b + 2.0 * a * b * cos).sqrt() / (2.0 * sin);
        let angle = |chord: f64| 2.0 * libm::asin((0.5 * chord / radius_mm).min(1.0));
        let closes = teeth.is_multiple_of(2);
        Self { radius_mm, short_rad: angle(a), long_rad: angle(b), closes }
    }
}

/// How far wear lifts a chain on its wheel, mm: the polygon's radius for pitches p and p + 2 w, less
/// that of the wheel's pitch circle.
pub fn rise_mm(wheel: &Wheel, joint_wear_mm: f64) -> f64 {
    let p = wheel.pitch_mm;
    let worn = Polygon::of(wheel.teeth, p, p + 2.0 * joint_wear_mm);
    (worn.radius_mm - wheel.pitch_radius_mm()).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROUNDING: f64 = 1e-10;

    #[test]
    fn equal_chords_stand_on_the_pitch_circle() {
        for teeth in [5, 8, 17, 44, 151] {
            let wheel = Wheel { teeth, pitch_mm: 25.4, roller_diameter_mm: 15.875 };
            let polygon = Polygon::of(teeth, 25.4, 25.4);
            assert!((polygon.radius_mm - wheel.pitch_radius_mm()).abs() < ROUNDING);
            assert!(rise_mm(&wheel, 0.0).abs() < ROUNDING);
        }
    }

    #[test]
    fn an_even_polygon_of_alternating_chords_closes_after_one_turn() {
        for teeth in [6_u32, 8, 16, 44, 104] {
            let polygon = Polygon::of(teeth, 12.7, 13.2);
            let turn = 0.5 * f64::from(teeth) * (polygon.short_rad + polygon.long_rad);
            assert!((turn - 2.0 * PI).abs() < ROUNDING, "{teeth} {turn}");
            assert!(polygon.closes && !Polygon::of(teeth + 1, 12.7, 13.2).closes);
        }
    }

    #[test]
    fn a_chain_rises_by_its_elongation_of_the_radius() {
        // To first order R grows as the mean chord: R w / p.
        let wheel = Wheel { teeth: 16, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
        let (w, r) = (0.06, wheel.pitch_radius_mm());
        assert!((rise_mm(&wheel, w) / (r * w / 12.7) - 1.0).abs() < 1e-3);
    }
}
