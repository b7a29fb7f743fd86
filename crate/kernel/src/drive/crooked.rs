//! The tight strand of a drive, solved at the drive's offset, and what it costs.

use super::curve::Variant;
use super::{ChainLine, Cost};
use crate::friction::JointLoad;
use crate::strand::{Ends, Outcome, Setup, Solution, Strand};

impl ChainLine {
    /// The tight strand, not yet solved: rigid without a stiffness.
    pub fn strand(&self, stiffness_n_mm: Option<f64>, ends: Ends) -> Strand {
        let tension_n = self.running.tight_n;
        let setup = Setup { joints: self.joints(), tension_n, stiffness_n_mm, ends };
        Strand::new(&self.sizes, setup)
    }

    /// What one joint of a solved strand, from 0, carries.
    pub fn load_at(solution: &Solution, joint: usize) -> JointLoad {
        let at = |forces: &[f64]| forces.get(joint).copied().unwrap_or(0.0);
        JointLoad {
            pin_n: at(&solution.pin_force_n),
            face_n: at(&solution.face_force_n),
            face_moment_n_mm: at(&solution.face_moment_n_mm),
        }
    }

    /// What the tight strand's first and last joint carry.
    pub fn end_loads(solution: &Solution) -> [JointLoad; 2] {
        let last = solution.pin_force_n.len().saturating_sub(1);
        [0, last].map(|joint| Self::load_at(solution, joint))
    }

    /// How many times as much as in a straight line each joint would take if it folded; empty where
    /// friction takes nothing of a straight joint.
    pub fn multiples(&self, solution: &Solution) -> Vec<f64> {
        let joints = 0..solution.pin_force_n.len();
        joints.filter_map(|joint| self.multiple(&Self::load_at(solution, joint))).collect()
    }

    /// What the two ends of a solved strand cost.
    pub fn cost_of(&self, solution: &Solution) -> Cost {
        self.cost(&Self::end_loads(solution))
    }

    /// The largest offset of the strand with rigid joints, mm, without what the teeth take up.
    pub fn largest_mm(&self) -> f64 {
        self.strand(None, Ends::Held).largest_offset_mm().unwrap_or(0.0)
    }

    /// Whether a variant is asked for an answer at the drive's own offset: rigid joints up to the
    /// largest that they reach, springy ones up to half as much again. Beyond, plates would be bent
    /// past anything that the estimate of their stiffness stands for.
    fn is_within(&self, variant: Variant, largest_mm: f64) -> bool {
        const SPRINGY_MORE: f64 = 1.5;
        let times = if variant == Variant::Rigid { 1.0 } else { SPRINGY_MORE };
        self.strand_offset_mm(self.layout.offset_mm).abs() <= times * largest_mm
    }

    /// What the drive's own offset costs with elastic joints.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn own_cost(&self) -> Result<Cost, Missing> {
        Ok(self.cost(&self.own_loads()?))
    }

    /// What the tight strand's first and last joint carry at the drive's own offset, joints elastic.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn own_loads(&self) -> Result<[JointLoad; 2], Missing> {
        Ok(Self::end_loads(&self.solve(Variant::Elastic)?))
    }

    /// The strand of a variant, solved at the drive's own offset.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn solve(&self, variant: Variant) -> Result<Solution, Missing> {
        let mut strand = variant.strand(self).ok_or(Missing::NoPose)?;
        Missing::of(strand.solve(self.strand_offset_mm(self.layout.offset_mm)))
    }

    /// The same where the variant is asked at that offset at all.
    fn solve_within(&self, variant: Variant, largest_mm: f64) -> Result<Solution, Missing> {
        match (self.is_within(variant, largest_mm), variant) {
            (true, _) => self.solve(variant),
            (false, Variant::Rigid) => Err(Missing::NoPose),
            (false, _) => Err(Missing::Bent),
        }
    }
}

/// Why a strand has no answer at an offset.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Missing {
    /// No pose keeps every gap.
    NoPose,
    /// So far past what rigid joints reach that the estimate of the plates' stiffness says nothing.
    Bent,
    /// The rounds of the solve came to no rest.
    Unsettled,
    /// Friction takes all that is carried: the drive cannot turn.
    Locked,
}

impl Missing {
    /// The key in reports and in the data of a page.
    pub fn key(self) -> &'static str {
        match self {
            Self::NoPose => "no_pose",
            Self::Bent => "bent",
            Self::Unsettled => "unsettled",
            Self::Locked => "locked",
        }
    }

    /// A solution that is an answer, or why it is none.
    pub(super) fn of(solution: Solution) -> Result<Solution, Self> {
        match solution.outcome {
            Outcome::Free | Outcome::Solved => Ok(solution),
            Outcome::NoPose => Err(Self::NoPose),
            Outcome::Stalled => Err(Self::Unsettled),
        }
    }
}

/// A drive's own offset, solved.
#[derive(Debug, Clone, PartialEq)]
pub struct Crooked {
    /// The drive.
    pub line: ChainLine,
    /// With rigid joints.
    pub rigid: Result<Solution, Missing>,
    /// With elastic joints.
    pub elastic: Result<Solution, Missing>,
    /// The largest offset of the strand with rigid joints, mm, without what the teeth take up.
    pub largest_mm: f64,
}

impl Crooked {
    /// Solves a drive at its own offset.
    pub fn of(line: &ChainLine) -> Self {
        let largest_mm = line.largest_mm();
        Self {
            line: *line,
            rigid: line.solve_within(Variant::Rigid, largest_mm),
            elastic: line.solve_within(Variant::Elastic, largest_mm),
            largest_mm,
        }
    }

    /// By how much the offset is too large for rigid joints, mm; zero where it is not.
    pub fn shortfall_mm(&self) -> f64 {
        shortfall_mm(&self.line, self.largest_mm)
    }

    /// What the offset costs, joints elastic.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn cost(&self) -> Result<Cost, Missing> {
        let solution = self.elastic.as_ref().map_err(|missing| *missing)?;
        self.line.cost_of(solution).turns()
    }
}

/// What the drive's own offset costs under every assumption; none where there is no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Costs {
    /// The drive.
    pub line: ChainLine,
    /// The largest offset of the strand with rigid joints, mm, without what the teeth take up.
    pub largest_mm: f64,
    /// Elastic joints, ends held: the answer, or why there is none.
    pub elastic: Result<Cost, Missing>,
    /// Rigid joints.
    pub rigid: Option<Cost>,
    /// Joints half as stiff.
    pub softer: Option<Cost>,
    /// Joints twice as stiff.
    pub stiffer: Option<Cost>,
    /// End links free to turn on their teeth.
    pub hinged: Option<Cost>,
}

impl Costs {
    /// Solves a drive at its own offset under each assumption.
    pub fn of(line: &ChainLine) -> Self {
        Self::some(line, Variant::ALL)
    }

    /// The same under some assumptions alone.
    pub(super) fn some(line: &ChainLine, asked: &[Variant]) -> Self {
        let largest_mm = line.largest_mm();
        Self::by(line, largest_mm, asked, |variant| {
            Ok(line.cost_of(&line.solve_within(variant, largest_mm)?))
        })
    }

    /// The costs as `cost` gives them for the assumptions asked for; the elastic joints' always.
    pub(super) fn by(
        line: &ChainLine,
        largest_mm: f64,
        asked: &[Variant],
        mut cost: impl FnMut(Variant) -> Result<Cost, Missing>,
    ) -> Self {
        let mut cost = |variant| cost(variant)?.turns();
        let elastic = cost(Variant::Elastic);
        let mut of = |variant| asked.contains(&variant).then(|| cost(variant).ok()).flatten();
        Self {
            line: *line,
            largest_mm,
            elastic,
            rigid: of(Variant::Rigid),
            softer: of(Variant::Softer),
            stiffer: of(Variant::Stiffer),
            hinged: of(Variant::Hinged),
        }
    }

    /// What the offset costs, joints elastic.
    pub fn cost(&self) -> Option<Cost> {
        self.elastic.ok()
    }

    /// By how much the offset is too large for rigid joints, mm; zero where it is not.
    pub fn shortfall_mm(&self) -> f64 {
        shortfall_mm(&self.line, self.largest_mm)
    }
}

/// By how much a drive's offset is too large for rigid joints, mm; zero where it is not.
fn shortfall_mm(line: &ChainLine, largest_mm: f64) -> f64 {
    let wanted_mm = line.strand_offset_mm(line.layout.offset_mm).abs();
    (wanted_mm - largest_mm).max(0.0)
}
