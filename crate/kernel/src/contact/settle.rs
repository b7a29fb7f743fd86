//! Settling a pose: the place nearest to what is wished for that no metal forbids.
//!
//! Unknowns are the deviations of every free body from the straight chain, (x, y, p yaw), all in
//! mm. A wish is a weighted square; a weak square of every joint's own looseness (its offset and
//! yaw less those of a resting pose) makes the answer unique. Gaps are linear only to first order,
//! so the problem is solved again about each answer until the exact gaps agree.

mod bend;
mod write;

use super::body::{Body, Pose};
use super::meeting::Meeting;
use super::play::Play;
use crate::chain::{Construction, Sizes};
use crate::plane::{Placement, Point};
use crate::solve::{Band, Problem, Report, Solver, Start, Status};

/// Free bodies times three.
const MOST_UNKNOWNS: usize = 15;
/// A hand further from where the point rests than this many times the joints' own looseness pulls
/// no harder.
const CALL_REACHES: f64 = 3.0;
/// Rounds of linearisation; two to six are usual. A plate pushed from both ends far beyond any use
/// can be about to buckle either way; then the rounds end a little short of the best place, in a
/// pose that is allowed.
const MOST_ROUNDS: u32 = 36;
/// A step below this ends the rounds, mm: what rounding leaves of a force of 1, over the weakest
/// weight. A gap misses by the square of a step.
const STEP_MM: f64 = 2e-8;
/// No exact gap of a settled pose is below minus this, mm.
pub const OVERLAP_MM: f64 = 1e-9;
/// Rounds after which steps must come nearer, because they may go to and fro.
const PATIENCE: u32 = 8;
/// Steps below this are taken as they come: what they gain is lost in rounding.
const SLIGHT_MM: f64 = 1e-6;
/// Halvings of one such step.
const SHORTENINGS: u32 = 8;
/// How many times the hardest push an overlap weighs.
const PENALTY: f64 = 2.0;
/// Halvings on the way back to the straight pose when the rounds end inside metal.
const HALVINGS: u32 = 60;

/// One number of a body's placement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Along the first axis.
    X,
    /// Along the second axis.
    Y,
    /// Rotation.
    Yaw,
}

/// What a pose should come near to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wish {
    /// One number of a body's placement, mm or rad.
    Coordinate {
        /// The body.
        body: Body,
        /// Which number.
        along: Along,
        /// Its wished value.
        value: f64,
        /// Its weight; a plain wish has 1.
        weight: f64,
    },
    /// A point held in the hand: a point of a body, in its own axes, wished at a place.
    Point {
        /// The body.
        body: Body,
        /// The point, in the body's axes, mm.
        inside: Point,
        /// Where it should be, mm.
        to: Point,
    },
}

/// How a pose was settled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settled {
    /// The last solve.
    pub solve: Report,
    /// Rounds of linearisation.
    pub rounds: u32,
    /// The last step of the rounds, mm: when it is more than rounding, the pose is allowed but not
    /// quite the nearest.
    pub step_mm: f64,
    /// The smallest exact gap, mm.
    pub worst_gap_mm: f64,
}

/// A workspace that settles poses of one chain in one section.
pub struct Settler {
    pitch_mm: f64,
    construction: Construction,
    meetings: Vec<Meeting>,
    free: Vec<Body>,
    /// Pairs of bodies whose relative placement is a joint's looseness: (one, other, other's origin
    /// in the first one's axes when straight).
    loose: Vec<(Body, Body)>,
    straight: Pose,
    pose: Pose,
    call_mm: f64,
    gaps_mm: Vec<f64>,
    problem: Problem,
    solver: Solver,
    pushes: Vec<f64>,
    /// The squares of the wishes at the pose they were written about.
    squares_mm2: f64,
    /// Workspace of a check.
    factors: Band,
}

impl Settler {
    /// A workspace for a chain, its faces in `meetings`, its free bodies and the pairs that a joint
    /// holds together; `straight` must be free of overlap.
    pub(super) fn with(
        sizes: &Sizes,
        meetings: Vec<Meeting>,
        free: Vec<Body>,
        loose: Vec<(Body, Body)>,
        straight: Pose,
    ) -> Self {
        let unknowns = 3 * free.len();
        let gaps_mm = meetings.iter().map(|meeting| meeting.gap_mm(&straight)).collect();
        Self {
            pitch_mm: sizes.pitch_mm,
            construction: sizes.construction,
            problem: Problem::new(unknowns, unknowns - 1),
            solver: Solver::new(),
            pushes: Vec::new(),
            squares_mm2: 0.0,
            factors: Band::new(unknowns, unknowns),
            pose: straight,
            call_mm: CALL_REACHES * looseness_mm(sizes),
            meetings,
            free,
            loose,
            straight,
            gaps_mm,
        }
    }

    /// The faces that can meet.
    pub fn meetings(&self) -> &[Meeting] {
        &self.meetings
    }

    /// The pose that was settled last; the straight one before that.
    pub fn pose(&self) -> &Pose {
        &self.pose
    }

    /// The straight pose, everything centred.
    pub fn straight(&self) -> &Pose {
        &self.straight
    }

    /// The exact gaps of [`Settler::pose`], mm, one a meeting.
    pub fn gaps_mm(&self) -> &[f64] {
        &self.gaps_mm
    }

    /// How hard each meeting pushes, in units of wish weight times mm, spread over all that touch; zero
    /// where apart.
    pub fn push(&self) -> &[f64] {
        &self.pushes
    }

    /// The problem of the last round, about the pose that the round began with: unknowns are each
    /// free body's deviations (x, y, p yaw) from the straight chain, mm; one row a meeting.
    pub fn problem(&self) -> &Problem {
        &self.problem
    }

    /// The answer of the last round: deviations in the order of [`Settler::problem`], mm.
    pub fn deviations_mm(&self) -> &[f64] {
        self.solver.x()
    }

    /// Settles the pose nearest to the wishes; where they leave freedom, nearest to `rest`.
    pub fn settle(&mut self, wishes: &[Wish], rest: &Pose) -> Settled {
        self.pose = self.straight;
        let mut start = Start::Cold;
        let mut rounds = 0;
        loop {
            self.write_problem(wishes, rest);
            if rounds > 0 {
                self.write_bend(wishes);
            }
            let solve = self.solver.solve(&self.problem, start);
            let (from, before_mm2) = (self.pose, self.squares_mm2);
            let step_mm = self.take_step();
            rounds += 1;
            start = Start::Warm;
            let settled = step_mm <= STEP_MM && solve.status != Status::Stalled;
            if settled || rounds == MOST_ROUNDS {
                if !settled {
                    self.pose = from;
                }
                self.pushes.clear();
                self.pushes.extend_from_slice(self.solver.spread(&self.problem));
                self.step_back();
                return Settled { solve, rounds, step_mm, worst_gap_mm: self.measure() };
            }
            if rounds >= PATIENCE && step_mm > SLIGHT_MM {
                self.shorten(&from, before_mm2, wishes, rest);
            }
        }
    }

    /// How far a body is from its straight place: (x, y, p yaw), mm.
    fn deviation(&self, body: Body) -> [f64; 3] {
        let (now, straight) = (self.pose.of(body), self.straight.of(body));
        [
            now.x_mm - straight.x_mm,
            now.y_mm - straight.y_mm,
            (now.yaw_rad - straight.yaw_rad) * self.pitch_mm,
        ]
    }

    /// Takes the solver's answer as the pose; returns the largest change, mm.
    fn take_step(&mut self) -> f64 {
        let mut largest_mm: f64 = 0.0;
        for i in 0..self.free.len() {
            let body = self.free[i];
            let before = self.deviation(body);
            let x = &self.solver.x()[3 * i..3 * i + 3];
            for axis in 0..3 {
                largest_mm = largest_mm.max((x[axis] - before[axis]).abs());
            }
            let straight = self.straight.of(body);
            let place = Placement::new(
                straight.x_mm + x[0],
                straight.y_mm + x[1],
                straight.yaw_rad + x[2] / self.pitch_mm,
            );
            self.pose.put(self.construction, body, place);
        }
        largest_mm
    }

    /// Shortens a step that comes no nearer: by what the wishes miss and what metal overlaps, the
    /// overlap weighed heavier than any contact pushes.
    fn shorten(&mut self, from: &Pose, before_mm2: f64, wishes: &[Wish], rest: &Pose) {
        let weight =
            PENALTY * self.solver.push().iter().fold(0.0, |most: f64, push| most.max(*push));
        let to = self.pose;
        self.pose = *from;
        let before = before_mm2 + weight * self.overlap_mm();
        let mut share = 1.0;
        for _ in 0..SHORTENINGS {
            self.pose = between(from, &to, share);
            self.write_squares(wishes, rest);
            if self.squares_mm2 + weight * self.overlap_mm() < before {
                return;
            }
            share *= 0.5;
        }
    }

    /// The sum of all overlaps, mm.
    fn overlap_mm(&self) -> f64 {
        let overlaps = self.meetings.iter().map(|meeting| (-meeting.gap_mm(&self.pose)).max(0.0));
        overlaps.sum()
    }

    /// Writes the exact gaps of the present pose; returns the smallest, mm.
    fn measure(&mut self) -> f64 {
        let mut worst_mm = f64::INFINITY;
        for (gap_mm, meeting) in self.gaps_mm.iter_mut().zip(&self.meetings) {
            *gap_mm = meeting.gap_mm(&self.pose);
            worst_mm = worst_mm.min(*gap_mm);
        }
        worst_mm
    }

    /// A pose inside metal goes back towards the straight one until it is outside: never clamped.
    fn step_back(&mut self) {
        let clear = |worst_mm: f64| worst_mm >= -OVERLAP_MM;
        if clear(self.measure()) {
            return;
        }
        let (reached, mut low, mut high) = (self.pose, 0.0, 1.0);
        for _ in 0..HALVINGS {
            let share = 0.5 * (low + high);
            self.pose = between(&self.straight, &reached, share);
            if clear(self.measure()) { low = share } else { high = share }
        }
        self.pose = between(&self.straight, &reached, low);
    }
}

/// How far the next outer link can be led across, roughly, mm: both joints' side gaps, and both
/// their tilts over a pitch or two.
fn looseness_mm(sizes: &Sizes) -> f64 {
    sizes.side_gap_mm() + 3.0 * sizes.pitch_mm * Play::of(sizes).yaw.angle_rad
}

/// The pose a share of the way from one to another.
fn between(one: &Pose, other: &Pose, share: f64) -> Pose {
    let mut pose = *one;
    for (place, (a, b)) in pose.0.iter_mut().zip(one.0.iter().zip(&other.0)) {
        *place = Placement::new(
            a.x_mm + share * (b.x_mm - a.x_mm),
            a.y_mm + share * (b.y_mm - a.y_mm),
            a.yaw_rad + share * (b.yaw_rad - a.yaw_rad),
        );
    }
    pose
}
