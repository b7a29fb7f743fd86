//! The largest offset of a strand with rigid joints: how far its last link can be lifted aside.
//!
//! The last link, which a wheel holds at its offset otherwise, is let go and pushed aside until the gaps
//! allow no more; the faces that meet decide the pose, so a few rounds find it to the last digits. In a long
//! strand links could turn until it is folded back. No drive runs so: no link is let turn further than
//! 30 degrees out of line.

use super::link::MOST_ROW;
use super::{SLIDE_SHARE, Strand};
use crate::solve::{Problem, Start, Status};

/// No link yaws more than this, rad,
const MOST_YAW: f64 = core::f64::consts::FRAC_PI_6;
/// nor more than this in one round: in larger turns gaps are no straight lines.
const MOST_TURN: f64 = 0.2;
/// Rounds end when the last link is lifted by less than this, in pitches.
const STILL: f64 = 1e-6;
/// Rounds after which it is told how far the link has come.
const MOST_ROUNDS: u32 = 100;
/// What is left of a push that the solver could not answer.
const WEAKER: f64 = 0.25;
/// How much stronger it is in the next round where it could.
const STRONGER: f64 = 2.0;

impl Strand {
    /// The largest offset at which a rigid strand has a pose with no link more than 30 degrees out of line,
    /// mm; none for springy joints, which always give.
    pub fn largest_offset_mm(&self) -> Option<f64> {
        let rigid = self.setup.stiffness_n_mm.is_none();
        rigid.then(|| Self::new(&self.sizes, self.setup).lifted_mm())
    }

    /// Lifts the last link aside as far as the gaps allow.
    fn lifted_mm(&mut self) -> f64 {
        let (last, across) = (self.links.len() - 1, self.problem.unknowns());
        self.links[last].unknowns.across = Some(across);
        self.problem = Problem::new(across + 1, MOST_ROW - 1);
        self.slide_share = SLIDE_SHARE;
        self.lay_free(self.free_offset_mm());
        // In tensions: the weights of a step, made for one, are small beside a push that grows with the strand.
        let strongest = self.setup.joints as f64;
        let (mut start, mut push) = (Start::Cold, strongest);
        for _ in 0..MOST_ROUNDS {
            self.write_problem();
            self.problem.gradient_mut().fill(0.0);
            self.problem.gradient_mut()[across] = -push;
            self.bound_yaws();
            let report = self.solver.solve(&self.problem, start);
            start = Start::Warm;
            if !matches!(report.status, Status::Solved | Status::Unpolished) {
                push *= WEAKER;
                continue;
            }
            push = (STRONGER * push).min(strongest);
            for link in &mut self.links {
                link.step(self.solver.x(), 1.0, self.sizes.pitch_mm, self.spring_scale);
            }
            if self.solver.x()[across].abs() <= STILL * self.sizes.pitch_mm {
                break;
            }
        }
        self.links[last].across_mm
    }

    /// Adds the rows that keep links from turning too far.
    fn bound_yaws(&mut self) {
        for link in &self.links {
            let Some(yaw) = link.unknowns.yaw else { continue };
            for way in [1.0, -1.0] {
                let room_rad = (MOST_YAW - way * link.yaw_rad()).min(MOST_TURN);
                self.problem.push_row(yaw, &[-way], room_rad * self.sizes.pitch_mm);
            }
        }
    }
}
