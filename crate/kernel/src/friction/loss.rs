//! What a drive of two wheels loses at its joints.
//!
//! While the chain moves on by one pitch, one joint folds where each strand runs onto or off each
//! wheel: four times in all, twice on the tight strand and twice on the slack one. The power that is
//! carried is (T - Ts) v, so that a loss is the work of one pitch over (T - Ts) p, T the tight
//! pull, Ts the slack one.

use super::joint::{JointLoad, Rubbing};
use crate::sprocket::Wheel;

/// A drive that runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Running {
    /// The wheel that pulls.
    pub driver: Wheel,
    /// The wheel that is pulled.
    pub driven: Wheel,
    /// Pull T of the tight strand, N; greater than the slack one's.
    pub tight_n: f64,
    /// Pull Ts of the slack strand, N.
    pub slack_n: f64,
    /// What rubs in a joint.
    pub rubbing: Rubbing,
}

impl Running {
    /// T - Ts, N.
    pub fn net_n(&self) -> f64 {
        self.tight_n - self.slack_n
    }

    /// Work that the chain carries over one pitch, N mm.
    fn carried_n_mm(&self) -> f64 {
        self.net_n() * self.driver.pitch_mm
    }

    /// Loss at pins and faces in a straight line, as a fraction of the power carried:
    /// 2 pi mu (r/p) (1/z1 + 1/z2) (T + Ts) / (T - Ts), r the pin's radius. Derived.
    pub fn straight_fraction(&self) -> f64 {
        self.offset_fraction(&[JointLoad::straight(self.tight_n); 2])
    }

    /// Loss at pins and faces when the tight strand's first joint, at the driver, and its last, at
    /// the driven wheel, are loaded like this, as a fraction of the power carried:
    /// (a1 M1 + a2 Mn + (a1 + a2) mu r Ts) / ((T - Ts) p), a1 and a2 the articulations, M a joint's
    /// moment of friction.
    pub fn offset_fraction(&self, ends: &[JointLoad; 2]) -> f64 {
        self.tight_fraction(ends) + self.slack_fraction()
    }

    /// The tight strand's part of the loss.
    fn tight_fraction(&self, ends: &[JointLoad; 2]) -> f64 {
        let moment = |load| self.rubbing.moment_n_mm(load);
        let (first, last) = (moment(&ends[0]), moment(&ends[1]));
        let work = self.driver.articulation_rad() * first + self.driven.articulation_rad() * last;
        work / self.carried_n_mm()
    }

    /// The slack strand's part of the loss, straight.
    pub fn slack_fraction(&self) -> f64 {
        let moment = self.rubbing.moment_n_mm(&JointLoad::straight(self.slack_n));
        let folds = self.driver.articulation_rad() + self.driven.articulation_rad();
        folds * moment / self.carried_n_mm()
    }

    /// Loss at the rollers, as a fraction of the power carried; the offset does not change it here.
    pub fn roller_fraction(&self) -> f64 {
        let at = |wheel: &Wheel| {
            let push_n = wheel.tooth_push_ratio() * (self.tight_n + self.slack_n);
            self.rubbing.roller_moment_n_mm(push_n) * wheel.articulation_rad()
        };
        (at(&self.driver) + at(&self.driven)) / self.carried_n_mm()
    }

    /// Loss at the joints of guide wheels in the slack strand with so many teeth each, as a
    /// fraction of the power carried: each wheel folds every joint twice more, at the slack pull.
    /// Their own bearings are left out.
    pub fn guide_fraction(&self, teeth: &[u32]) -> f64 {
        let moment = self.rubbing.moment_n_mm(&JointLoad::straight(self.slack_n));
        let fold = |teeth: &u32| 2.0 * Wheel { teeth: *teeth, ..self.driver }.articulation_rad();
        teeth.iter().map(fold).sum::<f64>() * moment / self.carried_n_mm()
    }
}

/// The handbook order of mu for lubricated steel, from memory, and what a loss that grows with mu
/// becomes at its ends, from the loss at `mu`. None where `mu` is zero.
pub fn friction_band(loss: f64, mu: f64) -> Option<[f64; 2]> {
    const LOW: f64 = 0.08;
    const HIGH: f64 = 0.16;
    (mu > 0.0).then(|| [loss * LOW / mu, loss * HIGH / mu])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::friction::Coefficients;
    use core::f64::consts::PI;

    fn running(tight_n: f64, slack_n: f64) -> Running {
        let wheel = |teeth| Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
        let rubbing = Rubbing {
            friction: Coefficients { pin: 0.1, face: 0.12, roller: 0.1 },
            pin_radius_mm: 1.8,
            barrel_radius_mm: 2.5,
            roller_radius_mm: 3.875,
            rollers_turn: true,
        };
        Running { driver: wheel(44), driven: wheel(16), tight_n, slack_n, rubbing }
    }

    #[test]
    fn a_straight_drive_loses_what_the_closed_form_says() {
        const ROUNDING: f64 = 1e-12;
        for (tight_n, slack_n) in [(300.0, 0.0), (300.0, 20.0), (1.0, 0.9)] {
            let sides = (tight_n + slack_n) / (tight_n - slack_n);
            let closed = 2.0 * PI * 0.1 * (1.8 / 12.7) * (1.0 / 44.0 + 1.0 / 16.0) * sides;
            let got = running(tight_n, slack_n).straight_fraction();
            assert!((got - closed).abs() < ROUNDING * closed, "{got} {closed}");
        }
        let percent = 100.0 * running(300.0, 0.0).straight_fraction();
        assert!((percent - 0.76).abs() < 0.005, "{percent}");
    }

    #[test]
    fn the_loss_does_not_depend_on_the_pull_but_on_its_ratio() {
        let (one, ten) = (running(100.0, 10.0), running(1000.0, 100.0));
        assert!((one.straight_fraction() - ten.straight_fraction()).abs() < 1e-15);
        assert!((one.roller_fraction() - ten.roller_fraction()).abs() < 1e-15);
        assert!((one.guide_fraction(&[11, 11]) - ten.guide_fraction(&[11, 11])).abs() < 1e-15);
    }

    #[test]
    fn each_end_counts_by_its_own_wheel() {
        let running = running(300.0, 0.0);
        let (straight, twice) = (JointLoad::straight(300.0), JointLoad::straight(600.0));
        let base = running.straight_fraction();
        let at_driver = running.offset_fraction(&[twice, straight]) - base;
        let at_driven = running.offset_fraction(&[straight, twice]) - base;
        assert!((at_driven / at_driver - 44.0 / 16.0).abs() < 1e-9);
        assert!((at_driver + at_driven - base).abs() < 1e-15);
    }

    #[test]
    fn guide_wheels_fold_each_joint_twice_at_the_slack_pull() {
        let running = running(300.0, 20.0);
        let expected = 2.0 * 2.0 * (2.0 * PI / 11.0) * 0.1 * 20.0 * 1.8 / (280.0 * 12.7);
        assert!((running.guide_fraction(&[11, 11]) - expected).abs() < 1e-15);
    }
}
