//! Wear, what gets in, rough faces and narrower plates on random chains: common sense that no size undoes.

use crate::chains::{any as chains, fixed};
use lightgap::chain::{Chain, Sizes};
use lightgap::contact::{Along, Body, Joint, Play, Pose, Settler, Wish};
use lightgap::reach::{Entered, Liquid, Probes};
use lightgap::sprocket::{Form, Wheel};
use lightgap::surface::{Profile, Roughness, Seat};
use lightgap::wear::Climb;
use lightgap::width::{Keep, bearing_pressure_mpa, most_mm, narrowed};
use lightgap::width::{inner_plate_mpa, outer_plate_mpa};
use proptest::prelude::*;
use proptest::test_runner::Config;

/// Rounding of angles and of shares.
const ROUNDING: f64 = 1e-12;
/// A root on a tooth's flank, mm.
const ROOT_MM: f64 = 1e-9;
/// The ends of reach are found to a thousandth.
const REACH: f64 = 1e-3;
const PULL_N: f64 = 1000.0;
/// Thin oil that wets.
const LIQUID: Liquid =
    Liquid { viscosity_pa_s: 0.1, tension_n_per_m: 0.03, angle_rad: 0.0, pressure_pa: 0.0 };

/// 64 cases, the same in every run: each is several sections.
fn few() -> Config {
    Config { cases: 64, ..fixed() }
}

/// Two shares, the smaller first.
fn two() -> impl Strategy<Value = (f64, f64)> {
    (0.0..1.0_f64, 0.0..1.0_f64).prop_map(|(a, b)| (a.min(b), a.max(b)))
}

/// The limits of a chain whose joints have lost a share of their walls.
fn worn(sizes: &Sizes, share: f64) -> Play {
    let wall_mm = 0.5 * (sizes.barrel_mm - sizes.bore_mm);
    let chain = Chain::new(*sizes).expect("it goes together");
    Play::of(chain.worn(0.5 * share * wall_mm).sizes())
}

/// The pitch turned to its stop.
fn turned(sizes: &Sizes) -> Pose {
    let value = Play::of(sizes).turn.angle_rad;
    let wish = Wish::Coordinate { body: Body::NextOuter, along: Along::Yaw, value, weight: 1.0 };
    let mut settler = Settler::plan(sizes);
    let rest = *settler.straight();
    settler.settle(&[wish], &rest);
    *settler.pose()
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn a_joint_worn_deeper_never_gives_less((sizes, (less, more)) in (chains(), two())) {
        let (before, now) = (worn(&sizes, less), worn(&sizes, more));
        for (before, now) in [(before.yaw, now.yaw), (before.turn, now.turn), (before.shear, now.shear)] {
            prop_assert!(now.angle_rad >= before.angle_rad - ROUNDING);
        }
        prop_assert_eq!(before.twist.angle_rad.to_bits(), now.twist.angle_rad.to_bits());
        prop_assert_eq!(before.offset_mm.to_bits(), now.offset_mm.to_bits());
    }

    #[test]
    fn a_chain_worn_deeper_never_sinks_into_its_wheel(
        (sizes, teeth, most, (less, more)) in (chains(), 9..120_u32, any::<bool>(), two())
    ) {
        let (pitch_mm, roller_diameter_mm) = (sizes.pitch_mm, sizes.roller_diameter_mm);
        let wheel = Wheel { teeth, pitch_mm, roller_diameter_mm };
        let form = if most { Form::Most } else { Form::Least };
        let [before, now] = [less, more].map(|share| Climb::of(&wheel, form, 0.1 * share * pitch_mm));
        prop_assert!(now.rise_mm >= before.rise_mm - ROUNDING);
        prop_assert!(now.high_mm >= before.high_mm - ROOT_MM);
        prop_assert!(now.high_mm >= now.low_mm - ROOT_MM);
        prop_assert!(now.past_tip || !before.past_tip);
    }

    #[test]
    fn a_larger_particle_never_settles_where_a_smaller_one_does_not(
        (rz_um, correlation_um, seed, (small, large)) in (0.1..20.0_f64, 2.0..60.0_f64, any::<u64>(), two())
    ) {
        let profile = Profile::seeded(Roughness::Rz(rz_um), correlation_um, seed);
        let seat = |share: f64| Seat::of(&profile, 0.01 + 20.0 * rz_um * share).seated_fraction;
        prop_assert!(seat(large) <= seat(small));
    }

    #[test]
    fn a_narrower_chain_is_never_less_stressed((sizes, (less, more)) in (chains(), two())) {
        for keep in [Keep::Gaps, Keep::Plates] {
            let most_mm = most_mm(&sizes, keep);
            let [before, now] = [less, more].map(|share| narrowed(&sizes, share * most_mm, keep));
            for stress in [inner_plate_mpa, outer_plate_mpa, bearing_pressure_mpa] {
                prop_assert!(stress(&now, PULL_N) >= stress(&before, PULL_N) * (1.0 - ROUNDING));
            }
        }
    }
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn a_brush_never_gets_further_than_grit_nor_grit_than_oil_and_what_is_thicker_never_further(
        (sizes, (thin, thick), bent) in (chains(), two(), any::<bool>())
    ) {
        let pose = if bent { turned(&sizes) } else { Pose::straight(&sizes) };
        let widest_mm = 1.2 * sizes.side_gap_mm();
        for &joint in Joint::ALL {
            let [fine, coarse] = [thin, thick].map(|share| {
                let mm = 1e-3 + share * widest_mm;
                Entered::of(&sizes, &pose, joint, &Probes { bristle_mm: mm, particle_mm: mm }, &LIQUID)
            });
            for (fine, coarse) in fine.faces.iter().zip(&coarse.faces) {
                let wet = f64::from(u8::from(fine.fill_time_s.is_some()));
                prop_assert!(fine.bristle_fraction <= fine.particle_fraction + REACH, "{fine:?}");
                prop_assert!(fine.particle_fraction <= wet + ROUNDING, "{fine:?}");
                prop_assert!(coarse.bristle_fraction <= fine.bristle_fraction + REACH, "{coarse:?} {fine:?}");
                prop_assert!(coarse.particle_fraction <= fine.particle_fraction + REACH, "{coarse:?} {fine:?}");
            }
        }
    }
}
