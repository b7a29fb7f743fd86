//! The numbers that tell how rough a profile is.

use super::profile::Profile;

/// Sections that a profile is cut into for Rz: five, the default of ISO 21920-3 (from memory).
pub const SECTIONS: usize = 5;

/// Roughness of a profile z about its mean line, by the definitions of ISO 21920-2:2021 (the R
/// parameters of ISO 4287; from memory):
/// Ra = mean |z|, Rq = sqrt(mean z^2), Rsk = mean z^3 / Rq^3, Rku = mean z^4 / Rq^4, and
/// Rz = mean over the sections of (highest + deepest). No filter is run: the profile has neither form
/// nor waviness in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameters {
    /// Mean height without sign, um.
    pub ra_um: f64,
    /// Root mean square height, um.
    pub rq_um: f64,
    /// Mean over the sections of highest less lowest, um.
    pub rz_um: f64,
    /// Above 0: more peaks than valleys. 0 for a flat profile.
    pub skewness: f64,
    /// 3 for a normal profile, more with rare high peaks or deep valleys. 0 for a flat profile.
    pub kurtosis: f64,
}

impl Parameters {
    /// The parameters of a profile of at least one point, about its own mean.
    pub fn of(profile: &Profile) -> Self {
        let heights_um = &profile.heights_um;
        let count = heights_um.len().max(1) as f64;
        let mean_um = heights_um.iter().sum::<f64>() / count;
        let mut sums = [0.0; 4];
        for height_um in heights_um {
            let z = height_um - mean_um;
            let square = z * z;
            let terms = [z.abs(), square, square * z, square * square];
            sums.iter_mut().zip(terms).for_each(|(sum, term)| *sum += term);
        }
        let [ra_um, square, cube, fourth] = sums.map(|sum| sum / count);
        let rq_um = square.sqrt();
        let shape = |moment: f64, scale: f64| if scale > 0.0 { moment / scale } else { 0.0 };
        Self {
            ra_um,
            rq_um,
            rz_um: rz_um(heights_um),
            skewness: shape(cube, square * rq_um),
            kurtosis: shape(fourth, square * square),
        }
    }
}

/// Mean over the sections of highest less lowest; a last point that no section needs is left over.
fn rz_um(heights_um: &[f64]) -> f64 {
    let section = (heights_um.len() / SECTIONS).max(1);
    let range = |heights_um: &[f64]| {
        let highest_um = heights_um.iter().fold(f64::NEG_INFINITY, |most, z| most.max(*z));
        let lowest_um = heights_um.iter().fold(f64::INFINITY, |least, z| least.min(*z));
        highest_um - lowest_um
    };
    let ranges: Vec<f64> = heights_um.chunks_exact(section).take(SECTIONS).map(range).collect();
    ranges.iter().sum::<f64>() / ranges.len().max(1) as f64
}
