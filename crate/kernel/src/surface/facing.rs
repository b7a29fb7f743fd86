//! Two rough faces brought together.

use super::parameters::Parameters;
use super::profile::Profile;

/// The film ratio: the distance h between two mean lines over the roughness of both faces together,
/// h / sqrt(Rq1^2 + Rq2^2). Source: the specific film thickness of lubrication handbooks (from
/// memory). Two faces without any roughness have none.
pub fn film_ratio(distance_um: f64, rq_um: [f64; 2]) -> Option<f64> {
    let together_um = (rq_um[0] * rq_um[0] + rq_um[1] * rq_um[1]).sqrt();
    (together_um > 0.0).then(|| distance_um / together_um)
}

/// Two profiles face to face: the second one hangs upside down over the first.
#[derive(Debug, Clone, PartialEq)]
pub struct Facing {
    /// Height of the lower face plus depth of the upper one at each point, um: where this exceeds the
    /// distance of the mean lines, metal meets metal.
    pub fill_um: Vec<f64>,
    /// sqrt(Rq1^2 + Rq2^2), um.
    pub together_um: f64,
}

impl Facing {
    /// Two profiles of equal steps; the longer one's end is left over.
    pub fn of(lower: &Profile, upper: &Profile) -> Self {
        let (one, other) = (Parameters::of(lower).rq_um, Parameters::of(upper).rq_um);
        let pairs = lower.heights_um.iter().zip(&upper.heights_um);
        Self {
            fill_um: pairs.map(|(low_um, high_um)| low_um + high_um).collect(),
            together_um: (one * one + other * other).sqrt(),
        }
    }

    /// The distance of the mean lines at a film ratio, um.
    pub fn distance_um(&self, film_ratio: f64) -> f64 {
        film_ratio * self.together_um
    }

    /// The film ratio at which the first two peaks touch; 0 for faces without roughness.
    pub fn first_touch_ratio(&self) -> f64 {
        let most_um = self.fill_um.iter().fold(0.0, |most: f64, fill_um| most.max(*fill_um));
        if self.together_um > 0.0 { most_um / self.together_um } else { 0.0 }
    }

    /// The share of the length along which peaks overlap at a film ratio: what must be pressed flat
    /// or cut off before the faces stand so near.
    pub fn touching_fraction(&self, film_ratio: f64) -> f64 {
        let distance_um = self.distance_um(film_ratio);
        let touching = self.fill_um.iter().filter(|fill_um| **fill_um > distance_um).count();
        touching as f64 / self.fill_um.len().max(1) as f64
    }

    /// How many separate spots overlap at a film ratio.
    pub fn spots(&self, film_ratio: f64) -> usize {
        let distance_um = self.distance_um(film_ratio);
        let over = |fill_um: &f64| *fill_um > distance_um;
        let begins = |pair: &[f64]| !over(&pair[0]) && over(&pair[1]);
        let first = usize::from(self.fill_um.first().is_some_and(over));
        first + self.fill_um.windows(2).filter(|pair| begins(pair)).count()
    }
}
