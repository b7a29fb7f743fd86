//! A pitch under load: where it comes to rest, and how hard each face pushes.
//!
//! One outer link is held; a force and a moment act on the other one at its pin. The pose is one of
//! least potential energy,
//!
//! > minimise `-(T x + S y + M yaw) + sum of 1/2 K e^2` over poses with every gap >= 0,
//!
//! x, y and yaw those of the loaded link, T the pull along the chain, S the force across it, M the
//! moment, e the springy yaw of a joint of stiffness K (none when rigid). The multipliers of the
//! gaps are the contact forces, without friction, equal and opposite on the two bodies.
//!
//! Gaps bound every part on all sides, so there always is such a pose: a load that no face bears
//! carries its link on until a face does, which is the stop. Where the load leaves a part free, as
//! it does a loose roller, the part stays where it was. A pitch can rest in more than one pose, as a
//! switch can: straight and turned to a stop, under a moment just short of what turns it, or folded
//! to either side under a push. The one told is that reached from the pose handed in.
//!
//! # Method
//! Exact gaps are made linear about each pose and one problem gives the next step, until the step is
//! lost in rounding. Each round takes in how the gaps that push bend as bodies turn. A small weight
//! on the step, which leaves no force behind when the step is zero, makes it unique.

mod bend;
mod force;
mod pace;
mod sprung;
mod write;

pub use force::{Force, Wrench};

use super::bend::MOST_UNKNOWNS;
use super::body::{Body, Pose};
use super::meeting::{Meeting, meetings};
use super::name::Joint;
use crate::chain::{Construction, Sizes};
use crate::plane::Point;
use crate::solve::{Band, Problem, Report, Solver, Start, Status};
use pace::Pace;

/// Rounds after which a pose is given up.
const MOST_ROUNDS: u32 = 200;
/// A step below this ends the rounds, in pitches: the forces that it leaves unbalanced are as small
/// a share of the load.
const STILL: f64 = 3e-11;
/// No exact gap of a resting pose is below minus this, mm.
const OVERLAP_MM: f64 = 1e-9;

/// What acts on an outer link at its pin; the other outer link is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// The joint whose outer link is loaded.
    pub at: Joint,
    /// Pull T away from the held link, N; a push when negative.
    pub tension_n: f64,
    /// Force S across, N: to the left as one looks along the pull, which is the far side (+y) at the
    /// second joint and the near one at the first.
    pub side_n: f64,
    /// Moment M, N mm, anticlockwise.
    pub moment_n_mm: f64,
}

impl Load {
    /// The link that it acts on.
    pub fn on(&self) -> Body {
        match self.at {
            Joint::First => Body::HeldOuter,
            Joint::Second => Body::NextOuter,
        }
    }

    /// The link that is held against it.
    pub fn against(&self) -> Body {
        match self.at {
            Joint::First => Body::NextOuter,
            Joint::Second => Body::HeldOuter,
        }
    }

    /// The force in the plane and the moment, at the pin of the loaded link.
    pub fn wrench(&self) -> Wrench {
        let way = match self.at {
            Joint::First => -1.0,
            Joint::Second => 1.0,
        };
        let force_n = way * Point::new(self.tension_n, self.side_n);
        Wrench { force_n, moment_n_mm: self.moment_n_mm }
    }

    /// How large it is, N, its moment taken over a pitch; 1 where there is none.
    fn size_n(&self, pitch_mm: f64) -> f64 {
        let size_n = self.tension_n.abs() + self.side_n.abs() + self.moment_n_mm.abs() / pitch_mm;
        if size_n > 0.0 { size_n } else { 1.0 }
    }
}

/// Whether a loaded pitch has come to rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ended {
    /// It is in balance and no metal is in metal.
    AtRest,
    /// The rounds did not end; there are no forces to tell.
    Stalled,
}

/// How a loaded pitch was settled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rest {
    /// How it ended. The first thing to look at.
    pub ended: Ended,
    /// Rounds of linearisation.
    pub rounds: u32,
    /// The last step, mm.
    pub step_mm: f64,
    /// The smallest exact gap, mm.
    pub worst_gap_mm: f64,
}

/// A workspace that settles one pitch under loads.
pub struct Loaded {
    pitch_mm: f64,
    construction: Construction,
    stiffness_n_mm: Option<f64>,
    meetings: Vec<Meeting>,
    free: Vec<Body>,
    load: Load,
    size_n: f64,
    straight: Pose,
    pose: Pose,
    spring_rad: [f64; 2],
    /// Springy yaw times pitch over its unknown: a stiff spring's unknown is made as soft as the chain.
    spring_scale: f64,
    problem: Problem,
    lines: Vec<[f64; MOST_UNKNOWNS]>,
    pace: Pace,
    gaps_mm: Vec<f64>,
    solver: Solver,
    /// How hard each face pushed in the last round, in loads, spread over all that touch: what one
    /// corner of a flat face carries alone would turn it on in the next round.
    pushes: Vec<f64>,
    factors: Band,
    forces: Vec<Force>,
}

impl Loaded {
    /// The whole pitch of a chain that goes together, in the plan section; without a yaw stiffness K
    /// of a joint, N mm/rad, its joints are rigid.
    pub fn new(sizes: &Sizes, stiffness_n_mm: Option<f64>) -> Self {
        let meetings = meetings(sizes);
        let split = sizes.construction == Construction::Collared;
        let bodies = if split { 5 } else { 4 };
        let unknowns = 3 * bodies + if stiffness_n_mm.is_some() { 2 } else { 0 };
        let load = Load { at: Joint::Second, tension_n: 0.0, side_n: 0.0, moment_n_mm: 0.0 };
        Self {
            pitch_mm: sizes.pitch_mm,
            construction: sizes.construction,
            stiffness_n_mm,
            lines: Vec::with_capacity(meetings.len()),
            gaps_mm: vec![0.0; meetings.len()],
            meetings,
            pace: Pace::start(),
            free: Vec::with_capacity(bodies),
            load,
            size_n: 1.0,
            straight: Pose::straight(sizes),
            pose: Pose::straight(sizes),
            spring_rad: [0.0; 2],
            spring_scale: 1.0,
            problem: Problem::new(unknowns, unknowns - 1),
            solver: Solver::new(),
            pushes: Vec::new(),
            factors: Band::new(unknowns, unknowns),
            forces: Vec::new(),
        }
    }

    /// The pose that was settled last; the straight one before that.
    pub fn pose(&self) -> &Pose {
        &self.pose
    }

    /// The faces that can meet.
    pub fn meetings(&self) -> &[Meeting] {
        &self.meetings
    }

    /// The exact gaps of [`Loaded::pose`], mm, one a meeting.
    pub fn gaps_mm(&self) -> &[f64] {
        &self.gaps_mm
    }

    /// The springy yaw of a joint, rad: by how much more the link after it has turned than its faces
    /// show.
    pub fn spring_rad(&self, joint: Joint) -> f64 {
        self.spring_rad[joint as usize]
    }

    /// Brings the pitch to rest under a load, from the straight pose.
    pub fn settle(&mut self, load: &Load) -> Rest {
        let straight = self.straight;
        self.settle_from(load, &straight)
    }

    /// Brings the pitch to rest under a load, from a pose in which no metal is in metal.
    pub fn settle_from(&mut self, load: &Load, from: &Pose) -> Rest {
        self.begin(load, from);
        let mut start = Start::Cold;
        self.pace = Pace::start();
        for rounds in 1..=MOST_ROUNDS {
            self.write();
            let report = self.solver.solve(&self.problem, start);
            self.pushes.clear();
            self.pushes.extend_from_slice(self.solver.spread(&self.problem));
            start = Start::Warm;
            let step_mm = self.solver.x().iter().fold(0.0_f64, |most, x| most.max(x.abs()));
            if !is_usable(&report) {
                if !self.pace.hold() {
                    return self.end(Ended::Stalled, rounds, step_mm);
                }
                continue;
            }
            if step_mm <= STILL * self.pitch_mm {
                self.step(1.0);
                return self.end(Ended::AtRest, rounds, step_mm);
            }
            let share = self.share(step_mm);
            self.pace.take(self.solver.x(), step_mm, share, self.pitch_mm);
            self.step(share);
        }
        self.end(Ended::Stalled, MOST_ROUNDS, f64::INFINITY)
    }

    fn begin(&mut self, load: &Load, from: &Pose) {
        self.load = *load;
        self.size_n = load.size_n(self.pitch_mm);
        self.pose = *from;
        self.spring_rad = [0.0; 2];
        let stiff = self.spring_stiffness() * self.pitch_mm;
        self.spring_scale = if stiff > 1.0 { 1.0 / stiff.sqrt() } else { 1.0 };
        self.free.clear();
        self.free.push(Body::InnerFar);
        if self.construction == Construction::Collared {
            self.free.push(Body::InnerNear);
        }
        self.free.extend([load.on(), Body::FirstRoller, Body::SecondRoller]);
    }

    /// Reads gaps and forces of the pose that was reached.
    fn end(&mut self, ended: Ended, rounds: u32, step_mm: f64) -> Rest {
        let mut worst_gap_mm = f64::INFINITY;
        for i in 0..self.meetings.len() {
            let gap_mm = self.sprung(i).gap_mm(&self.pose);
            self.gaps_mm[i] = gap_mm;
            worst_gap_mm = worst_gap_mm.min(gap_mm);
        }
        let clear = worst_gap_mm >= -OVERLAP_MM;
        let ended = if clear { ended } else { Ended::Stalled };
        self.read_forces(ended);
        Rest { ended, rounds, step_mm, worst_gap_mm }
    }
}

/// Whether a round's answer is near enough to go on from.
fn is_usable(report: &Report) -> bool {
    /// Share of the load that may be out of balance.
    const NEAR: f64 = 1e-8;
    let ended = matches!(report.status, Status::Solved | Status::Unpolished);
    ended && report.stationarity <= NEAR
}

#[cfg(test)]
mod tests;
