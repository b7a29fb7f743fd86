//! How far to go along a step.

/// Watches the steps of the rounds: a slide at an even pace is taken several steps at once, a
/// swinging to and fro by less and less.
#[derive(Debug, Clone, Default)]
pub(super) struct Pace {
    last: Vec<f64>,
    last_square: f64,
    stride: f64,
    most_stride: f64,
    damping: f64,
    last_ratio: f64,
}

/// Steps whose directions differ by less than this (of 1) go the same way.
const SAME_WAY: f64 = 1e-6;
/// Steps whose lengths differ by less than this share are even.
const EVEN: f64 = 1e-3;
/// A slide is taken up to this many steps at once.
const MOST_STRIDE: f64 = 16.0;
/// A swing is taken by at least this share.
const LEAST_SHARE: f64 = 1.0 / 64.0;
/// How fast a swing is forgotten once the steps get shorter.
const RECOVERY: f64 = 1.3;
/// A step below this share of the last is a sign that the rounds close in.
const CLOSING: f64 = 0.5;

/// Steps that shorten by the same share each time, to within this part of what they lose, and go the
/// same way to within this (of 1), fade: all that is left of them is taken at once.
const STEADY: f64 = 0.05;
const FADING_WAY: f64 = 1e-4;
/// But no more than this many steps at once.
const MOST_FADE: f64 = 64.0;

impl Pace {
    /// Forgets every step, for problems of so many unknowns.
    pub(super) fn start(&mut self, unknowns: usize) {
        self.last.clear();
        self.last.resize(unknowns, 0.0);
        self.last_square = 0.0;
        (self.stride, self.most_stride, self.damping) = (1.0, MOST_STRIDE, 1.0);
        self.last_ratio = 0.0;
    }

    /// How many times the next step is to be taken.
    pub(super) fn times(&mut self, step: &[f64]) -> f64 {
        let square: f64 = step.iter().map(|x| x * x).sum();
        let dot: f64 = step.iter().zip(&self.last).map(|(a, b)| a * b).sum();
        let lengths = (square * self.last_square).sqrt();
        let even = (square - self.last_square).abs() <= EVEN * square;
        let closing = square <= CLOSING * CLOSING * self.last_square;
        let swings = dot < 0.0 && !closing;
        if swings {
            self.damping = (0.5 * self.damping).max(LEAST_SHARE);
        } else if closing || (dot > 0.0 && square < self.last_square && !even) {
            self.damping = (RECOVERY * self.damping).min(1.0);
        }
        if even && dot >= (1.0 - SAME_WAY) * lengths {
            self.stride = (2.0 * self.stride).min(self.most_stride);
        } else {
            if self.stride > 1.0 {
                self.most_stride = (0.5 * self.stride).max(1.0);
            }
            self.stride = 1.0;
        }
        let ratio = (square / self.last_square).sqrt();
        let steady = (ratio - self.last_ratio).abs() <= STEADY * (1.0 - ratio);
        let fades = steady && ratio > CLOSING && dot >= (1.0 - FADING_WAY) * lengths;
        self.last_ratio = if fades { 0.0 } else { ratio };
        if fades && self.stride <= 1.0 && self.damping >= 1.0 {
            self.stride = (1.0 / (1.0 - ratio)).min(MOST_FADE);
        }
        self.last.copy_from_slice(step);
        self.last_square = square;
        if self.stride > 1.0 { self.stride } else { self.damping }
    }
}
