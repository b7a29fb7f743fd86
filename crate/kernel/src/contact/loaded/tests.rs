use super::*;
use crate::contact::tests::half_inch;
use crate::contact::{Kind, Side};

/// Share of the load that rounding may leave unbalanced.
const BALANCED: f64 = 1e-9;

fn load(tension_n: f64, side_n: f64, moment_n_mm: f64) -> Load {
    Load { at: Joint::Second, tension_n, side_n, moment_n_mm }
}

/// Every free body in balance, and the held link's reaction with the load.
fn assert_balanced(loaded: &Loaded, load: &Load) {
    let within_n = BALANCED * load.size_n(loaded.pitch_mm);
    let within_n_mm = within_n * loaded.pitch_mm;
    for &body in Body::ALL.iter().filter(|body| **body != load.against()) {
        let mut sum = loaded.pushed(body);
        if body == load.on() {
            sum.force_n += load.wrench().force_n;
            sum.moment_n_mm += load.wrench().moment_n_mm;
        }
        let what = format!("{body:?} of {load:?}: {sum:?}");
        assert!(sum.force_n.length() <= within_n && sum.moment_n_mm.abs() <= within_n_mm, "{what}");
    }
}

fn sum_n(loaded: &Loaded, kind: Kind, joint: Joint) -> f64 {
    let of = |force: &&Force| force.contact.kind == kind && force.contact.joint == joint;
    loaded.forces().iter().filter(of).map(|force| force.size_n).sum()
}

#[test]
fn a_straight_pull_is_borne_by_one_side_of_each_pin() {
    for &construction in Construction::ALL {
        for stiffness in [None, Some(2e6)] {
            let mut loaded = Loaded::new(&half_inch(construction, 0.4), stiffness);
            let load = load(300.0, 0.0, 0.0);
            let rest = loaded.settle(&load);
            assert_eq!(rest.ended, Ended::AtRest, "{rest:?}");
            assert_balanced(&loaded, &load);
            for &joint in Joint::ALL {
                assert!((sum_n(&loaded, Kind::PinBore, joint) - 300.0).abs() < 1e-9);
                assert!(sum_n(&loaded, Kind::PlateFace, joint) < 1e-9);
            }
            let pulls = |force: &Force| {
                let side =
                    if force.contact.joint == Joint::First { Side::Right } else { Side::Left };
                force.contact.side == side
            };
            assert!(!loaded.forces().iter().any(pulls), "{:?}", loaded.forces());
        }
    }
}

#[test]
fn a_side_load_goes_to_the_stop_and_the_stop_bears_it() {
    for &construction in Construction::ALL {
        let sizes = half_inch(construction, 0.4);
        let mut loaded = Loaded::new(&sizes, None);
        let load = load(0.0, 10.0, 0.0);
        let rest = loaded.settle(&load);
        assert_eq!(rest.ended, Ended::AtRest, "{rest:?}");
        assert_balanced(&loaded, &load);
        let reached = loaded.pose().of(Body::NextOuter);
        assert!(reached.y_mm > sizes.side_gap_mm() - 1e-9, "{reached:?}");
    }
}

#[test]
fn a_moment_past_half_the_bearing_width_turns_the_joint_and_a_smaller_one_does_not() {
    let sizes = half_inch(Construction::Bushed, 0.4);
    let half_mm = 0.5 * sizes.bearing_width_mm();
    for (share, turns) in [(0.99, false), (1.01, true)] {
        let mut loaded = Loaded::new(&sizes, None);
        let load = load(300.0, 0.0, share * 300.0 * half_mm);
        let rest = loaded.settle(&load);
        assert_eq!(rest.ended, Ended::AtRest, "{rest:?}");
        assert_balanced(&loaded, &load);
        let yaw_rad = loaded.pose().of(Body::NextOuter).yaw_rad;
        assert_eq!(yaw_rad > 1e-6, turns, "{yaw_rad}");
    }
}

#[test]
fn the_far_end_answers_as_the_near_one_turned_half_round() {
    for &construction in Construction::ALL {
        let sizes = half_inch(construction, 0.4);
        let second = load(200.0, 30.0, -400.0);
        let first = Load { at: Joint::First, ..second };
        let (mut one, mut other) = (Loaded::new(&sizes, None), Loaded::new(&sizes, None));
        one.settle(&second);
        other.settle(&first);
        let yaw = |loaded: &Loaded, load: &Load| loaded.pose().of(load.on()).yaw_rad;
        assert!((yaw(&one, &second) - yaw(&other, &first)).abs() < 1e-9);
        assert_balanced(&other, &first);
        let sums = |loaded: &Loaded, joint| sum_n(loaded, Kind::PinBore, joint);
        assert!((sums(&one, Joint::First) - sums(&other, Joint::Second)).abs() < 1e-6);
        assert!((sums(&one, Joint::Second) - sums(&other, Joint::First)).abs() < 1e-6);
    }
}

#[test]
fn a_springy_joint_yaws_by_its_moment_over_its_stiffness() {
    const STIFFNESS_N_MM: f64 = 2e6;
    for &construction in Construction::ALL {
        let mut loaded = Loaded::new(&half_inch(construction, 0.4), Some(STIFFNESS_N_MM));
        let load = load(300.0, 0.0, 900.0);
        let rest = loaded.settle(&load);
        assert_eq!(rest.ended, Ended::AtRest, "{rest:?}");
        assert_balanced(&loaded, &load);
        for &joint in Joint::ALL {
            let pin = |force: &&Force| {
                force.contact.kind == Kind::PinBore && force.contact.joint == joint
            };
            let bore = |plate: Body| loaded.pose().of(plate).outward(loaded.centre(joint));
            let moment: f64 = loaded
                .forces()
                .iter()
                .filter(pin)
                .map(|force| (force.at - bore(force.on)).perp_dot(force.on_body_n(force.on)))
                .sum();
            // At the first joint the pin holds the inner link back, at the second it carries it on.
            let way = if joint == Joint::First { -1.0 } else { 1.0 };
            let expected = way * moment / STIFFNESS_N_MM;
            let got = loaded.spring_rad(joint);
            assert!((got - expected).abs() < 1e-9, "{construction:?} {joint:?} {got} {expected}");
        }
    }
}

#[test]
fn no_load_pushes_nothing() {
    let mut loaded = Loaded::new(&half_inch(Construction::Bushed, 0.4), None);
    let rest = loaded.settle(&load(0.0, 0.0, 0.0));
    assert_eq!(rest.ended, Ended::AtRest);
    assert!(loaded.forces().is_empty() && loaded.pose() == &loaded.straight);
}
