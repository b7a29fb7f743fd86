//! Watts, turns a minute and teeth to newtons and back; how far a pin rolls.

use crate::sprocket::Wheel;

/// A wheel that turns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turning {
    /// The wheel.
    pub wheel: Wheel,
    /// Its speed.
    pub turns_per_minute: f64,
}

/// Seconds in a minute.
const SECONDS_PER_MINUTE: f64 = 60.0;
/// Millimetres in a metre.
const MM_PER_M: f64 = 1000.0;

impl Turning {
    /// Pitches that pass in a second: z n.
    pub fn pitches_per_s(&self) -> f64 {
        self.wheel.z() * self.turns_per_minute / SECONDS_PER_MINUTE
    }

    /// Mean speed of the chain, m/s: z p n.
    pub fn chain_m_per_s(&self) -> f64 {
        self.pitches_per_s() * self.wheel.pitch_mm / MM_PER_M
    }

    /// Pull of the tight strand less that of the slack one, N, that carries a power, W: P / v.
    pub fn net_n(&self, watts: f64) -> f64 {
        watts / self.chain_m_per_s()
    }

    /// Power, W, that such a difference of pulls, N, carries.
    pub fn watts(&self, net_n: f64) -> f64 {
        net_n * self.chain_m_per_s()
    }
}

/// How far a folding joint's pin rolls up its bore before it slides, rad: atan(mu) c/d2, c the
/// clearance, d2 the pin's diameter. Real, and tiny beside the angle that it folds by.
///
/// Derived: rolling moves the contact round the bore by up to the friction angle; a pin that rolls
/// inside a larger circle turns by the difference of the radii.
pub fn pin_roll_rad(pin_friction: f64, clearance_mm: f64, pin_diameter_mm: f64) -> f64 {
    libm::atan(pin_friction) * clearance_mm / pin_diameter_mm
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_hundred_watts_at_ninety_turns_on_forty_four_teeth_pull_239_newtons() {
        let wheel = Wheel { teeth: 44, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
        let turning = Turning { wheel, turns_per_minute: 90.0 };
        let net_n = turning.net_n(200.0);
        assert!((net_n - 239.0).abs() < 0.5, "{net_n}");
        assert!((turning.watts(net_n) - 200.0).abs() < 1e-12 * 200.0);
    }

    #[test]
    fn a_pin_rolls_less_than_a_thousandth_of_a_turn() {
        let rolled = pin_roll_rad(0.1, 0.025, 3.6);
        assert!((rolled - 0.1 * 0.025 / 3.6).abs() < 0.01 * rolled && rolled < 1e-3);
    }
}
