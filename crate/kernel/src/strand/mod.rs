//! A taut strand between two sprockets that are not in line, in the plan section.
//!
//! Links 0 to n, joined by n joints. Link 0, an outer link, is held by one sprocket, link n by the
//! other at a lateral offset D, and a tension T pulls link n along: the tight side of a drive. The
//! pose minimises -T x_end over all poses with every gap >= 0; the contact forces are the
//! multipliers, without friction.
//!
//! Up to D = n a/2 the links slide aside one by one: the offset is free, and every joint's pin forces
//! sum to T. Past D = B a few links yaw back a little, since no face carries the force across that
//! a straight thrust line from end to end would need; it costs nothing. Beyond n a/2 links must
//! turn. A joint begins to turn when its share of the bending, T times its distance from the thrust
//! line, leaves its bore: T B/2. Past that the pin bears on the ends of its bore and its forces sum
//! to 2 |M| / B.
//!
//! With elastic joints each joint yaws by e more, in series with its contacts, at an energy of
//! 1/2 K e^2: the contacts of the pin turn about the bore's centre.
//!
//! # Method
//! Unknowns are the links' own deviations: slide along the link, position across, yaw. About each
//! pose the exact gaps are made linear and one banded problem gives the next, `-T` on the slide of
//! the last link. The second order of x_end, T (p yaw^2/2 + yaw_outer y_rel), weighs the step alone,
//! so that the answer does not depend on it; the product is not convex by itself and is held so by
//! a weight on the step across. Time is linear in n.
//!
//! The rooms to turn are not convex where the offset is free, so answers are those reached from
//! D = 0 as D grows; where a pose without yaw is in balance it is the answer. Each stride begins where
//! the links would stand if they went on as in the last one: few faces then meet or part anew. A long
//! strand begins as one of half as many joints, its middle repeated, so that strides need not grow with it.

mod balance;
mod joint;
mod largest;
mod lead;
mod link;
mod longer;
mod pace;
mod solution;

pub use link::Ends;
pub use solution::{LinkPose, Outcome, Solution, Thrust};

use crate::chain::Sizes;
use crate::solve::{Problem, Solver, Start, Status};
use balance::BALANCED;
use joint::{Facing, Met, facings};
use lead::ON_THE_WAY_MM;
use link::{Link, MOST_ROW};
use pace::Pace;

/// What pulls a strand and how it is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setup {
    /// Joints in the free span, at least 2.
    pub joints: usize,
    /// Tension T, N.
    pub tension_n: f64,
    /// Yaw stiffness K of a joint, N mm/rad; none for rigid joints.
    pub stiffness_n_mm: Option<f64>,
    /// How the ends are held.
    pub ends: Ends,
}

/// A strand and the workspace that solves it; nothing is allocated once it has solved.
pub struct Strand {
    sizes: Sizes,
    setup: Setup,
    facings: [Vec<Facing>; 2],
    links: Vec<Link>,
    /// For each row of the problem, its joint (from 0) and its facing.
    rows: Vec<(usize, usize)>,
    problem: Problem,
    solver: Solver,
    pace: Pace,
    /// Springy yaw times pitch over its unknown: a stiff spring's unknown is made as soft as the chain,
    /// so that rounding is measured by the tension and not by the spring.
    spring_scale: f64,
    /// Share of the yaw's weight that keeps a slack plate where it is.
    slide_share: f64,
    offset_mm: f64,
    solved: bool,
    /// By how much the offset grows next, mm.
    stride_mm: f64,
    /// How far the last stride went, mm; zero where it tells nothing of the next.
    gone_mm: f64,
    /// Where the links stood before the last stride.
    good: Vec<Link>,
    /// What is left unbalanced at each unknown.
    left: Vec<f64>,
    /// The strand of half as many joints that a long one begins from.
    shorter: Option<Box<Strand>>,
}

/// A step below this for each joint ends the rounds, mm: rounding gathers along a strand, and what
/// such a step leaves unbalanced is far below a billionth of the tension.
const STEP_MM: f64 = 5e-12;
/// Where the solver's answer has lost its last digits, as it may where flat faces meet at a free
/// offset's end, steps below this, in pitches, say no more after so many rounds.
const ROUGH: f64 = 1e-6;
const ROUGH_ROUNDS: u32 = 6;
/// A first step below this from a pose that was not foreseen shows that it was in balance already, mm:
/// it is left alone, since the free strand is in balance as a ball on a ridge is.
const STILL_MM: f64 = 1e-7;
/// Share of the yaw's weight that holds a step across: it slows the slides that nothing decides.
const ACROSS_SHARE: f64 = 2.05;
/// From so many joints on a strand is a long one, which begins as a shorter one.
const LONG: usize = 48;
/// Share of the yaw's weight that keeps a slack plate where it is; in a long strand less by the square of
/// its joints, since the last link slides by what all before it turn.
const SLIDE_SHARE: f64 = 1e-2;

impl Strand {
    /// A strand of a chain that goes together, straight.
    pub fn new(sizes: &Sizes, setup: Setup) -> Self {
        let springy = setup.stiffness_n_mm.is_some();
        let (links, unknowns) = Link::row(sizes, setup.joints, setup.ends, springy);
        let (good, facings) = (links.clone(), facings(sizes));
        let rows = (0..setup.joints)
            .flat_map(|joint| (0..facings[joint % 2].len()).map(move |facing| (joint, facing)))
            .collect();
        Self {
            sizes: *sizes,
            setup,
            facings,
            links,
            rows,
            problem: Problem::new(unknowns, MOST_ROW - 1),
            solver: Solver::new(),
            pace: Pace::default(),
            spring_scale: spring_scale(sizes, &setup),
            slide_share: slide_share(setup.joints),
            offset_mm: 0.0,
            solved: false,
            stride_mm: 0.0,
            gone_mm: 0.0,
            good,
            left: Vec::new(),
            shorter: None,
        }
    }

    /// The offset up to which nothing turns, n a/2, mm.
    pub fn free_offset_mm(&self) -> f64 {
        0.5 * self.setup.joints as f64 * self.sizes.side_gap_mm()
    }

    /// The setup.
    pub fn setup(&self) -> &Setup {
        &self.setup
    }

    /// Solves the strand at a lateral offset, mm, either way. Growing offsets go on from the last
    /// answer; a smaller one starts anew, from the free strand or, where it is long, from a shorter one.
    pub fn solve(&mut self, offset_mm: f64) -> Solution {
        let wanted_mm = offset_mm.abs();
        let way = if offset_mm < 0.0 { -1.0 } else { 1.0 };
        if self.setup.stiffness_n_mm.is_some() && wanted_mm <= self.free_offset_mm() {
            self.lay_free(wanted_mm);
            self.solved = false;
            self.write_problem();
            self.solver.solve(&self.problem, Start::Cold);
            return Solution::read(self, Outcome::Free, 1, way);
        }
        let (outcome, rounds) = self.reach(wanted_mm, self.still_mm());
        Solution::read(self, outcome, rounds, way)
    }

    /// A step below this ends the rounds, mm.
    fn still_mm(&self) -> f64 {
        STEP_MM * self.setup.joints as f64
    }

    /// Lays the strand without any yaw, its offset shared alike by all joints, every pin bearing.
    fn lay_free(&mut self, offset_mm: f64) {
        let joints = self.setup.joints as f64;
        let slack_mm = 0.5 * self.sizes.pin_clearance_mm();
        for (i, link) in self.links.iter_mut().enumerate() {
            link.slide_mm = [slack_mm * i as f64; 2];
            link.across_mm = offset_mm * i as f64 / joints;
            link.straighten();
        }
        self.offset_mm = offset_mm;
        (self.stride_mm, self.gone_mm) = (self.least_stride_mm(), 0.0);
    }

    /// Rounds about each pose until it stays, at most so many. Returns how it ended and after how many.
    fn settle(&mut self, within_mm: f64, most: u32) -> (Outcome, u32) {
        let mut start = if self.solved { Start::Warm } else { Start::Cold };
        let last = self.links.len() - 1;
        self.links[last].across_mm = self.offset_mm;
        self.pace.start(self.problem.unknowns());
        for round in 1..=most {
            self.write_problem();
            let report = self.solver.solve(&self.problem, start);
            start = Start::Warm;
            if report.status == Status::Infeasible {
                return (Outcome::NoPose, round);
            }
            let step_mm = self.solver.x().iter().fold(0.0_f64, |most, x| most.max(x.abs()));
            if !step_mm.is_finite() {
                return (Outcome::Stalled, round);
            }
            let here = round == 1 && self.gone_mm == 0.0 && step_mm <= STILL_MM;
            if here && self.unbalanced() <= BALANCED {
                return (Outcome::Solved, round);
            }
            let rough = report.status == Status::Unpolished && round >= ROUGH_ROUNDS;
            let still_mm = if rough { ROUGH * self.sizes.pitch_mm } else { 0.0 };
            let still = step_mm <= within_mm.max(still_mm);
            // The pushes belong to the whole step's end, so a still one is taken whole.
            let paced = self.pace.times(self.solver.x());
            let times = if still { 1.0 } else { paced };
            for link in &mut self.links {
                link.step(self.solver.x(), times, self.sizes.pitch_mm, self.spring_scale);
            }
            if still && (within_mm >= ON_THE_WAY_MM || self.unbalanced() <= BALANCED) {
                return (Outcome::Solved, round);
            }
        }
        (Outcome::Stalled, most)
    }

    /// The problem about the present pose, in units of the tension.
    fn write_problem(&mut self) {
        let pitch_mm = self.sizes.pitch_mm;
        self.problem.clear();
        let last = self.links.len() - 1;
        for index in self.links[last].unknowns.slide.into_iter().flatten().take(1) {
            self.problem.gradient_mut()[index] = -1.0;
        }
        let weight = 1.0 / pitch_mm;
        for i in 0..=last {
            self.write_weights(i, weight);
        }
        for (joint, links) in self.links.windows(2).enumerate() {
            let met = Met::of(&links[0], &links[1], joint % 2 == 0, pitch_mm);
            for facing in &self.facings[joint % 2] {
                let (row, gap_mm) = facing.row(&met, self.spring_scale);
                let (first, coefficients) = row.parts();
                self.problem.push_row(first, coefficients, gap_mm);
            }
        }
    }

    /// The weights of a step: every yaw's, a little on every slide across a joint, and the springs'.
    fn write_weights(&mut self, i: usize, weight: f64) {
        let link = self.links[i].unknowns;
        self.weigh(link.yaw, link.yaw, weight);
        for slide in link.slide {
            self.weigh(slide, slide, self.slide_share * weight);
        }
        if let Some(spring) = link.spring {
            *self.problem.hessian_mut(spring, spring) += self.spring_stiff() * self.spring_scale;
            self.problem.gradient_mut()[spring] += self.spring_pull(&self.links[i]);
        }
        if i == 0 {
            return;
        }
        // The slide across the joint: this link's place less the one before's and its yaw's share.
        let before = self.links[i - 1].unknowns;
        let arm = if i == 1 { 0.0 } else { -1.0 };
        let form = [(link.across, 1.0), (before.across, -1.0), (before.yaw, arm)];
        let outer = if i % 2 == 1 { before.yaw } else { link.yaw };
        for (a, ca) in form {
            for (b, cb) in form {
                self.weigh(a, b, ACROSS_SHARE * weight * ca * cb);
            }
            self.weigh(a, outer, ca * weight);
            self.weigh(outer, a, ca * weight);
        }
    }

    /// Adds to the weight of a pair of unknowns, below the diagonal.
    fn weigh(&mut self, a: Option<usize>, b: Option<usize>, weight: f64) {
        if let (Some(a), Some(b)) = (a, b)
            && a >= b
        {
            *self.problem.hessian_mut(a, b) += weight;
        }
    }
}

/// What makes the stiffness of a spring's unknown at most 1 tension over a pitch.
fn spring_scale(sizes: &Sizes, setup: &Setup) -> f64 {
    let stiff = setup.stiffness_n_mm.unwrap_or(0.0) / (setup.tension_n * sizes.pitch_mm);
    if stiff > 1.0 { 1.0 / stiff.sqrt() } else { 1.0 }
}

/// Share of the yaw's weight that keeps a slack plate where it is, in a strand of so many joints.
fn slide_share(joints: usize) -> f64 {
    let many = (joints as f64 / LONG as f64).max(1.0);
    SLIDE_SHARE / (many * many)
}

#[cfg(test)]
mod tests;
