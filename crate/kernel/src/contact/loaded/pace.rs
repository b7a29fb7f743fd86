//! How far to go in each round, and what holds the next step back.

use super::{Loaded, MOST_UNKNOWNS};

/// What holds the first step back, in loads over pitches: small beside the stiffness of a taut
/// chain, 1.
const STEP_WEIGHT: f64 = 1e-2;
/// What holds the next step is so much less where steps slide on the same way, down to the least,
const LIGHTER: f64 = 0.25;
const LEAST_WEIGHT: f64 = 1e-4;
/// and so much more where steps swing to and fro or only a share of one led lower, up to the most.
const HEAVIER: f64 = 4.0;
const MOST_WEIGHT: f64 = 1e4;
/// A step longer than this, in pitches, whose direction is that of the one before, or against it, to
/// within so much (the cosine of the angle between them) slides, or swings.
const SLIDE: f64 = 1e-9;
const SAME_WAY: f64 = 0.9;
/// A step below this, in pitches, is taken as it comes: what it gains is lost in rounding.
const SLIGHT: f64 = 1e-6;
/// Rounds after which a step must come lower.
const PATIENCE: u32 = 2;
/// A slide is taken up to two to this many steps at once, while that leads lower.
const STRIDES: u32 = 10;
/// Halvings of a step that does not come lower.
const SHORTENINGS: u32 = 12;
/// How many times the hardest push an overlap weighs.
const PENALTY: f64 = 2.0;

/// The weight that holds the next step back, and the steps that led to it.
pub(super) struct Pace {
    /// In loads over pitches.
    pub(super) weight: f64,
    /// The step before, mm; infinite before the first.
    pub(super) before_mm: f64,
    rounds: u32,
    last: [f64; MOST_UNKNOWNS],
}

impl Pace {
    pub(super) fn start() -> Self {
        let last = [0.0; MOST_UNKNOWNS];
        Self { weight: STEP_WEIGHT, before_mm: f64::INFINITY, rounds: 0, last }
    }

    fn is_fresh(&self) -> bool {
        self.rounds < PATIENCE
    }

    /// Holds the same step back more, as its problem was not solved; false when it is held as much as
    /// may be.
    pub(super) fn hold(&mut self) -> bool {
        self.weight *= HEAVIER;
        self.weight <= MOST_WEIGHT
    }

    /// Takes note of a step, its largest part, mm, and how much of it was taken.
    pub(super) fn take(&mut self, step: &[f64], step_mm: f64, share: f64, pitch_mm: f64) {
        let way = if step_mm > SLIDE * pitch_mm { self.way(step) } else { 0.0 };
        self.weight = if share < 1.0 || way < -SAME_WAY {
            (HEAVIER * self.weight).min(MOST_WEIGHT)
        } else if way > SAME_WAY {
            (LIGHTER * self.weight).max(LEAST_WEIGHT)
        } else {
            (LIGHTER * self.weight).max(STEP_WEIGHT)
        };
        self.last[..step.len()].copy_from_slice(step);
        self.before_mm = step_mm;
        self.rounds += 1;
    }

    /// Which way a step goes: 1 on the way of the one before, -1 back on it.
    fn way(&self, step: &[f64]) -> f64 {
        let (mut dot, mut square, mut last_square) = (0.0, 0.0, 0.0);
        for (step, last) in step.iter().zip(&self.last) {
            dot += step * last;
            square += step * step;
            last_square += last * last;
        }
        if last_square > 0.0 { dot / (square * last_square).sqrt() } else { 0.0 }
    }
}

impl Loaded {
    /// How much of the solver's step to take so that the potential energy, and metal in metal weighed
    /// heavier than any face pushes, comes down; more than all of it where that leads still lower.
    pub(super) fn share(&mut self, step_mm: f64) -> f64 {
        if self.pace.is_fresh() || step_mm <= SLIGHT * self.pitch_mm {
            return 1.0;
        }
        let weight = PENALTY * self.pushes.iter().fold(0.0, |most: f64, n| most.max(*n));
        let start_mm = self.height_mm(weight);
        let mut share = 1.0;
        let mut reached_mm = self.height_after_mm(share, weight);
        for _ in 0..SHORTENINGS {
            if reached_mm < start_mm {
                break;
            }
            share *= 0.5;
            reached_mm = self.height_after_mm(share, weight);
        }
        let slides = self.pace.way(self.solver.x()) > SAME_WAY;
        for _ in 0..if slides { STRIDES } else { 0 } {
            let further_mm = self.height_after_mm(2.0 * share, weight);
            if further_mm >= reached_mm {
                break;
            }
            share *= 2.0;
            reached_mm = further_mm;
        }
        share
    }

    /// [`Loaded::height_mm`] after so much of the solver's step.
    fn height_after_mm(&mut self, share: f64, weight: f64) -> f64 {
        let (pose, spring_rad) = (self.pose, self.spring_rad);
        self.step(share);
        let height_mm = self.height_mm(weight);
        (self.pose, self.spring_rad) = (pose, spring_rad);
        height_mm
    }

    /// Potential energy over the size of the load, with every overlap at a weight, mm.
    fn height_mm(&self, weight: f64) -> f64 {
        let wrench = self.load.wrench();
        let at = self.pose.of(self.load.on());
        let moved = at.origin() - self.straight.of(self.load.on()).origin();
        let given = wrench.force_n.dot(moved) + wrench.moment_n_mm * at.yaw_rad;
        let square: f64 = self.spring_rad.iter().map(|e| e * e).sum();
        let stored = 0.5 * self.stiffness_n_mm.unwrap_or(0.0) * square;
        let overlap = |i: usize| (-self.sprung(i).gap_mm(&self.pose)).max(0.0);
        let overlaps: f64 = (0..self.meetings.len()).map(overlap).sum();
        (stored - given) / self.size_n + weight * overlaps
    }
}
