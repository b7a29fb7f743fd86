//! Answers to "How smooth is smooth?".

use super::{Answer, answer};
use crate::report::SurfaceSection;

/// A share of the length below this is nothing to speak of.
const HARDLY: f64 = 0.001;

/// How rough a face is, what sits in it, and how near two of them come.
pub fn rough(told: &SurfaceSection, particle_um: f64, touching_fraction: f64) -> Vec<Answer> {
    let seated = told.seated_fraction;
    let id = if seated < HARDLY { "surface.rides" } else { "surface.sits" };
    let numbers =
        vec![("rz_um", told.rz_um), ("particle_um", particle_um), ("seated_fraction", seated)];
    let film = vec![("film_ratio", told.film_ratio), ("first_touch_ratio", told.first_touch_ratio)];
    vec![
        answer(id, numbers),
        answer("surface.film", film),
        answer("surface.touching", vec![("touching_fraction", touching_fraction)]),
    ]
}
