//! A disk rolled over a profile: how deep a round thing can feel.
//!
//! The centre of a disk of radius R that rolls over heights z stands, above the point i, at
//! d(i) = max over j of z(j) + s(i - j), with s(k) = sqrt(R^2 - (k step)^2): the disk's own shape. What
//! the disk's underside can reach is the closed profile, e(i) = min over j of d(j) - s(i - j).
//! Source: morphological closing by a disk, ISO 16610-41 (from memory). Past its ends the profile is
//! taken as nothing at all.
//!
//! A disk's shape is concave, so the j that wins for i never lies before the j that wins for a smaller
//! i. Taking the middle i first therefore halves what is left to search on either side, and the whole
//! costs n log n whatever the radius (source: derived).

use super::profile::Profile;
use core::f64::consts::PI;

/// The height of the centre of a disk that rests on the profile, above each point, um.
///
/// `radius_um` must not be negative.
pub fn traced_um(profile: &Profile, radius_um: f64) -> Vec<f64> {
    Disk::new(profile, radius_um).trace(&profile.heights_um)
}

/// What the underside of a rolling disk reaches above each point, um: the profile, its valleys
/// bridged where the disk does not fit.
///
/// `radius_um` must not be negative.
pub fn closed_um(profile: &Profile, radius_um: f64) -> Vec<f64> {
    let disk = Disk::new(profile, radius_um);
    let mut upside_down = disk.trace(&profile.heights_um);
    upside_down.iter_mut().for_each(|height_um| *height_um = -*height_um);
    let mut closed = disk.trace(&upside_down);
    closed.iter_mut().for_each(|height_um| *height_um = -*height_um);
    closed
}

/// The largest radius, um, of a disk that reaches every point of a sine of amplitude A and wavelength
/// L: L^2 / (4 pi^2 A), the radius of curvature at its bottom. Source: derived.
pub fn sine_radius_um(amplitude_um: f64, wavelength_um: f64) -> f64 {
    wavelength_um * wavelength_um / (4.0 * PI * PI * amplitude_um)
}

/// A disk's upper half at even steps from edge to edge, its middle in the middle.
struct Disk {
    shape_um: Vec<f64>,
}

impl Disk {
    fn new(profile: &Profile, radius_um: f64) -> Self {
        let most = profile.heights_um.len().saturating_sub(1);
        let steps = if profile.step_um > 0.0 { radius_um / profile.step_um } else { 0.0 };
        let last = (steps as usize).min(most);
        let height = |k: usize| {
            let along_um = k as f64 * profile.step_um;
            ((radius_um - along_um) * (radius_um + along_um)).max(0.0).sqrt()
        };
        Self { shape_um: (1..=last).rev().chain(0..=last).map(height).collect() }
    }

    /// How many steps the disk reaches to either side.
    fn reach(&self) -> usize {
        self.shape_um.len() / 2
    }

    /// The centre's height above each point.
    fn trace(&self, heights_um: &[f64]) -> Vec<f64> {
        let mut traced_um = vec![0.0; heights_um.len()];
        if let Some(last) = heights_um.len().checked_sub(1) {
            self.trace_between(heights_um, &mut traced_um, 0, (0, last));
        }
        traced_um
    }

    /// Fills `traced_um`, which begins at the point `first`; the winners lie between `low` and `high`.
    fn trace_between(
        &self,
        heights_um: &[f64],
        traced_um: &mut [f64],
        first: usize,
        (low, high): (usize, usize),
    ) {
        if traced_um.is_empty() {
            return;
        }
        if low == high {
            self.carry(heights_um[low], traced_um, first + self.reach() - low);
            return;
        }
        let middle = traced_um.len() / 2;
        let i = first + middle;
        let (best, height_um) = self.winner(heights_um, i, low, high);
        let (before, rest) = traced_um.split_at_mut(middle);
        rest[0] = height_um;
        self.trace_between(heights_um, before, first, (low, best));
        self.trace_between(heights_um, &mut rest[1..], i + 1, (best, high));
    }

    /// Fills `traced_um`, which begins at the disk's step `from`, all carried by one height.
    fn carry(&self, height_um: f64, traced_um: &mut [f64], from: usize) {
        for (centre_um, shape_um) in traced_um.iter_mut().zip(&self.shape_um[from..]) {
            *centre_um = height_um + shape_um;
        }
    }

    /// The first of the points between `low` and `high` that carry a disk over the point i, and how high.
    fn winner(&self, heights_um: &[f64], i: usize, low: usize, high: usize) -> (usize, f64) {
        let reach = self.reach();
        let (from, to) = (low.max(i.saturating_sub(reach)), high.min(i + reach));
        let heights_um = &heights_um[from..=to];
        let shape_um = &self.shape_um[from + reach - i..][..heights_um.len()];
        let centre_um = highest(heights_um, shape_um);
        let is_best = |(height_um, shape_um): (&f64, &f64)| height_um + shape_um >= centre_um;
        let best = heights_um.iter().zip(shape_um).position(is_best).unwrap_or(0);
        (from + best, centre_um)
    }
}

/// The highest sum of a height and the disk's shape above it, eight side by side.
fn highest(heights_um: &[f64], shape_um: &[f64]) -> f64 {
    let higher = |best: f64, height: f64| if height > best { height } else { best };
    let (heights, heights_left) = heights_um.as_chunks::<8>();
    let (shapes, shapes_left) = shape_um.as_chunks::<8>();
    let mut best = [f64::NEG_INFINITY; 8];
    for (height, shape) in heights.iter().zip(shapes) {
        for lane in 0..8 {
            best[lane] = higher(best[lane], height[lane] + shape[lane]);
        }
    }
    let left = heights_left.iter().zip(shapes_left).map(|(height, shape)| height + shape);
    left.chain(best).fold(f64::NEG_INFINITY, higher)
}
