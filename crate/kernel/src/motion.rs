//! A movement as a pure function of time: no clock is read here.
//!
//! Flexing goes to and fro between the two stops as a sine; bending goes from straight to bent and
//! back as a raised cosine, since a joint on a wheel bends one way.

use crate::posing::Mode;
use core::f64::consts::TAU;
use serde::Serialize;

/// A movement to and fro.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    /// What moves.
    pub mode: Mode,
    /// The share of the stop that it reaches, 0 to 1.
    pub amplitude: f64,
    /// Time for one movement to and fro, s; positive.
    pub period_s: f64,
}

impl Motion {
    /// The share of the movement at a time, s: 0 at time 0.
    pub fn share(&self, time_s: f64) -> f64 {
        let angle = TAU * time_s / self.period_s;
        let unit = match self.mode {
            mode if mode.runs_one_way() => 0.5 * (1.0 - libm::cos(angle)),
            _ => libm::sin(angle),
        };
        self.amplitude * unit
    }

    /// The first time, s, at which the movement has a share: where a movement goes on from. A share
    /// beyond the amplitude is taken as the amplitude.
    pub fn time_s(&self, share: f64) -> f64 {
        if self.amplitude == 0.0 {
            return 0.0;
        }
        let unit = (share / self.amplitude).max(self.mode.least_share()).min(1.0);
        let angle = match self.mode {
            mode if mode.runs_one_way() => libm::acos(1.0 - 2.0 * unit),
            _ => libm::asin(unit),
        };
        angle * self.period_s / TAU
    }
}

/// How long the movement on arrival takes, s.
pub const OPENING_S: f64 = 2.4;

/// The movement on arrival: straight, a swing to the stop, then the touching faces light up one by
/// one. After [`OPENING_S`] it is over.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Opening {
    /// Share of the movement, 0 to 1.
    pub share: f64,
    /// How many of the touching faces are lit.
    pub lit: usize,
}

impl Opening {
    /// The state at a time, s, when `touching` faces touch at the stop.
    pub fn at(time_s: f64, touching: usize) -> Self {
        const SWING: [f64; 2] = [0.12, 0.6];
        const LIGHTS: [f64; 2] = [0.6, 0.9];
        let within =
            |[from, to]: [f64; 2]| ((time_s / OPENING_S - from) / (to - from)).clamp(0.0, 1.0);
        let swing = within(SWING);
        let share = swing * swing * (3.0 - 2.0 * swing);
        let lights = within(LIGHTS) * touching as f64;
        Self { share, lit: libm::ceil(lights) as usize }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_movement_goes_on_from_any_share() {
        for mode in Mode::ALL {
            let motion = Motion { mode: *mode, amplitude: 0.8, period_s: 3.0 };
            for i in 0..=10 {
                let share = 0.8 * f64::from(i) / 10.0;
                assert!((motion.share(motion.time_s(share)) - share).abs() < 1e-12);
            }
            assert!(motion.share(0.0).abs() < 1e-15);
            assert!((motion.share(4.0) - motion.share(1.0)).abs() < 1e-12, "periodic");
        }
    }

    #[test]
    fn bending_goes_one_way_only() {
        let motion = Motion { mode: Mode::Bend, amplitude: 1.0, period_s: 2.0 };
        assert!((0..100).all(|i| motion.share(0.05 * f64::from(i)) >= 0.0));
        assert!((motion.share(1.0) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_opening_starts_straight_and_ends_at_the_stop_with_every_face_lit() {
        assert_eq!(Opening::at(0.0, 4), Opening { share: 0.0, lit: 0 });
        assert_eq!(Opening::at(OPENING_S, 4), Opening { share: 1.0, lit: 4 });
        let mut last = Opening::at(0.0, 4);
        for i in 1..=240 {
            let now = Opening::at(0.01 * f64::from(i), 4);
            assert!(now.share >= last.share && now.lit >= last.lit);
            assert!(
                now.lit == 0 || now.share > 1.0 - 1e-12,
                "faces light after the stop is reached"
            );
            last = now;
        }
    }
}
