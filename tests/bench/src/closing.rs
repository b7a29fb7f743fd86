//! The closing of a rough face, and what gets into a pitch, as plain functions that do their work so
//! many times.

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::contact::{Joint, Pose};
use lightgap::reach::{Entered, Liquid, Probes};
use lightgap::surface::{Profile, Roughness, closed_um};

/// The disk's radius in points of the profile.
const RADIUS: f64 = 200.0;

/// What is to get in.
pub const PROBES: Probes = Probes { bristle_mm: 0.08, particle_mm: 0.01 };
/// What is to flow in.
pub const LIQUID: Liquid =
    Liquid { viscosity_pa_s: 0.1, tension_n_per_m: 0.03, angle_rad: 0.35, pressure_pa: 0.0 };

thread_local! {
    static PROFILE: Profile = Profile::seeded(Roughness::Rz(30.0), 20.0, 1);
}

/// Closes a profile of 4,001 points by a disk of 200 points; the profile is there when it is asked twice.
pub fn closing(turns: u32) -> f64 {
    PROFILE.with(|profile| {
        let radius_um = RADIUS * profile.step_um;
        let once = || std::hint::black_box(closed_um(profile, radius_um))[0];
        (0..turns).map(|_| once()).sum()
    })
}

/// What a bristle, a grain and a liquid reach in both joints of a collared pitch.
pub fn reach(turns: u32) -> f64 {
    let (sizes, pose) = opened();
    let of = |joint| Entered::of(&sizes, &pose, joint, &PROBES, &LIQUID);
    let once = || {
        let both = [Joint::First, Joint::Second].map(of);
        both.iter().flat_map(|joint| &joint.faces).map(|face| face.particle_fraction).sum::<f64>()
    };
    (0..turns).map(|_| std::hint::black_box(once())).sum()
}

/// The pitch that is asked what gets in.
pub fn opened() -> (Sizes, Pose) {
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
    (sizes, pose)
}
