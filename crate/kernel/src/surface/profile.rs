//! A line across a rough face, made from a seed.

use super::noise::Draws;
use super::parameters::Parameters;

/// Points of a profile that is made here.
pub const POINTS: usize = 4001;
/// Points to one correlation length: five sections of twenty correlation lengths each (chosen).
const PER_CORRELATION: f64 = 40.0;
/// The smoothing reaches this many correlation lengths either way; its weight is 4e-6 there.
const REACH: f64 = 2.5;

/// Heights above the mean line at even steps.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Between two points, um.
    pub step_um: f64,
    /// Height of each point above the mean line, um.
    pub heights_um: Vec<f64>,
}

/// Which number of a profile is given, um.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Roughness {
    /// Mean of the heights without their signs.
    Ra(f64),
    /// Root of the mean square height.
    Rq(f64),
    /// Mean over the sections of highest less lowest point.
    Rz(f64),
}

impl Profile {
    /// A profile of given roughness, um, whose heights are alike over `correlation_um`: even draws,
    /// smoothed with weights exp(-2 x^2 / L^2), so that heights a distance x apart agree by
    /// exp(-x^2 / L^2), 1/e at L. Each height sums some 200 draws and is normal but for 0.02 of its
    /// kurtosis. Nothing finer than L is in it. Source: derived.
    pub fn seeded(roughness: Roughness, correlation_um: f64, seed: u64) -> Self {
        let weights = weights();
        let reach = weights.len() - 1;
        let mut draws = Draws::new(seed);
        let white: Vec<f64> = (0..POINTS + 2 * reach).map(|_| draws.about_zero()).collect();
        let height = |i: usize| {
            let middle = i + reach;
            let pair = |k: usize| weights[k] * (white[middle - k] + white[middle + k]);
            weights[0] * white[middle] + (1..=reach).map(pair).sum::<f64>()
        };
        let raw = Self {
            step_um: correlation_um / PER_CORRELATION,
            heights_um: (0..POINTS).map(height).collect(),
        };
        raw.about_its_mean().scaled_to(roughness)
    }

    /// How long it is, um.
    pub fn length_um(&self) -> f64 {
        self.step_um * self.heights_um.len().saturating_sub(1) as f64
    }

    /// The same profile with its mean line at zero.
    #[must_use]
    pub fn about_its_mean(mut self) -> Self {
        let mean_um = self.heights_um.iter().sum::<f64>() / self.heights_um.len().max(1) as f64;
        self.heights_um.iter_mut().for_each(|height_um| *height_um -= mean_um);
        self
    }

    /// The same shape, made higher or lower.
    fn scaled_to(mut self, roughness: Roughness) -> Self {
        let now = Parameters::of(&self);
        let (want_um, is_um) = match roughness {
            Roughness::Ra(ra_um) => (ra_um, now.ra_um),
            Roughness::Rq(rq_um) => (rq_um, now.rq_um),
            Roughness::Rz(rz_um) => (rz_um, now.rz_um),
        };
        let scale = if is_um > 0.0 { want_um / is_um } else { 0.0 };
        self.heights_um.iter_mut().for_each(|height_um| *height_um *= scale);
        self
    }
}

/// The smoothing's weights from the middle outwards.
fn weights() -> Vec<f64> {
    let last = (REACH * PER_CORRELATION) as u32;
    let weight = |k: u32| {
        let share = f64::from(k) / PER_CORRELATION;
        libm::exp(-2.0 * share * share)
    };
    (0..=last).map(weight).collect()
}
