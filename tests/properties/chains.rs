//! Random chains that go together, and the fixed cases that every property is tried on.

use lightgap::chain::{Chain, Construction, Sizes};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};

/// 256 cases, the same in every run.
pub fn fixed() -> Config {
    const SEED: u64 = 20_261_125;
    Config {
        cases: 256,
        rng_seed: RngSeed::Fixed(SEED),
        failure_persistence: None,
        ..Config::default()
    }
}

/// Any chain that goes together: every size drawn on its own, in shares of the pitch, from tight to
/// worn out, from narrow to wide. A quarter of them have sharp mouths and sharp edges.
pub fn any() -> impl Strategy<Value = Sizes> {
    prop::sample::select(Construction::ALL).prop_flat_map(of)
}

/// Any chain of one construction.
pub fn of(construction: Construction) -> impl Strategy<Value = Sizes> {
    prop::array::uniform20(0.0..1.0_f64).prop_map(move |shares| {
        let sizes = from_shares(construction, shares);
        let chain = Chain::new(sizes).expect("the shares keep every rule");
        assert!(chain.goes_together());
        sizes
    })
}

fn from_shares(construction: Construction, shares: [f64; 20]) -> Sizes {
    let mut shares = shares.into_iter();
    let mut next = || shares.next().unwrap_or(0.5);
    let mut between = |low: f64, high: f64| low + (high - low) * next();
    let p = between(6.0, 40.0);
    let sharp = between(0.0, 1.0) < 0.25;
    let pin_diameter_mm = p * between(0.2, 0.34);
    let bore_mm = pin_diameter_mm + p * small(between(0.0, 1.0), 5e-4, 1e-2);
    let wall_mm = p * between(0.025, 0.05);
    let barrel_mm = bore_mm + 2.0 * wall_mm;
    let roller_bore_mm = barrel_mm + p * small(between(0.0, 1.0), 1e-3, 1e-2);
    let roller_diameter_mm = roller_bore_mm + p * between(0.08, 0.15);
    let inner_width_mm = p * between(0.15, 0.7);
    let (inner_plate_mm, outer_plate_mm) = (p * between(0.06, 0.13), p * between(0.06, 0.13));
    let inner_link_mm = inner_width_mm + 2.0 * inner_plate_mm;
    let bearing_length_mm = inner_link_mm
        * match construction {
            Construction::Bushed => between(0.6, 1.0),
            Construction::Collared => between(0.2, 0.5),
        };
    let mouth = between(0.0, 0.9) * wall_mm.min(0.4 * bearing_length_mm);
    let chamfer = between(0.0, 0.3) * inner_plate_mm.min(outer_plate_mm);
    let outer_spacing_mm = inner_link_mm + p * small(between(0.0, 1.0), 1e-3, 6e-2);
    let (h2, h3) = (p * between(0.6, 0.95), p * between(0.6, 0.95));
    Sizes {
        construction,
        pitch_mm: p,
        roller_diameter_mm,
        roller_bore_mm,
        roller_length_mm: inner_width_mm - p * small(between(0.0, 1.0), 1e-3, 5e-2),
        inner_width_mm,
        pin_diameter_mm,
        pin_bore_mm: 0.0,
        pin_length_mm: outer_spacing_mm + 2.5 * outer_plate_mm,
        bore_mm,
        barrel_mm,
        bearing_length_mm,
        mouth_radius_mm: if sharp { 0.0 } else { mouth },
        inner_plate_mm,
        outer_plate_mm,
        inner_plate_height_mm: h2,
        outer_plate_height_mm: h3,
        inner_waist_mm: 0.72 * h2,
        outer_waist_mm: 0.72 * h3,
        edge_chamfer_mm: if sharp { 0.0 } else { chamfer },
        inner_overhang_mm: p * between(0.3, 0.48),
        outer_overhang_mm: p * between(0.3, 0.48),
        outer_spacing_mm,
        worn: lightgap::chain::WornBore::NONE,
    }
}

/// A number between two positive ones, even in its logarithm.
fn small(share: f64, low: f64, high: f64) -> f64 {
    low * (high / low).powf(share)
}
