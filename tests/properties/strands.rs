//! The taut strand on random chains: what must come out of it whatever its sizes.

use crate::chains::{self, fixed};
use lightgap::chain::{Chain, Construction, Sizes};
use lightgap::plane::Point;
use lightgap::strand::{Ends, LinkPose, Outcome, Setup, Solution, Strand};
use proptest::prelude::*;
use proptest::test_runner::Config;

const TENSION_N: f64 = 300.0;
/// Pin forces of a free strand sum to the tension to within this share.
const FREE_SHARE: f64 = 2e-3;
/// Moments agree to this share of the tension times the bearing width.
const MOMENTS: f64 = 1e-8;
/// Forces balance to this share of the largest.
const BALANCED: f64 = 1e-9;
/// Every link and spring of a stiff strand balances to this share of the load, moments over a pitch.
const STIFF: f64 = 3e-9;
/// Sums of forces agree to this share of the largest.
const SUMS: f64 = 1e-6;
/// A joint's share of the moment this near to T B/2, as a share, may be on either side of the onset.
const ONSET: f64 = 1e-3;
/// A joint that does not turn stands within this angle, rad: rounding of gaps over a bearing width.
const STRAIGHT_RAD: f64 = 1e-7;
/// A strand whose largest pin sum exceeds the tension by this share bears on the ends of its bores.
const BEARS: f64 = 0.05;
/// End links that turn freely on their teeth leave the pins within this share of the tension.
const HINGED: f64 = 0.05;
/// No exact gap is below minus this, mm.
const OVERLAP_MM: f64 = 1e-9;

/// 64 cases, the same in every run: each is a strand or several, led up from the straight one.
fn few() -> Config {
    Config { cases: 64, ..fixed() }
}

fn strand(sizes: &Sizes, joints: usize, stiffness_n_mm: Option<f64>, ends: Ends) -> Strand {
    Strand::new(sizes, Setup { joints, tension_n: TENSION_N, stiffness_n_mm, ends })
}

fn rigid(sizes: &Sizes, joints: usize) -> Strand {
    strand(sizes, joints, None, Ends::Held)
}

/// A chain, an even number of joints, and a share.
fn strands() -> impl Strategy<Value = (Sizes, usize, f64)> {
    (chains::any(), 2..7_usize, 0.0..1.0_f64).prop_map(|(s, half, share)| (s, 2 * half, share))
}

fn most(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |most: f64, value| most.max(value.abs()))
}

/// The free and the largest offset, mm.
fn ends_mm(sizes: &Sizes, joints: usize) -> [f64; 2] {
    let strand = rigid(sizes, joints);
    [strand.free_offset_mm(), strand.largest_offset_mm().expect("rigid")]
}

/// An offset a share of the way from the free one to the largest, mm.
fn beyond_mm(sizes: &Sizes, joints: usize, share: f64) -> f64 {
    let [free_mm, largest_mm] = ends_mm(sizes, joints);
    free_mm + share * (largest_mm - free_mm)
}

/// The same force through every joint, which is the tension and one force across, and at every joint
/// the moment that its distance from the thrust line gives.
fn check_balance(sizes: &Sizes, solution: &Solution) -> Result<(), TestCaseError> {
    let first = solution.force_n[0];
    let within_n = BALANCED * TENSION_N.max(most(&solution.pin_force_n));
    let within_n_mm = MOMENTS * TENSION_N * sizes.bearing_width_mm();
    for (i, force) in solution.force_n.iter().enumerate() {
        prop_assert!((force.x + TENSION_N).abs() <= within_n, "{} {}", i, force);
        prop_assert!((force.y - first.y).abs() <= within_n, "{} {}", i, force);
        let arm_mm = solution.thrust.eccentricity_mm(solution.joint[i]);
        let off_n_mm = solution.moment_n_mm[i] - TENSION_N * arm_mm;
        prop_assert!(off_n_mm.abs() <= within_n_mm, "{} {}", i, off_n_mm);
    }
    Ok(())
}

/// What leaves 2 |M_pin| / B off the exact sum: the contacts of a tilted pin lie a little further
/// apart than B, and the link is a little aslant.
fn slant(sizes: &Sizes, solution: &Solution) -> f64 {
    let turn_rad = most(&solution.turn_rad);
    let thick = sizes.bore_mm + 2.0 * sizes.mouth_radius_mm;
    2.0 * turn_rad * (thick / sizes.bearing_width_mm() + 1.0) + FREE_SHARE
}

/// The moment of a joint's pin forces about the bore's centre, which stands aside of the pin's by what
/// the link has slid.
fn bore_moment_n_mm(sizes: &Sizes, solution: &Solution, links: &[LinkPose], joint: usize) -> f64 {
    let (inner, inside) = if joint.is_multiple_of(2) {
        (&links[joint + 1], Point::ZERO)
    } else {
        (&links[joint], Point::new(sizes.pitch_mm, 0.0))
    };
    let bore = inner.plate[0].outward(inside);
    solution.pin_moment_n_mm[joint] - TENSION_N * (bore.y - solution.joint[joint].y)
}

/// A bushed joint turns once its pin's share of the moment reaches T B/2, and from there on its pin
/// forces sum to 2 |M_pin| / B.
fn check_onset(
    sizes: &Sizes,
    solution: &Solution,
    links: &[LinkPose],
) -> Result<(), TestCaseError> {
    let half_mm = 0.5 * sizes.bearing_width_mm();
    let slant = slant(sizes, solution);
    for i in 0..solution.turn_rad.len() {
        let bears_n = bore_moment_n_mm(sizes, solution, links, i).abs() / half_mm;
        let (turn_rad, pin_n) = (solution.turn_rad[i].abs(), solution.pin_force_n[i]);
        if bears_n < (1.0 - ONSET - slant) * TENSION_N {
            prop_assert!(turn_rad <= STRAIGHT_RAD, "{} {} {}", i, turn_rad, bears_n);
        }
        let expected_n = bears_n.max(TENSION_N);
        prop_assert!((pin_n / expected_n - 1.0).abs() <= slant, "{} {} {}", i, pin_n, expected_n);
    }
    Ok(())
}

/// Both joints of a collared inner link have the same pin sum, 2 max |M_pin| / B over the two; the
/// harder of its plates carries between half of it and all of it.
fn check_plates(
    sizes: &Sizes,
    solution: &Solution,
    links: &[LinkPose],
) -> Result<(), TestCaseError> {
    let half_mm = 0.5 * sizes.bearing_width_mm();
    let slant = slant(sizes, solution);
    for i in (0..solution.turn_rad.len()).step_by(2) {
        let [one_n, other_n] = [solution.pin_force_n[i], solution.pin_force_n[i + 1]];
        prop_assert!((one_n / other_n - 1.0).abs() <= slant, "{} {} {}", i, one_n, other_n);
        let of = |joint| bore_moment_n_mm(sizes, solution, links, joint);
        let bears_n = most(&[of(i), of(i + 1)]) / half_mm;
        let expected_n = bears_n.max(TENSION_N);
        prop_assert!((one_n / expected_n - 1.0).abs() <= slant, "{} {} {}", i, one_n, expected_n);
        let plate_n = solution.plate_force_n[i];
        prop_assert!(plate_n >= (0.5 - slant) * one_n && plate_n <= (1.0 + SUMS) * one_n);
    }
    Ok(())
}

/// The strand told from its other end, and the other way, is the same strand. Where pins still bear
/// the bare tension links may share the offset between them in more than one way, which moves sums by
/// as much as the free offset does.
fn check_symmetry(solution: &Solution, near: &Solution) -> Result<(), TestCaseError> {
    let n = solution.turn_rad.len();
    let most_n = most(&solution.pin_force_n);
    let within_n = SUMS * most_n;
    let bears = most_n > (1.0 + BEARS) * TENSION_N;
    let alike_n = if bears { within_n } else { FREE_SHARE * most_n };
    for i in 0..n {
        for sums in [&solution.pin_force_n, &solution.face_force_n] {
            let (a, b) = (sums[i], sums[n - 1 - i]);
            prop_assert!((a - b).abs() <= alike_n, "{} {} {}", i, a, b);
        }
        prop_assert!((solution.turn_rad[i] + near.turn_rad[i]).abs() <= STRAIGHT_RAD);
        prop_assert!((solution.joint[i].y + near.joint[i].y).abs() <= OVERLAP_MM);
        prop_assert!((solution.pin_force_n[i] - near.pin_force_n[i]).abs() <= within_n);
        prop_assert!((solution.moment_n_mm[i] + near.moment_n_mm[i]).abs() <= within_n);
    }
    Ok(())
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn the_free_offset_costs_nothing((sizes, joints, share) in strands(), springs in any::<bool>()) {
        let stiffness = springs.then_some(2e6);
        let mut strand = strand(&sizes, joints, stiffness, Ends::Held);
        let solution = strand.solve(share * strand.free_offset_mm());
        prop_assert_eq!(solution.outcome, if springs { Outcome::Free } else { Outcome::Solved });
        for pin_n in &solution.pin_force_n {
            prop_assert!((pin_n / TENSION_N - 1.0).abs() <= FREE_SHARE, "{}", pin_n);
        }
        if !springs {
            check_balance(&sizes, &solution)?;
        }
    }

    #[test]
    fn a_strand_that_turns_bears_as_its_thrust_line_says((sizes, joints, share) in strands()) {
        let offset_mm = beyond_mm(&sizes, joints, 0.98 * share);
        let mut strand = rigid(&sizes, joints);
        let solution = strand.solve(offset_mm);
        let links = strand.links();
        prop_assert_eq!(solution.outcome, Outcome::Solved);
        prop_assert!(solution.worst_gap_mm >= -OVERLAP_MM, "{}", solution.worst_gap_mm);
        check_balance(&sizes, &solution)?;
        match sizes.construction {
            Construction::Bushed => check_onset(&sizes, &solution, &links)?,
            Construction::Collared => check_plates(&sizes, &solution, &links)?,
        }
        check_symmetry(&solution, &rigid(&sizes, joints).solve(-offset_mm))?;
    }

    #[test]
    fn forces_grow_towards_the_largest_offset_and_beyond_it_is_no_pose((sizes, joints, _) in strands()) {
        let [free_mm, largest_mm] = ends_mm(&sizes, joints);
        let mut strand = rigid(&sizes, joints);
        let mut before_n = 0.0;
        for share in [0.2, 0.6, 0.9, 0.99] {
            let solution = strand.solve(free_mm + share * (largest_mm - free_mm));
            prop_assert_eq!(solution.outcome, Outcome::Solved);
            let most_n = most(&solution.pin_force_n);
            prop_assert!(most_n >= (1.0 - FREE_SHARE) * before_n, "{} {}", most_n, before_n);
            before_n = most_n;
        }
        let beyond = strand.solve(largest_mm + 1e-3 * sizes.pitch_mm);
        prop_assert_eq!(beyond.outcome, Outcome::NoPose);
    }

    #[test]
    fn held_ends_bear_harder_than_hinged_ones((sizes, joints, share) in strands()) {
        let offset_mm = beyond_mm(&sizes, joints, 0.98 * share);
        let held = rigid(&sizes, joints).solve(offset_mm);
        let hinged = strand(&sizes, joints, None, Ends::Hinged).solve(offset_mm);
        prop_assert_eq!([held.outcome, hinged.outcome], [Outcome::Solved; 2]);
        check_balance(&sizes, &hinged)?;
        let (held_n, hinged_n) = (most(&held.pin_force_n), most(&hinged.pin_force_n));
        prop_assert!(held_n >= (1.0 - FREE_SHARE) * hinged_n, "{} {}", held_n, hinged_n);
        prop_assert!(hinged_n <= (1.0 + HINGED) * TENSION_N, "{}", hinged_n);
    }

    #[test]
    fn springy_joints_come_to_rigid_ones((sizes, joints, share) in strands()) {
        let offset_mm = beyond_mm(&sizes, joints, 0.9 * share);
        let stiff = rigid(&sizes, joints).solve(offset_mm);
        prop_assert_eq!(stiff.outcome, Outcome::Solved);
        let scale = TENSION_N * sizes.pitch_mm;
        for (times, within) in [(1e3, f64::INFINITY), (1e5, 2e-2)] {
            let springy = strand(&sizes, joints, Some(times * scale), Ends::Held).solve(offset_mm);
            prop_assert!(matches!(springy.outcome, Outcome::Solved | Outcome::Free));
            if springy.outcome == Outcome::Solved && within.is_infinite() {
                check_balance(&sizes, &springy)?;
            }
            for (a, b) in springy.pin_force_n.iter().zip(&stiff.pin_force_n) {
                prop_assert!((a - b).abs() <= within * most(&stiff.pin_force_n), "{} {}", a, b);
            }
        }
    }
}

/// Springy joints give wherever rigid ones have a pose; beyond, plates may still stop them. The rounds
/// never go without end, however soft the joints and however the ends are held.
fn springy() -> impl Strategy<Value = (Sizes, usize, f64, f64)> {
    (chains::any(), 3..25_usize, 0.0..1.4_f64, 4.0..8.5_f64)
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn springy_joints_come_to_rest_or_have_no_pose((sizes, joints, share, power) in springy()) {
        let offset_mm = beyond_mm(&sizes, joints, share);
        for ends in [Ends::Held, Ends::Hinged] {
            let outcome = strand(&sizes, joints, Some(10_f64.powf(power)), ends).solve(offset_mm).outcome;
            prop_assert_ne!(outcome, Outcome::Stalled, "{:?}", ends);
            prop_assert!(share > 0.99 || outcome != Outcome::NoPose, "{:?}", ends);
        }
    }
}

/// Bushed chains with equal overhangs whose pins stop them well before their plates do.
fn stopped_by_pins() -> impl Strategy<Value = (Sizes, usize)> {
    (chains::of(Construction::Bushed), 2..7_usize).prop_map(|(sizes, half)| {
        let overhang_mm = sizes.inner_overhang_mm;
        let psi_rad = sizes.pin_clearance_mm() / sizes.bearing_width_mm();
        let side_gap_mm = sizes.side_gap_mm().max(6.0 * psi_rad * overhang_mm);
        let outer_spacing_mm = sizes.inner_link_width_mm() + side_gap_mm;
        let pin_length_mm = sizes.pin_length_mm + outer_spacing_mm - sizes.outer_spacing_mm;
        let outer_overhang_mm = overhang_mm;
        (Sizes { outer_overhang_mm, outer_spacing_mm, pin_length_mm, ..sizes }, 2 * half)
    })
}

proptest! {
    #![proptest_config(few())]

    /// Small angles leave out terms of the size of the turns of all joints together.
    #[test]
    fn the_largest_offset_is_that_of_small_angles((sizes, joints) in stopped_by_pins()) {
        prop_assume!(Chain::new(sizes).is_ok());
        let n = joints as f64;
        let psi_rad = sizes.pin_clearance_mm() / sizes.bearing_width_mm();
        let reach_mm = sizes.inner_reach_mm();
        let slid_mm = n * (0.5 * sizes.side_gap_mm() - psi_rad * reach_mm);
        let derived_mm = 0.25 * sizes.pitch_mm * psi_rad * n * n + slid_mm;
        let got_mm = rigid(&sizes, joints).largest_offset_mm().expect("rigid");
        let within = n * psi_rad * (1.0 + sizes.bore_mm / sizes.bearing_width_mm()) + 0.01;
        prop_assert!((got_mm / derived_mm - 1.0).abs() <= within, "{} {}", got_mm, derived_mm);
    }
}

/// A stiff chain of many joints under a slight pull, its offset and how its ends are held.
fn stiff() -> impl Strategy<Value = (Sizes, Setup, f64)> {
    let setup = (2..60_usize, -0.3..0.5_f64, 6.0..7.0_f64, any::<bool>()).prop_map(
        |(joints, pull, stiff, held)| Setup {
            joints,
            tension_n: 10_f64.powf(pull),
            stiffness_n_mm: Some(10_f64.powf(stiff)),
            ends: if held { Ends::Held } else { Ends::Hinged },
        },
    );
    (chains::any(), setup, 0.001..1.0_f64)
}

/// Every link is in balance under the forces and moments at its two joints, and every spring is bent by
/// its own bore's moment.
fn check_links(
    sizes: &Sizes,
    setup: &Setup,
    solved: (&Solution, &[LinkPose]),
) -> Result<(), TestCaseError> {
    let (solution, links) = solved;
    let within_n = STIFF * setup.tension_n.max(most(&solution.pin_force_n));
    let within_n_mm = within_n * sizes.pitch_mm;
    let stiffness_n_mm = setup.stiffness_n_mm.unwrap_or(0.0);
    let last = setup.joints - 1;
    prop_assert!((solution.force_n[last].x + setup.tension_n).abs() <= within_n);
    for i in 0..last {
        let (one, other) = (solution.force_n[i], solution.force_n[i + 1]);
        prop_assert!((one - other).length() <= within_n, "link {} {}", i + 1, one - other);
        let arm = solution.joint[i + 1] - solution.joint[i];
        let moment = solution.moment_n_mm[i] - solution.moment_n_mm[i + 1] - arm.perp_dot(other);
        prop_assert!(moment.abs() <= within_n_mm, "link {} {}", i + 1, moment);
    }
    for (i, bends_n_mm) in solution.bore_moment_n_mm.iter().enumerate() {
        let left = bends_n_mm + stiffness_n_mm * links[i + 1].spring_rad;
        prop_assert!(left.abs() <= within_n_mm, "spring {} {}", i, left);
    }
    Ok(())
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn what_is_solved_is_in_balance_however_stiff((sizes, setup, share) in stiff()) {
        let offset_mm = beyond_mm(&sizes, setup.joints, share);
        let mut strand = Strand::new(&sizes, setup);
        let solution = strand.solve(offset_mm);
        if solution.outcome == Outcome::Solved {
            check_links(&sizes, &setup, (&solution, &strand.links()))?;
        }
    }
}
