use super::*;
use crate::chain::Construction;
use crate::chain::sample::reference;

fn strand(construction: Construction, stiffness_n_mm: Option<f64>) -> Strand {
    strand_of(construction, 34, stiffness_n_mm)
}

fn strand_of(construction: Construction, joints: usize, stiffness_n_mm: Option<f64>) -> Strand {
    let setup = Setup { joints, tension_n: 300.0, stiffness_n_mm, ends: Ends::Held };
    Strand::new(&reference(construction, &[]), setup)
}

fn thousandths(values: &[f64]) -> Vec<f64> {
    values.iter().map(|value| (value * 1e3).abs()).collect()
}

fn in_tensions(values: &[f64]) -> Vec<f64> {
    values.iter().map(|value| value / 300.0).collect()
}

fn near(got: &[f64], expected: &[f64], within: f64) {
    for (i, (a, b)) in got.iter().zip(expected).enumerate() {
        assert!((a - b).abs() <= within, "{i}: {a} is not {b}: {got:?}");
    }
}

/// The printed figures below are those of the derivation, from two independent small-angle
/// solutions; an exact one differs in the last digit, by half a per cent at most.
const PRINTED: f64 = 0.006;

#[test]
fn a_bushed_strand_turns_and_bears_as_derived() {
    let mut strand = strand(Construction::Bushed, None);
    let ten = strand.solve(10.0);
    near(&thousandths(&ten.turn_rad), &[5.99, 0.74, 1.25], PRINTED);
    near(&in_tensions(&ten.pin_force_n), &[1.144, 1.0], 5e-4);
    near(&in_tensions(&ten.face_force_n), &[0.0375], 5e-5);
    let twenty = strand.solve(20.0);
    // 6.00 in the small-angle form; exactly 5.987, the tilt limit.
    near(&thousandths(&twenty.turn_rad), &[5.987; 6], 1e-3);
    let pins = [2.118, 1.796, 1.622, 1.360, 1.247, 1.046, 1.00];
    near(&in_tensions(&twenty.pin_force_n), &pins, 2.5e-3);
    near(&in_tensions(&twenty.face_force_n), &[0.074, 0.062, 0.062, 0.050], 5e-4);
}

#[test]
fn a_collared_strand_turns_and_bears_as_derived() {
    let mut strand = strand(Construction::Collared, None);
    let ten = strand.solve(10.0);
    near(&thousandths(&ten.turn_rad), &[7.79], 2.0 * PRINTED);
    near(&in_tensions(&ten.pin_force_n), &[1.0], 5e-4);
    near(&in_tensions(&ten.face_force_n), &[0.036], 5e-4);
    let twenty = strand.solve(20.0);
    near(&thousandths(&twenty.turn_rad), &[11.95, 0.0, 11.95, 0.0, 11.95, 0.0], PRINTED);
    let pins = [1.95, 1.95, 1.505, 1.505, 1.18, 1.18, 1.00];
    near(&in_tensions(&twenty.pin_force_n), &pins, 5e-3);
}

#[test]
fn a_pose_exists_up_to_a_largest_offset() {
    let mut strand = strand(Construction::Bushed, None);
    assert_eq!(strand.solve(27.5).outcome, Outcome::Solved);
    assert_eq!(strand.solve(28.5).outcome, Outcome::NoPose);
    let largest_mm = strand.largest_offset_mm().unwrap();
    // Small angle: p psi n^2/4 + n (a/2 - psi g).
    let psi = 0.03 / 5.0;
    let derived_mm = 12.7 * psi * 34.0 * 34.0 / 4.0 + 34.0 * (0.2 - psi * 4.2);
    assert!((largest_mm / derived_mm - 1.0).abs() < 0.01, "{largest_mm} {derived_mm}");
}

#[test]
fn the_free_offset_costs_nothing() {
    for construction in Construction::ALL {
        let mut strand = strand(*construction, None);
        let free_mm = strand.free_offset_mm();
        assert!((free_mm - 6.8).abs() < 1e-12);
        for offset_mm in [0.0, 1.0, 6.79, free_mm] {
            let solution = strand.solve(offset_mm);
            assert_eq!(solution.outcome, Outcome::Solved);
            near(&in_tensions(&solution.pin_force_n), &[1.0; 34], 2e-3);
            // Past D = B some links yaw back a little: no face carries the force across.
            let turned = if offset_mm < 5.0 { 1e-9 } else { 1e-3 };
            near(&solution.turn_rad, &[0.0; 34], turned);
        }
    }
}

#[test]
fn moment_is_tension_times_the_distance_from_the_thrust_line() {
    for construction in Construction::ALL {
        for stiffness in [None, Some(6e5)] {
            for ends in [Ends::Held, Ends::Hinged] {
                let setup = Setup { joints: 20, tension_n: 300.0, stiffness_n_mm: stiffness, ends };
                let mut strand = Strand::new(&reference(*construction, &[]), setup);
                let solution = strand.solve(8.0);
                assert_eq!(solution.outcome, Outcome::Solved, "{construction:?} {setup:?}");
                assert!(solution.worst_gap_mm >= -1e-9);
                for (at, moment) in solution.joint.iter().zip(&solution.moment_n_mm) {
                    let expected = 300.0 * solution.thrust.eccentricity_mm(*at);
                    assert!((moment - expected).abs() < 1e-6 * 300.0 * 5.0);
                }
            }
        }
    }
}

/// What rounding leaves between two ways to the same numbers, as a share of what they are of.
const ALIKE: f64 = 1e-8;

/// An offset to the near side is told as the mirror image of the far one, which is right only if the
/// mirrored pose is at rest by itself, under pushes of its own: it is solved anew there.
#[test]
fn the_other_way_is_the_mirror_image() {
    for construction in Construction::ALL {
        for stiffness_n_mm in [None, Some(2.2e6)] {
            let mut far = strand(*construction, stiffness_n_mm);
            let (one, told) = (far.solve(15.0), far.solve(-15.0));
            let mut mirrored = strand(*construction, stiffness_n_mm);
            mirrored.links = far.links.iter().map(Link::mirrored).collect();
            mirrored.offset_mm = -15.0;
            let (outcome, rounds) = mirrored.settle(mirrored.still_mm(), 20);
            assert_eq!((one.outcome, outcome), (Outcome::Solved, Outcome::Solved));
            assert!(rounds <= 3, "the mirror image is not at rest: {rounds}");
            let other = Solution::read(&mut mirrored, outcome, rounds, 1.0);
            near(&told.turn_rad, &other.turn_rad, ALIKE);
            let back = |values: &[f64]| values.iter().map(|value| -value).collect::<Vec<_>>();
            near(&one.pin_force_n, &other.pin_force_n, 300.0 * ALIKE);
            near(&one.face_force_n, &other.face_force_n, 300.0 * ALIKE);
            near(&one.turn_rad, &back(&other.turn_rad), ALIKE);
            near(&one.moment_n_mm, &back(&other.moment_n_mm), 300.0 * 12.7 * ALIKE);
        }
    }
}

#[test]
fn both_ends_bear_alike() {
    let solution = strand(Construction::Bushed, None).solve(18.0);
    let mut back = solution.pin_force_n.clone();
    back.reverse();
    near(&in_tensions(&solution.pin_force_n), &in_tensions(&back), 1e-4);
}

#[test]
fn stiffer_joints_come_nearer_to_rigid_ones() {
    let rigid = strand(Construction::Bushed, None).solve(18.0).pin_force_n[0];
    let miss = |stiffness| {
        (strand(Construction::Bushed, Some(stiffness)).solve(18.0).pin_force_n[0] - rigid).abs()
    };
    let misses = [1e6, 1e7, 1e8, 1e9].map(miss);
    assert!(misses.windows(2).all(|pair| pair[1] < pair[0]), "{misses:?}");
    assert!(misses[3] < 1e-2 * rigid, "{misses:?}");
}

#[test]
fn hinged_ends_bear_hardly_more_than_the_tension() {
    let setup = Setup { joints: 34, tension_n: 300.0, stiffness_n_mm: None, ends: Ends::Hinged };
    for construction in Construction::ALL {
        let solution = Strand::new(&reference(*construction, &[]), setup).solve(20.0);
        assert_eq!(solution.outcome, Outcome::Solved);
        let most = solution.pin_force_n.iter().fold(0.0_f64, |most, n| most.max(*n)) / 300.0;
        assert!((1.0..1.05).contains(&most), "{most}");
    }
}

#[test]
fn springy_joints_leave_the_free_offset_free() {
    for construction in Construction::ALL {
        let mut strand = strand(*construction, Some(2.2e6));
        for offset_mm in [0.25, 0.75, 4.0, 6.8] {
            let solution = strand.solve(offset_mm);
            assert_eq!(solution.outcome, Outcome::Free);
            near(&in_tensions(&solution.pin_force_n), &[1.0; 34], 2e-3);
        }
        assert_eq!(strand.solve(7.0).outcome, Outcome::Solved);
    }
}

/// Rounding gathers along a strand: tolerances that did not grow with it let two hundred joints go to
/// and fro for ever within the last digits.
#[test]
fn two_hundred_joints_settle_just_past_the_free_offset() {
    /// Rounds of one offset: two or three for each of the steps on the way, and a few to the end.
    const MOST_ROUNDS: u32 = 30;
    for construction in Construction::ALL {
        for stiffness_n_mm in [None, Some(2.2e6)] {
            let setup = Setup { joints: 200, tension_n: 300.0, stiffness_n_mm, ends: Ends::Held };
            let mut strand = Strand::new(&reference(*construction, &[]), setup);
            for offset_mm in [40.1, 40.5, 41.0, 42.0] {
                let solution = strand.solve(offset_mm);
                assert_eq!(solution.outcome, Outcome::Solved, "{setup:?} {offset_mm}");
                assert!(solution.rounds <= MOST_ROUNDS, "{offset_mm} {}", solution.rounds);
                near(&in_tensions(&solution.pin_force_n), &[1.0; 200], 2e-3);
            }
        }
    }
}

/// A stiff chain under a slight pull: its springs count in millions of the tension, and where
/// the solver's answer has lost its last digits the smallest step says nothing of the forces.
#[test]
fn what_is_solved_is_in_balance() {
    let (mut most, mut solved) = (0.0_f64, 0);
    for (construction, joints, tension_n, stiffness_n_mm) in [
        (Construction::Bushed, 39, 1.0, 1.6e7),
        (Construction::Bushed, 44, 2.0, 2.1e7),
        (Construction::Collared, 49, 2.0, 5.2e6),
        (Construction::Collared, 58, 1.0, 1.2e7),
        (Construction::Bushed, 34, 300.0, 2.2e6),
    ] {
        for ends in [Ends::Held, Ends::Hinged] {
            let setup = Setup { joints, tension_n, stiffness_n_mm: Some(stiffness_n_mm), ends };
            let mut strand = Strand::new(&reference(construction, &[]), setup);
            let free_mm = strand.free_offset_mm();
            for share in [1.001, 1.1, 1.6] {
                let solution = strand.solve(share * free_mm);
                if solution.outcome == Outcome::Solved {
                    (most, solved) = (most.max(strand.unbalanced()), solved + 1);
                }
            }
        }
    }
    assert!(most <= balance::BALANCED && solved >= 20, "{most} {solved} of 30");
}

/// Where flat faces meet, more of them touch than balance decides; which of them bear may not tell by
/// which offsets the strand was led.
#[test]
fn forces_do_not_tell_how_the_strand_came_to_an_offset() {
    for construction in Construction::ALL {
        for stiffness_n_mm in [None, Some(2.2e6)] {
            for offset_mm in [7.4, 12.2, 15.0] {
                let at_once = strand(*construction, stiffness_n_mm).solve(offset_mm);
                let mut led = strand(*construction, stiffness_n_mm);
                for share in [0.3, 0.6, 0.8, 0.93, 0.99] {
                    led.solve(share * offset_mm);
                }
                let led = led.solve(offset_mm);
                near(&at_once.turn_rad, &led.turn_rad, ALIKE);
                near(&at_once.pin_force_n, &led.pin_force_n, 300.0 * ALIKE);
                near(&at_once.plate_force_n, &led.plate_force_n, 300.0 * ALIKE);
                near(&at_once.face_force_n, &led.face_force_n, 300.0 * ALIKE);
                near(&at_once.pin_moment_n_mm, &led.pin_moment_n_mm, 300.0 * 12.7 * ALIKE);
            }
        }
    }
}

/// A strand of so many joints, and an offset half past the free one.
fn long(construction: Construction, joints: usize, stiffness_n_mm: Option<f64>) -> (Strand, f64) {
    let strand = strand_of(construction, joints, stiffness_n_mm);
    let offset_mm = 1.5 * strand.free_offset_mm();
    (strand, offset_mm)
}

#[test]
fn a_long_strand_that_begins_as_a_shorter_one_is_the_one_led_from_the_free_strand() {
    for construction in Construction::ALL {
        for stiffness in [None, Some(6e5)] {
            for joints in [57, 110] {
                let (mut begun, offset_mm) = long(*construction, joints, stiffness);
                let begun_in = begun.lengthen(offset_mm, begun.still_mm());
                assert!(begun_in.is_some_and(|rounds| rounds < 20), "{joints}: {begun_in:?}");
                let begun = begun.solve(offset_mm);
                let (mut led, _) = long(*construction, joints, stiffness);
                assert_eq!(led.go_to(offset_mm, led.still_mm()).0, Outcome::Solved);
                let led = led.solve(offset_mm);
                near(&thousandths(&begun.turn_rad), &thousandths(&led.turn_rad), 1e-6);
                near(&in_tensions(&begun.pin_force_n), &in_tensions(&led.pin_force_n), 1e-6);
                near(&in_tensions(&begun.face_force_n), &in_tensions(&led.face_force_n), 1e-6);
            }
        }
    }
}

#[test]
fn a_thousand_joints_take_no_more_rounds_than_a_few() {
    for construction in Construction::ALL {
        for stiffness in [None, Some(6e5)] {
            let (mut strand, offset_mm) = long(*construction, 1000, stiffness);
            let solution = strand.solve(offset_mm);
            assert_eq!(solution.outcome, Outcome::Solved);
            assert!(solution.rounds <= 16, "{construction:?} {stiffness:?}: {}", solution.rounds);
        }
    }
}

#[test]
fn the_largest_offset_of_a_long_strand_is_where_it_stands_askew() {
    for construction in Construction::ALL {
        let of = |joints| strand_of(*construction, joints, None).largest_offset_mm().unwrap();
        // Its middle is straight: each more joint adds the pitch's part across at 30 degrees and the slip
        // of a face on a face, half the side gap across the link.
        let more_mm = (of(1000) - of(600)) / 400.0;
        let askew_mm = 12.7 * 0.5 + 0.2 * 0.75_f64.sqrt();
        assert!((more_mm / askew_mm - 1.0).abs() < 2e-3, "{more_mm} {askew_mm}");
    }
}
