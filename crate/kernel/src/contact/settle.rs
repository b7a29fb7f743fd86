//! Settling a pose: the place nearest to what is wished for that no metal forbids.
//!
//! Unknowns are the deviations of every free body from the straight chain, (x, y, p yaw), all in
//! mm. A wish is a weighted square; a weak square of every joint's own looseness (its offset and
//! yaw less those of a resting pose) makes the answer unique. Gaps are linear only to first order,
//! so the problem is solved again about each answer until the exact gaps agree.

use super::body::{Body, Pose};
use super::meeting::{Meeting, Slope};
use super::play::Play;
use crate::chain::{Construction, Sizes};
use crate::plane::{Placement, Point, quarter_turn};
use crate::solve::{Problem, Report, Solver, Start, Status};

/// Free bodies times three.
const MOST_UNKNOWNS: usize = 15;
/// Weight of a joint's looseness against a wish of weight 1: small enough to move no wish by a
/// visible amount, large enough to decide where wishes do not.
const REST_WEIGHT: f64 = 1e-4;
/// Weight that lets two collared plates turn together. Without it a plate in compression would
/// buckle to one side or the other, which is as real as it is useless to a hand on the link.
const TOGETHER_WEIGHT: f64 = 0.1;
/// Weight of a held point along the chain: the hand leads across, and pushing a loose chain endwise
/// would fold it.
const ENDWISE_WEIGHT: f64 = 1e-3;
/// A hand further from where the point rests than this many times the joints' own looseness pulls
/// no harder.
const CALL_REACHES: f64 = 3.0;
/// Rounds of linearisation; two to six are usual.
const MOST_ROUNDS: u32 = 24;
/// A step below this ends the rounds, mm.
const STEP_MM: f64 = 1e-9;
/// No exact gap of a settled pose is below minus this, mm.
pub const OVERLAP_MM: f64 = 1e-9;
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
    /// The last step of the rounds, mm.
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

    /// How hard each meeting pushes, in units of wish weight times mm; zero where apart.
    pub fn push(&self) -> &[f64] {
        self.solver.push()
    }

    /// Settles the pose nearest to the wishes; where they leave freedom, nearest to `rest`.
    pub fn settle(&mut self, wishes: &[Wish], rest: &Pose) -> Settled {
        self.pose = self.straight;
        let mut start = Start::Cold;
        let mut rounds = 0;
        loop {
            self.write_problem(wishes, rest);
            let solve = self.solver.solve(&self.problem, start);
            let step_mm = self.take_step();
            rounds += 1;
            start = Start::Warm;
            let settled = step_mm <= STEP_MM && solve.status != Status::Stalled;
            if settled || rounds == MOST_ROUNDS {
                self.step_back();
                return Settled { solve, rounds, step_mm, worst_gap_mm: self.measure() };
            }
        }
    }

    /// The place of a body's unknowns, if it is free.
    fn place(&self, body: Body) -> Option<usize> {
        let bushed = self.construction == Construction::Bushed;
        let body = if bushed && body == Body::InnerNear { Body::InnerFar } else { body };
        self.free.iter().position(|&free| free == body).map(|i| 3 * i)
    }

    /// The problem about the present pose.
    fn write_problem(&mut self, wishes: &[Wish], rest: &Pose) {
        self.problem.clear();
        for wish in wishes {
            self.write_wish(wish);
        }
        for i in 0..self.loose.len() {
            let (one, other) = self.loose[i];
            self.write_looseness(one, other, rest);
        }
        self.write_togetherness();
        for i in 0..self.meetings.len() {
            let slope = self.meetings[i].slope(&self.pose);
            let (row, gap) = self.row(&self.meetings[i], &slope);
            let unknowns = self.problem.unknowns();
            self.problem.push_row(0, &row[..unknowns], gap);
        }
    }

    /// A wish as squares about the present pose.
    fn write_wish(&mut self, wish: &Wish) {
        match *wish {
            Wish::Coordinate { body, along, value, weight } => {
                let Some(place) = self.place(body) else { return };
                let straight = self.straight.of(body);
                let (i, target) = match along {
                    Along::X => (0, value - straight.x_mm),
                    Along::Y => (1, value - straight.y_mm),
                    Along::Yaw => (2, (value - straight.yaw_rad) * self.pitch_mm),
                };
                let mut form = [0.0; MOST_UNKNOWNS];
                form[place + i] = 1.0;
                self.add_square(&form, target, weight);
            }
            Wish::Point { body, inside, to } => {
                let Some(place) = self.place(body) else { return };
                let now = *self.pose.of(body);
                let arm = quarter_turn(now.direction(inside)) / self.pitch_mm;
                let at = now.outward(inside);
                let x = self.deviation(body);
                let from = self.straight.of(body).outward(inside);
                let miss = from + (to - from).clamp_length_max(self.call_mm) - at;
                let axes = [(0, arm.x, miss.x, ENDWISE_WEIGHT), (1, arm.y, miss.y, 1.0)];
                for (axis, arm, miss, weight) in axes {
                    let mut form = [0.0; MOST_UNKNOWNS];
                    form[place + axis] = 1.0;
                    form[place + 2] = arm;
                    self.add_square(&form, miss + x[axis] + arm * x[2], weight);
                }
            }
        }
    }

    /// The weak squares that keep one body where it rests on another: both coordinates of the other
    /// body's origin in the first one's axes, and the yaw between them, to first order.
    fn write_looseness(&mut self, one: Body, other: Body, rest: &Pose) {
        let arm_mm = self.straight.of(other).x_mm - self.straight.of(one).x_mm;
        let of = |pose: &Pose| {
            let (a, b) = (pose.of(one), pose.of(other));
            let (sa, sb) = (self.straight.of(one), self.straight.of(other));
            let turn = a.yaw_rad - sa.yaw_rad;
            [
                b.x_mm - sb.x_mm - (a.x_mm - sa.x_mm),
                b.y_mm - sb.y_mm - (a.y_mm - sa.y_mm) - arm_mm * turn,
                (b.yaw_rad - sb.yaw_rad - turn) * self.pitch_mm,
            ]
        };
        let targets = of(rest);
        let (place, other_place) = (self.place(one), self.place(other));
        for (axis, target) in targets.into_iter().enumerate() {
            let mut form = [0.0; MOST_UNKNOWNS];
            if let Some(at) = other_place {
                form[at + axis] += 1.0;
            }
            if let Some(at) = place {
                form[at + axis] -= 1.0;
                if axis == 1 {
                    form[at + 2] -= arm_mm / self.pitch_mm;
                }
            }
            self.add_square(&form, target, REST_WEIGHT);
        }
    }

    /// The square that turns two collared plates together.
    fn write_togetherness(&mut self) {
        let (far, near) = (self.place(Body::InnerFar), self.place(Body::InnerNear));
        if let (Some(far), Some(near)) = (far, near)
            && far != near
        {
            let mut form = [0.0; MOST_UNKNOWNS];
            (form[far + 2], form[near + 2]) = (1.0, -1.0);
            self.add_square(&form, 0.0, TOGETHER_WEIGHT);
        }
    }

    /// Adds weight/2 (form.x - target)^2 to the objective.
    fn add_square(&mut self, form: &[f64; MOST_UNKNOWNS], target: f64, weight: f64) {
        for i in 0..self.problem.unknowns() {
            if form[i] == 0.0 {
                continue;
            }
            for j in 0..=i {
                *self.problem.hessian_mut(i, j) += weight * form[i] * form[j];
            }
            self.problem.gradient_mut()[i] -= weight * target * form[i];
        }
    }

    /// A meeting as a row over all unknowns, and its gap where every deviation is zero.
    fn row(&self, meeting: &Meeting, slope: &Slope) -> ([f64; MOST_UNKNOWNS], f64) {
        let mut row = [0.0; MOST_UNKNOWNS];
        let mut gap = slope.gap_mm;
        for (body, change) in [(meeting.corner_body, slope.corner), (meeting.face_body, slope.face)]
        {
            let Some(place) = self.place(body) else { continue };
            let x = self.deviation(body);
            let change = [change[0], change[1], change[2] / self.pitch_mm];
            for axis in 0..3 {
                row[place + axis] += change[axis];
                gap -= change[axis] * x[axis];
            }
        }
        (row, gap)
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
