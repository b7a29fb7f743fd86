//! The wheels: what a wheel of z teeth does to a chain, the form of its teeth, and how two of them
//! stand in a drive.
//!
//! Letters: p pitch, z teeth, d1 roller diameter, d pitch diameter, phi pressure angle. Lengths in
//! mm, angles in rad.

mod layout;
mod perch;
mod seat;
mod wheel;

pub use layout::{Layout, WheelPlace};
pub use perch::Perch;
pub use seat::{Form, Seat};
pub use wheel::Wheel;

/// Width of a tooth when nobody states it, mm: 0.93 b1 up to a pitch of 12.7 mm, 0.95 b1 above.
///
/// Source: ISO 606, from memory.
pub fn default_tooth_width_mm(pitch_mm: f64, inner_width_mm: f64) -> f64 {
    const NARROW_UP_TO_MM: f64 = 12.7;
    const NARROW: f64 = 0.93;
    const WIDE: f64 = 0.95;
    inner_width_mm * if pitch_mm <= NARROW_UP_TO_MM { NARROW } else { WIDE }
}

/// How far an inner link can slide on a tooth, mm each way: (b1 - tooth width)/2.
pub fn tooth_float_mm(inner_width_mm: f64, tooth_width_mm: f64) -> f64 {
    0.5 * (inner_width_mm - tooth_width_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_default_tooth_fills_nearly_the_whole_inner_width() {
        const ROUNDING: f64 = 1e-12;
        assert!((default_tooth_width_mm(12.7, 2.4) - 2.232).abs() < ROUNDING);
        assert!((default_tooth_width_mm(19.05, 12.7) - 12.065).abs() < ROUNDING);
        assert!((tooth_float_mm(2.4, 2.232) - 0.084).abs() < ROUNDING);
    }
}
