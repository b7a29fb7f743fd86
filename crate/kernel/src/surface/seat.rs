//! Particles on a rough face: which of them sit below its peaks.

use super::closing::closed_um;
use super::profile::Profile;

/// So many of the highest peaks make the level that a particle must sit below.
const HIGHEST: usize = 5;

/// Where a round particle of one size sits on a profile.
#[derive(Debug, Clone, PartialEq)]
pub struct Seat {
    /// The profile as the particle feels it, um.
    pub closed_um: Vec<f64>,
    /// The level of the highest peaks, um above the mean line.
    pub peaks_um: f64,
    /// The share of the length along which the particle's centre lies below that level.
    pub seated_fraction: f64,
}

impl Seat {
    /// A particle of a diameter D, um, on a profile: it counts as seated where its centre, the closed
    /// profile plus D/2, lies below the mean of the five highest peaks. Source: chosen; the closing by
    /// ISO 16610-41.
    pub fn of(profile: &Profile, diameter_um: f64) -> Self {
        let radius_um = 0.5 * diameter_um;
        let closed_um = closed_um(profile, radius_um);
        let peaks_um = peak_level_um(&profile.heights_um);
        let seated =
            closed_um.iter().filter(|height_um| **height_um + radius_um < peaks_um).count();
        let seated_fraction = seated as f64 / closed_um.len().max(1) as f64;
        Self { closed_um, peaks_um, seated_fraction }
    }
}

/// The mean height of the five highest peaks, um; a peak is the highest point of a stretch above the
/// mean line (ISO 21920-2, from memory). Fewer where there are fewer; 0 where there is none.
pub fn peak_level_um(heights_um: &[f64]) -> f64 {
    let mut peaks = Vec::new();
    let mut highest_um: f64 = 0.0;
    for height_um in heights_um.iter().chain([&0.0]) {
        if *height_um > 0.0 {
            highest_um = highest_um.max(*height_um);
        } else if highest_um > 0.0 {
            peaks.push(highest_um);
            highest_um = 0.0;
        }
    }
    peaks.sort_unstable_by(|one, other| other.total_cmp(one));
    peaks.truncate(HIGHEST);
    peaks.iter().sum::<f64>() / peaks.len().max(1) as f64
}
