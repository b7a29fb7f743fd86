//! The section `surface` of a report.

use super::plain;
use crate::chain::Chain;
use crate::scenario::Surface;
use crate::surface::{Facing, Parameters, Profile, Roughness, Seat, film_ratio};
use serde::Serialize;

/// A rough face of the chain, and a particle on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SurfaceSection {
    /// Mean height without sign.
    pub ra_um: f64,
    /// Root mean square height.
    pub rq_um: f64,
    /// Mean over five sections of highest less lowest.
    pub rz_um: f64,
    /// Above 0: more peaks than valleys.
    pub skewness: f64,
    /// 3 for a normal profile.
    pub kurtosis: f64,
    /// Share of the length where the particle sits below the highest peaks.
    pub seated_fraction: f64,
    /// Half the pin's clearance over the roughness of pin and bore together, both this rough: the
    /// thickest film that a centred pin leaves room for.
    pub film_ratio: f64,
    /// The film ratio at which the first peaks of two such faces touch.
    pub first_touch_ratio: f64,
}

impl SurfaceSection {
    /// The section of a chain that goes together and of its surface.
    pub fn of(chain: &Chain, surface: &Surface) -> Self {
        const UM_PER_MM: f64 = 1000.0;
        let rough =
            |seed| Profile::seeded(Roughness::Rz(surface.rz_um), surface.correlation_um, seed);
        let profile = rough(surface.seed);
        let told = Parameters::of(&profile);
        let film_um = 0.5 * UM_PER_MM * chain.pin_clearance_mm();
        let film = film_ratio(film_um, [told.rq_um, told.rq_um]);
        Self {
            ra_um: plain(told.ra_um),
            rq_um: plain(told.rq_um),
            rz_um: plain(told.rz_um),
            skewness: plain(told.skewness),
            kurtosis: plain(told.kurtosis),
            seated_fraction: plain(Seat::of(&profile, surface.particle_um).seated_fraction),
            film_ratio: plain(film.unwrap_or(0.0).max(0.0)),
            first_touch_ratio: plain(
                Facing::of(&profile, &rough(surface.other_seed())).first_touch_ratio(),
            ),
        }
    }
}
