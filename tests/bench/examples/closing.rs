//! The closing of a rough face, and what gets into a pitch, as plain functions:
//! `tests/bench/closing.mjs` times them natively, in WebAssembly and the closing beside scipy.

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::contact::{Joint, Pose};
use lightgap::reach::{Entered, Liquid, Probes};
use lightgap::surface::{Profile, Roughness, closed_um};
use wasm_bindgen::prelude::wasm_bindgen;

/// The disk's radius in points of the profile.
const RADIUS: f64 = 200.0;

/// Closes a profile of 4,001 points by a disk of 200 points.
#[wasm_bindgen]
pub fn closing(turns: u32) -> f64 {
    let profile = Profile::seeded(Roughness::Rz(30.0), 20.0, 1);
    let radius_um = RADIUS * profile.step_um;
    let once = || std::hint::black_box(closed_um(&profile, radius_um)).iter().sum::<f64>();
    (0..turns).map(|_| once()).sum()
}

/// What a bristle, a grain and a liquid reach in both joints of a collared pitch.
#[wasm_bindgen]
pub fn reach(turns: u32) -> f64 {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 2.4),
        (Dimension::PinDiameter, 3.6),
        (Dimension::MouthRadius, 0.25),
        (Dimension::EdgeChamfer, 0.15),
    ];
    let sizes = Sizes::from_stated(Construction::Collared, &stated);
    let pose = Pose::straight(&sizes);
    let probes = Probes { bristle_mm: 0.08, particle_mm: 0.01 };
    let liquid =
        Liquid { viscosity_pa_s: 0.1, tension_n_per_m: 0.03, angle_rad: 0.35, pressure_pa: 0.0 };
    let of = |joint| Entered::of(&sizes, &pose, joint, &probes, &liquid);
    let once = || {
        let both = [Joint::First, Joint::Second].map(of);
        both.iter().flat_map(|joint| &joint.faces).map(|face| face.particle_fraction).sum::<f64>()
    };
    (0..turns).map(|_| std::hint::black_box(once())).sum()
}

/// The rows natively: name, answer, nanoseconds a turn.
#[cfg(not(target_arch = "wasm32"))]
pub fn report() {
    const TURNS: u32 = 200;
    for (name, row) in [("closing", closing as fn(u32) -> f64), ("reach", reach)] {
        let answer = row(1);
        let start = std::time::Instant::now();
        std::hint::black_box(row(TURNS));
        let ns = start.elapsed().as_secs_f64() * 1e9 / f64::from(TURNS);
        println!("{name} {answer} {ns}");
    }
}
