//! A pitch under load: in balance to rounding, no metal in metal, and as low as its metal lets it.

use crate::chains::{self, fixed};
use lightgap::chain::Sizes;
use lightgap::contact::loaded::{Ended, Load, Loaded, Wrench};
use lightgap::contact::{Along, Body, Joint, Kind, Meeting, OVERLAP_MM, Settler, Wish};
use lightgap::plane::Point;
use proptest::prelude::*;

/// Share of the load that may be left unbalanced on any body.
const BALANCED: f64 = 1e-9;
/// Two ways to the same pose or sum, as a share of a radian or of the load.
const SAME: f64 = 1e-6;
/// What springs give, in M^2/K.
const SPRINGS_GIVE: f64 = 4.0;
/// How far a hand nudges a link, in pitches and radians.
const NUDGE: f64 = 1e-3;
/// Pulls, N, from a hand's to a machine's.
const PULLS_N: [f64; 2] = [1.0, 1e4];

/// A load that pulls, with any force across and any moment: nothing, a little or much of the pull.
fn load(sizes: Sizes) -> impl Strategy<Value = (Sizes, Load, Option<f64>)> {
    let share = || prop_oneof![Just(0.0), -0.1..0.1_f64, -3.0..3.0_f64];
    let stiffness = prop_oneof![Just(None), (3.0..8.0_f64).prop_map(Some)];
    let pull = (PULLS_N[0].ln()..PULLS_N[1].ln()).prop_map(f64::exp);
    (prop::sample::select(Joint::ALL), pull, share(), share(), stiffness).prop_map(
        move |(at, tension_n, side, moment, stiffness)| {
            let half_mm = 0.5 * sizes.bearing_width_mm();
            let load = Load {
                at,
                tension_n,
                side_n: side * tension_n,
                moment_n_mm: moment * tension_n * half_mm,
            };
            (sizes, load, stiffness.map(|power| 10.0_f64.powf(power)))
        },
    )
}

fn any() -> impl Strategy<Value = (Sizes, Load, Option<f64>)> {
    chains::any().prop_flat_map(load)
}

fn size_n(sizes: &Sizes, load: &Load) -> f64 {
    load.tension_n.abs() + load.side_n.abs() + load.moment_n_mm.abs() / sizes.pitch_mm
}

/// A pull with a moment that is well below or well above what turns a joint, and a chain.
fn clear_of_the_onset() -> impl Strategy<Value = (Sizes, Load)> {
    let share = prop_oneof![0.0..0.5_f64, 2.0..4.0_f64];
    (any(), share, prop::bool::ANY).prop_map(|((sizes, load, _), share, clockwise)| {
        let way = if clockwise { -1.0 } else { 1.0 };
        let moment_n_mm = way * share * load.tension_n * 0.5 * sizes.bearing_width_mm();
        (sizes, Load { side_n: 0.0, moment_n_mm, ..load })
    })
}

/// The forces and the moment on a body about the origin of the plane, its load and the reaction of
/// the held link included.
fn sum(loaded: &Loaded, load: &Load, body: Body) -> Wrench {
    let mut sum = Wrench::default();
    let mut add = |at: Point, force_n: Point, moment_n_mm: f64| {
        sum.force_n += force_n;
        sum.moment_n_mm += at.perp_dot(force_n) + moment_n_mm;
    };
    for force in loaded.forces() {
        add(force.at, force.on_body_n(body), 0.0);
    }
    let origin = loaded.pose().of(body).origin();
    if body == load.on() {
        add(origin, load.wrench().force_n, load.wrench().moment_n_mm);
    }
    if body == load.against() {
        add(origin, loaded.reaction().force_n, loaded.reaction().moment_n_mm);
    }
    sum
}

/// Nudges along, across and in yaw, in nudges.
fn nudges() -> impl Strategy<Value = Vec<[f64; 3]>> {
    prop::collection::vec(prop::array::uniform3(-1.0..1.0_f64), 8)
}

/// What is left unbalanced, as a share of the load.
fn left(sizes: &Sizes, load: &Load, wrench: &Wrench) -> f64 {
    let most = wrench.force_n.length().max(wrench.moment_n_mm.abs() / sizes.pitch_mm);
    most / size_n(sizes, load)
}

/// The yaw of the loaded link.
fn yaw_rad(loaded: &Loaded, load: &Load) -> f64 {
    loaded.pose().of(load.on()).yaw_rad
}

/// Sums over both joints, which are sure where single forces are not: pins and faces, N.
fn sums_n(loaded: &Loaded, joint: Joint) -> [f64; 2] {
    let sum = |kind: Kind| {
        let forces = loaded.forces().iter();
        let of = forces.filter(|f| f.contact.kind == kind && f.contact.joint == joint);
        of.map(|force| force.size_n).sum::<f64>()
    };
    [sum(Kind::PinBore), sum(Kind::PlateFace)]
}

/// What the load has given and the springs hold, N mm: the lower, the better the pose.
fn energy_n_mm(loaded: &Loaded, load: &Load, stiffness: Option<f64>) -> f64 {
    let at = loaded.pose().of(load.on());
    let wrench = load.wrench();
    let springs = Joint::ALL.iter().map(|&joint| loaded.spring_rad(joint));
    let stored: f64 = springs.map(|e| 0.5 * stiffness.unwrap_or(0.0) * e * e).sum();
    stored - wrench.force_n.dot(at.origin()) - wrench.moment_n_mm * at.yaw_rad
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn every_body_of_a_loaded_pitch_is_in_balance((sizes, load, stiffness) in any()) {
        let mut loaded = Loaded::new(&sizes, stiffness);
        let rest = loaded.settle(&load);
        prop_assert_eq!(rest.ended, Ended::AtRest, "{:?} {:?}", rest, load);
        prop_assert!(rest.worst_gap_mm >= -OVERLAP_MM, "{}", rest.worst_gap_mm);
        for &body in Body::ALL {
            let left = left(&sizes, &load, &sum(&loaded, &load, body));
            prop_assert!(left <= BALANCED, "{:?} {} {:?} {:?}", body, left, load, rest);
        }
    }

    /// The push on each of the two bodies, worked out from how the gap changes as that body alone
    /// moves, against the force that is told: as hard, the other way, on the same line.
    #[test]
    fn what_pushes_is_pushed_back((sizes, load, _) in any()) {
        let mut loaded = Loaded::new(&sizes, None);
        prop_assert_eq!(loaded.settle(&load).ended, Ended::AtRest);
        for force in loaded.forces() {
            let named = |meeting: &&Meeting| meeting.contact == force.contact;
            let meeting = loaded.meetings().iter().find(named).expect("its meeting");
            let slope = meeting.slope(loaded.pose());
            let sides = [(meeting.corner_body, slope.corner), (meeting.face_body, slope.face)];
            for (body, change) in sides {
                let told_n = if body == meeting.corner_body {
                    force.size_n * force.direction
                } else {
                    -force.size_n * force.direction
                };
                let arm = force.at - loaded.pose().of(body).origin();
                let off_n = Point::new(change[0], change[1]) * force.size_n - told_n;
                let off_n_mm = change[2] * force.size_n - arm.perp_dot(told_n);
                let within_n = BALANCED * size_n(&sizes, &load);
                prop_assert!(off_n.length() <= within_n, "{:?} {}", body, off_n);
                prop_assert!(off_n_mm.abs() <= within_n * sizes.pitch_mm, "{:?} {}", body, off_n_mm);
            }
        }
    }

    #[test]
    fn a_mirrored_load_has_the_mirrored_answer((sizes, load, stiffness) in any()) {
        let other = Load { side_n: -load.side_n, moment_n_mm: -load.moment_n_mm, ..load };
        let [mut one, mut two] = [(); 2].map(|()| Loaded::new(&sizes, stiffness));
        prop_assert_eq!(one.settle(&load).ended, Ended::AtRest);
        prop_assert_eq!(two.settle(&other).ended, Ended::AtRest);
        let off_rad = yaw_rad(&one, &load) + yaw_rad(&two, &other);
        prop_assert!(off_rad.abs() <= SAME, "{} {:?}", off_rad, load);
        for &joint in Joint::ALL {
            for (a, b) in sums_n(&one, joint).into_iter().zip(sums_n(&two, joint)) {
                prop_assert!((a - b).abs() <= SAME * size_n(&sizes, &load), "{} {}", a, b);
            }
        }
    }

    #[test]
    fn both_ends_answer_alike((sizes, load, stiffness) in any()) {
        let at = if load.at == Joint::First { Joint::Second } else { Joint::First };
        let other = Load { at, ..load };
        let [mut one, mut two] = [(); 2].map(|()| Loaded::new(&sizes, stiffness));
        prop_assert_eq!(one.settle(&load).ended, Ended::AtRest);
        prop_assert_eq!(two.settle(&other).ended, Ended::AtRest);
        let off_rad = yaw_rad(&one, &load) - yaw_rad(&two, &other);
        prop_assert!(off_rad.abs() <= SAME, "{} {:?}", off_rad, load);
        for (joint, other) in [(Joint::First, Joint::Second), (Joint::Second, Joint::First)] {
            for (a, b) in sums_n(&one, joint).into_iter().zip(sums_n(&two, other)) {
                prop_assert!((a - b).abs() <= SAME * size_n(&sizes, &load), "{} {}", a, b);
            }
        }
    }

    /// No pose that a hand leads the loaded link to gives the load more than it has taken.
    #[test]
    fn no_pose_nearby_lies_lower((sizes, load, _) in any(), ways in nudges()) {
        let mut loaded = Loaded::new(&sizes, None);
        prop_assert_eq!(loaded.settle(&load).ended, Ended::AtRest);
        let lowest = energy_n_mm(&loaded, &load, None);
        let at = *loaded.pose().of(load.on());
        let rest = *loaded.pose();
        let mut settler = Settler::plan(&sizes);
        // The settler holds the first outer link; a load there is the same turned half round.
        if load.at == Joint::First {
            return Ok(());
        }
        for [x, y, turn] in ways {
            let reach_mm = NUDGE * sizes.pitch_mm;
            let wish = |along, value| Wish::Coordinate { body: load.on(), along, value, weight: 1.0 };
            let wishes = [
                wish(Along::X, at.x_mm + reach_mm * x),
                wish(Along::Y, at.y_mm + reach_mm * y),
                wish(Along::Yaw, at.yaw_rad + NUDGE * turn),
            ];
            settler.settle(&wishes, &rest);
            let near = settler.pose().of(load.on());
            let given = load.wrench().force_n.dot(near.origin())
                + load.wrench().moment_n_mm * near.yaw_rad;
            let within = BALANCED * size_n(&sizes, &load) * sizes.pitch_mm;
            prop_assert!(-given >= lowest - within, "{} below {} {:?}", -given, lowest, load);
        }
    }

    /// Clear of the onset of turning, where a pitch rests straight or turned as a switch does.
    #[test]
    fn stiffer_joints_come_nearer_to_rigid_ones((sizes, load) in clear_of_the_onset()) {
        let mut rigid = Loaded::new(&sizes, None);
        prop_assert_eq!(rigid.settle(&load).ended, Ended::AtRest);
        let size_n_mm = size_n(&sizes, &load) * sizes.pitch_mm;
        let given = energy_n_mm(&rigid, &load, None);
        let rest = *rigid.pose();
        for times in [1e3, 1e4, 1e5] {
            let stiffness = Some(times * size_n_mm);
            let mut springy = Loaded::new(&sizes, stiffness);
            prop_assert_eq!(springy.settle_from(&load, &rest).ended, Ended::AtRest);
            // Springs let the load come lower, by M^2/2K of each joint and what that moves.
            let gain = given - energy_n_mm(&springy, &load, stiffness);
            let most = (SPRINGS_GIVE / times + BALANCED) * size_n_mm;
            prop_assert!(gain >= -BALANCED * size_n_mm && gain <= most, "{} {} {:?}", gain, most, load);
        }
    }
}
