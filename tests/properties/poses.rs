//! Settled poses: no metal in metal, pushes only where faces touch, and nothing that a mirror, a
//! half turn or another scale would change.

use crate::chains::{self, fixed};
use crate::limits::scaled;
use lightgap::chain::{Construction, Sizes};
use lightgap::contact::{
    Along, Body, Contact, End, Joint, Meeting, OVERLAP_MM, Play, Pose, Settler, Side, Wish,
};
use lightgap::plane::{Placement, Point};
use lightgap::solve::Status;
use proptest::prelude::*;

/// A gap up to this touches, mm, for a pitch of 10: the square of the last step, and rounding.
const TOUCH_MM: f64 = 1e-8;
/// Two ways to the same pose, as a share of the pitch: the last step over the smallest pitch.
const SAME: f64 = 1e-6;
/// Rounding of sizes up to 40 mm through a few rotations.
const ROUNDING_MM: f64 = 1e-12;

const FREE: [Body; 5] =
    [Body::InnerFar, Body::InnerNear, Body::NextOuter, Body::FirstRoller, Body::SecondRoller];

/// How far parts can go, roughly: across or along, mm.
fn looseness_mm(s: &Sizes) -> f64 {
    s.side_gap_mm() + 3.0 * s.pitch_mm * Play::of(s).yaw.angle_rad
}

/// Wishes for a chain: near (within twice what it can give) or far.
fn wishes(sizes: Sizes) -> impl Strategy<Value = (Sizes, Vec<Wish>)> {
    let one = (0..FREE.len(), 0..6_u8, -1.0..1.0_f64, -1.0..1.0_f64, prop::bool::weighted(0.3));
    prop::collection::vec(one, 1..6).prop_map(move |picks| {
        let wish = |(body, what, u, v, far)| wish(&sizes, FREE[body], what, (u, v), far);
        (sizes, picks.into_iter().map(wish).collect())
    })
}

fn wish(s: &Sizes, body: Body, what: u8, (u, v): (f64, f64), far: bool) -> Wish {
    const FAR: f64 = 30.0;
    let reach_mm = looseness_mm(s) * if far { FAR } else { 2.0 };
    let straight = Pose::straight(s);
    let place = straight.of(body);
    let coordinate = |along, value| Wish::Coordinate { body, along, value, weight: 1.0 };
    match what {
        0 => coordinate(Along::X, place.x_mm + reach_mm * u),
        1 => coordinate(Along::Y, reach_mm * u),
        2 => coordinate(Along::Yaw, reach_mm * u / s.pitch_mm),
        _ => {
            let inside = Point::new(0.7 * s.pitch_mm * v, 0.2 * s.pitch_mm * u);
            let to = place.outward(inside) + reach_mm * Point::new(v, u);
            Wish::Point { body, inside, to }
        }
    }
}

fn any_wishes() -> impl Strategy<Value = (Sizes, Vec<Wish>)> {
    chains::any().prop_flat_map(wishes)
}

/// The far and the near plate, swapped.
fn other_plate(body: Body) -> Body {
    match body {
        Body::InnerFar => Body::InnerNear,
        Body::InnerNear => Body::InnerFar,
        _ => body,
    }
}

/// A body seen in a mirror along the chain.
fn mirrored_body(s: &Sizes, body: Body) -> Body {
    if s.construction == Construction::Bushed { body } else { other_plate(body) }
}

fn mirrored(s: &Sizes, wish: &Wish) -> Wish {
    let flip = |p: Point| Point::new(p.x, -p.y);
    match *wish {
        Wish::Coordinate { body, along, value, weight } => {
            let value = if along == Along::X { value } else { -value };
            Wish::Coordinate { body: mirrored_body(s, body), along, value, weight }
        }
        Wish::Point { body, inside, to } => {
            Wish::Point { body: mirrored_body(s, body), inside: flip(inside), to: flip(to) }
        }
    }
}

fn settle(s: &Sizes, wishes: &[Wish]) -> (Settler, Status) {
    let mut settler = Settler::plan(s);
    let straight = *settler.straight();
    let settled = settler.settle(wishes, &straight);
    (settler, settled.solve.status)
}

/// A pose of parts that may overlap, anywhere near the straight one.
fn scattered(s: &Sizes, shares: &[[f64; 3]; 6]) -> Pose {
    let mut pose = Pose::straight(s);
    for (body, share) in Body::ALL.iter().zip(shares) {
        let place = pose.of(*body);
        let moved = Placement::new(
            place.x_mm + 0.1 * s.pitch_mm * share[0],
            place.y_mm + 0.1 * s.pitch_mm * share[1],
            place.yaw_rad + 0.3 * share[2],
        );
        pose.put(s.construction, *body, moved);
    }
    pose
}

/// The pose turned by half about the middle of the pitch, so that each link takes the other's place.
fn turned_by_half(s: &Sizes, pose: &Pose) -> Pose {
    let turn = |body: Body, own_second: Point| {
        let place = pose.of(body);
        let origin = Point::new(s.pitch_mm, 0.0) - place.outward(own_second);
        Placement::new(origin.x, origin.y, place.yaw_rad)
    };
    let second = Point::new(s.pitch_mm, 0.0);
    let mut turned = *pose;
    let mut put = |body: Body, place| turned.0[body.index()] = place;
    put(Body::HeldOuter, turn(Body::NextOuter, Point::ZERO));
    put(Body::NextOuter, turn(Body::HeldOuter, Point::ZERO));
    put(Body::FirstRoller, turn(Body::SecondRoller, Point::ZERO));
    put(Body::SecondRoller, turn(Body::FirstRoller, Point::ZERO));
    put(Body::InnerFar, turn(Body::InnerNear, second));
    put(Body::InnerNear, turn(Body::InnerFar, second));
    turned
}

/// A contact turned by half.
fn turned_contact(contact: Contact) -> Contact {
    Contact {
        joint: if contact.joint == Joint::First { Joint::Second } else { Joint::First },
        end: if contact.end == End::Far { End::Near } else { End::Far },
        side: if contact.side == Side::Left { Side::Right } else { Side::Left },
        ..contact
    }
}

fn find(meetings: &[Meeting], contact: Contact) -> &Meeting {
    meetings.iter().find(|meeting| meeting.contact == contact).expect("the contact's other")
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn no_wish_puts_metal_into_metal((sizes, wishes) in any_wishes()) {
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let settled = settler.settle(&wishes, &straight);
        prop_assert_eq!(settled.solve.status, Status::Solved);
        prop_assert!(settled.worst_gap_mm >= -OVERLAP_MM);
        for (meeting, gap_mm) in settler.meetings().iter().zip(settler.gaps_mm()) {
            prop_assert!(*gap_mm >= -OVERLAP_MM, "{} {gap_mm}", meeting.contact.id());
            prop_assert!((meeting.gap_mm(settler.pose()) - gap_mm).abs() <= ROUNDING_MM);
        }
    }

    #[test]
    fn metal_pushes_and_never_pulls_and_only_where_it_touches((sizes, wishes) in any_wishes()) {
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let settled = settler.settle(&wishes, &straight);
        let most = settler.push().iter().fold(1.0, |a: f64, b| a.max(*b));
        prop_assert!(settled.solve.stationarity <= 1e-10 * most, "{settled:?}");
        for ((meeting, gap_mm), push) in
            settler.meetings().iter().zip(settler.gaps_mm()).zip(settler.push())
        {
            prop_assert!(*push >= 0.0);
            // Short of the best place, a push belongs to a face that the next step would reach.
            let apart_mm = TOUCH_MM + settled.step_mm;
            prop_assert!(*push == 0.0 || *gap_mm <= apart_mm, "{} {settled:?}", meeting.contact.id());
        }
    }

    #[test]
    fn a_contact_moves_both_bodies_by_equal_and_opposite_forces(
        sizes in chains::any(),
        shares in prop::array::uniform6(prop::array::uniform3(-1.0..1.0_f64)),
    ) {
        let pose = scattered(&sizes, &shares);
        for meeting in Settler::plan(&sizes).meetings() {
            let slope = meeting.slope(&pose);
            let moment = |body: Body, force: [f64; 3]| {
                let at = pose.of(body).origin();
                force[2] + at.x * force[1] - at.y * force[0]
            };
            prop_assert!((slope.corner[0] + slope.face[0]).abs() <= ROUNDING_MM);
            prop_assert!((slope.corner[1] + slope.face[1]).abs() <= ROUNDING_MM);
            let both = moment(meeting.corner_body, slope.corner) + moment(meeting.face_body, slope.face);
            prop_assert!(both.abs() <= 1e2 * ROUNDING_MM, "{both}");
        }
    }

    #[test]
    fn a_pose_seen_in_a_mirror_is_the_pose_of_mirrored_wishes((sizes, wishes) in any_wishes()) {
        let (settler, _) = settle(&sizes, &wishes);
        let flipped: Vec<Wish> = wishes.iter().map(|wish| mirrored(&sizes, wish)).collect();
        let (other, _) = settle(&sizes, &flipped);
        for body in FREE {
            let (a, b) = (settler.pose().of(body), other.pose().of(mirrored_body(&sizes, body)));
            let off = (a.x_mm - b.x_mm).abs().max((a.y_mm + b.y_mm).abs()) / sizes.pitch_mm;
            prop_assert!(off.max((a.yaw_rad + b.yaw_rad).abs()) <= SAME, "{body:?} {a:?} {b:?}");
        }
    }

    #[test]
    fn the_second_joint_is_the_first_turned_by_half(
        sizes in chains::any(),
        shares in prop::array::uniform6(prop::array::uniform3(-1.0..1.0_f64)),
    ) {
        let pose = scattered(&sizes, &shares);
        let turned = turned_by_half(&sizes, &pose);
        let meetings = lightgap::contact::meetings(&sizes);
        for meeting in &meetings {
            let other = find(&meetings, turned_contact(meeting.contact));
            let (a, b) = (meeting.gap_mm(&pose), other.gap_mm(&turned));
            prop_assert!((a - b).abs() <= 1e2 * ROUNDING_MM, "{} {a} {b}", meeting.contact.id());
        }
    }

    #[test]
    fn a_pose_does_not_know_the_scale((sizes, wishes) in any_wishes(), scale in 0.2..5.0_f64) {
        let large: Vec<Wish> = wishes.iter().map(|wish| enlarged(wish, scale)).collect();
        let (settler, _) = settle(&sizes, &wishes);
        let (other, _) = settle(&scaled(&sizes, scale), &large);
        for body in FREE {
            let (a, b) = (settler.pose().of(body), other.pose().of(body));
            let off_mm = (a.x_mm * scale - b.x_mm).abs().max((a.y_mm * scale - b.y_mm).abs());
            let off = (off_mm / (scale * sizes.pitch_mm)).max((a.yaw_rad - b.yaw_rad).abs());
            prop_assert!(off <= SAME, "{body:?} {a:?} {b:?}");
        }
    }

    #[test]
    fn without_side_gap_nothing_shifts_and_without_pin_clearance_nothing_curves(
        (sizes, wishes) in any_wishes(),
        more_side in 0.0..0.3_f64,
    ) {
        let no_side = Sizes { outer_spacing_mm: sizes.inner_link_width_mm(), ..sizes };
        let (settler, _) = settle(&no_side, &wishes);
        let pose = settler.pose();
        let (far, near) = (pose.of(Body::InnerFar), pose.of(Body::InnerNear));
        // Tilted in the little that a plate has, its face leaves a line to second order.
        let tilted_mm = |place: &Placement| place.yaw_rad * place.yaw_rad * sizes.pitch_mm;
        prop_assert!(far.y_mm <= 10.0 * OVERLAP_MM + tilted_mm(far), "{far:?}");
        prop_assert!(near.y_mm >= -10.0 * OVERLAP_MM - tilted_mm(near), "{near:?}");
        if sizes.construction == Construction::Bushed {
            let next = pose.of(Body::NextOuter);
            prop_assert!(next.y_mm.abs() <= 1e2 * OVERLAP_MM, "{next:?}");
        }
        let no_pin = Sizes {
            pin_diameter_mm: sizes.bore_mm,
            outer_spacing_mm: sizes.outer_spacing_mm + more_side * sizes.pitch_mm,
            ..sizes
        };
        let (settler, _) = settle(&no_pin, &wishes);
        let short_mm = sizes.effective_length_mm();
        for body in [Body::InnerFar, Body::InnerNear, Body::NextOuter] {
            let yaw_rad = settler.pose().of(body).yaw_rad;
            prop_assert!(yaw_rad.abs() <= 1e1 * OVERLAP_MM / short_mm, "{body:?} {yaw_rad}");
        }
    }
}

fn enlarged(wish: &Wish, scale: f64) -> Wish {
    match *wish {
        Wish::Coordinate { body, along: Along::Yaw, value, weight } => {
            Wish::Coordinate { body, along: Along::Yaw, value, weight }
        }
        Wish::Coordinate { body, along, value, weight } => {
            Wish::Coordinate { body, along, value: scale * value, weight }
        }
        Wish::Point { body, inside, to } => {
            Wish::Point { body, inside: scale * inside, to: scale * to }
        }
    }
}
