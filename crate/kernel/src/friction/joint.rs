//! One joint that folds under a load.

/// Coefficients of dry friction, mu. For lubricated steel 0.08 to 0.16 is a handbook order, from
/// memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coefficients {
    /// Pin in bore.
    pub pin: f64,
    /// Inner plate on outer plate.
    pub face: f64,
    /// Roller on barrel; also a stuck roller on its tooth.
    pub roller: f64,
}

/// What presses at one joint of a strand.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct JointLoad {
    /// Sum of the forces between pin and bore, N, each taken as positive. The sum over both ends of
    /// a bore; of a collared chain over both plates.
    pub pin_n: f64,
    /// Sum of the forces between plate faces, N.
    pub face_n: f64,
    /// Sum of each face force times the distance of its contact from the pin's axis, N mm.
    pub face_moment_n_mm: f64,
}

impl JointLoad {
    /// A joint of a straight strand under a pull, N: the pin carries it, no face presses.
    pub fn straight(pull_n: f64) -> Self {
        Self { pin_n: pull_n, ..Self::default() }
    }

    /// A joint whose faces press at one distance from the pin's axis, mm.
    pub fn with_face(pin_n: f64, face_n: f64, arm_mm: f64) -> Self {
        Self { pin_n, face_n, face_moment_n_mm: face_n * arm_mm }
    }
}

/// The rubbing surfaces of a joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rubbing {
    /// Coefficients of friction.
    pub friction: Coefficients,
    /// Radius of the pin, mm.
    pub pin_radius_mm: f64,
    /// Radius of the barrel that the roller turns on, mm.
    pub barrel_radius_mm: f64,
    /// Radius of the roller, mm.
    pub roller_radius_mm: f64,
    /// Whether the rollers turn on their barrels; if not, they slide on the teeth.
    pub rollers_turn: bool,
}

/// Work of one joint folding once, N mm, which are thousandths of a joule.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Work {
    /// Pin in bore.
    pub pin_n_mm: f64,
    /// Plate on plate.
    pub face_n_mm: f64,
    /// Roller, averaged over engagements in which it slides and those in which it does not.
    pub roller_n_mm: f64,
}

impl Work {
    /// All of it.
    pub fn total_n_mm(&self) -> f64 {
        self.pin_n_mm + self.face_n_mm + self.roller_n_mm
    }
}

impl Rubbing {
    /// Moment of friction of a joint that folds, N mm: mu_pin N_pin r + mu_face sum(N R).
    pub fn moment_n_mm(&self, load: &JointLoad) -> f64 {
        self.pin_moment_n_mm(load) + self.face_moment_n_mm(load)
    }

    fn pin_moment_n_mm(&self, load: &JointLoad) -> f64 {
        self.friction.pin * load.pin_n * self.pin_radius_mm
    }

    fn face_moment_n_mm(&self, load: &JointLoad) -> f64 {
        self.friction.face * load.face_moment_n_mm
    }

    /// Moment of a roller's friction under the push of a tooth, N mm, averaged over engagements: it
    /// slides in half of them, on its barrel, or when it is stuck on the tooth, further out.
    pub fn roller_moment_n_mm(&self, tooth_push_n: f64) -> f64 {
        const SHARE_OF_ENGAGEMENTS: f64 = 0.5;
        let arm = if self.rollers_turn { self.barrel_radius_mm } else { self.roller_radius_mm };
        SHARE_OF_ENGAGEMENTS * self.friction.roller * tooth_push_n * arm
    }

    /// Work of a joint that folds by an angle, rad, on a tooth that pushes so hard, N.
    pub fn work(&self, load: &JointLoad, tooth_push_n: f64, articulation_rad: f64) -> Work {
        Work {
            pin_n_mm: self.pin_moment_n_mm(load) * articulation_rad,
            face_n_mm: self.face_moment_n_mm(load) * articulation_rad,
            roller_n_mm: self.roller_moment_n_mm(tooth_push_n) * articulation_rad,
        }
    }

    /// How many times as much the joint's own surfaces, pin and faces, take as in a straight strand
    /// under the same pull, N. The roller is left out: the offset does not change it here. None
    /// where a straight joint takes nothing.
    pub fn multiple(&self, load: &JointLoad, pull_n: f64) -> Option<f64> {
        let straight = self.moment_n_mm(&JointLoad::straight(pull_n));
        (straight > 0.0).then(|| self.moment_n_mm(load) / straight)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROUNDING: f64 = 1e-12;

    fn rubbing() -> Rubbing {
        Rubbing {
            friction: Coefficients { pin: 0.1, face: 0.12, roller: 0.1 },
            pin_radius_mm: 1.8,
            barrel_radius_mm: 2.5,
            roller_radius_mm: 3.875,
            rollers_turn: true,
        }
    }

    #[test]
    fn a_straight_joint_is_one_times_itself() {
        let multiple = rubbing().multiple(&JointLoad::straight(300.0), 300.0);
        assert_eq!(multiple.map(f64::to_bits), Some(1.0_f64.to_bits()));
    }

    #[test]
    fn pin_and_faces_add_up_by_force_coefficient_and_arm() {
        let load = JointLoad::with_face(2.118 * 300.0, 0.074 * 300.0, 4.2);
        let expected = 2.118 + 0.074 * 0.12 * 4.2 / (0.1 * 1.8);
        let multiple = rubbing().multiple(&load, 300.0).expect("a straight joint rubs");
        assert!((multiple - expected).abs() < ROUNDING);
        let work = rubbing().work(&load, 100.0, 0.4);
        assert!((work.pin_n_mm - 0.1 * 2.118 * 300.0 * 1.8 * 0.4).abs() < ROUNDING * 100.0);
        assert!((work.roller_n_mm - 0.5 * 0.1 * 100.0 * 2.5 * 0.4).abs() < ROUNDING * 100.0);
        let sum = work.pin_n_mm + work.face_n_mm + work.roller_n_mm;
        assert!((work.total_n_mm() - sum).abs() < ROUNDING);
    }

    #[test]
    fn a_stuck_roller_slides_further_out() {
        let stuck = Rubbing { rollers_turn: false, ..rubbing() };
        let ratio = stuck.roller_moment_n_mm(50.0) / rubbing().roller_moment_n_mm(50.0);
        assert!((ratio - 3.875 / 2.5).abs() < ROUNDING);
    }

    #[test]
    fn a_pin_without_friction_has_no_multiple() {
        let friction = Coefficients { pin: 0.0, ..rubbing().friction };
        let slippery = Rubbing { friction, ..rubbing() };
        assert_eq!(slippery.multiple(&JointLoad::with_face(300.0, 10.0, 4.0), 300.0), None);
    }
}
