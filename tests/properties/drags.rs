//! A hand that leads a link along any path: the pose follows without a jump and without metal in
//! metal.

use crate::chains::{self, fixed};
use lightgap::chain::Sizes;
use lightgap::contact::{Body, OVERLAP_MM, Play, Pose, Settler, Wish};
use lightgap::plane::Point;
use proptest::prelude::*;

/// The pointer's steps to a corner of its path.
const STEPS: u32 = 8;
/// A step of the pose is at most this many times a step of the pointer. In the measure of its
/// squares, which weighs what is held 1 and what is loose 1e-4, a pose moves no further than the
/// pointer (the nearest point of a convex set does not); so loose parts at most sqrt(1 / 1e-4) times.
const STRETCH: f64 = 100.0;
/// A step longer than this many times the pointer's is gone over again slowly.
const LONG: f64 = 4.0;
/// In so many steps: a jump would be as long as before, and so many times longer than the pointer's.
const SLOWLY: u32 = 64;
/// What the last round of two poses leaves, mm.
const ROUNDING_MM: f64 = 1e-6;

/// A body, a point on it and the corners of a path, in shares of how far it can be led.
type Path = (Body, (f64, f64), Vec<(f64, f64)>);

fn path() -> impl Strategy<Value = Path> {
    let body = prop::sample::select(vec![Body::InnerFar, Body::NextOuter, Body::SecondRoller]);
    let corner = (-2.0..2.0_f64, -2.0..2.0_f64);
    (body, (-0.3..0.6_f64, -0.2..0.2_f64), prop::collection::vec(corner, 2..4))
}

/// The largest movement of any part, mm, a yaw taken over the pitch.
fn moved_mm(s: &Sizes, a: &Pose, b: &Pose) -> f64 {
    let of = |(a, b): (&lightgap::plane::Placement, &lightgap::plane::Placement)| {
        let turn_mm = s.pitch_mm * (a.yaw_rad - b.yaw_rad).abs();
        (a.x_mm - b.x_mm).abs().max((a.y_mm - b.y_mm).abs()).max(turn_mm)
    };
    a.0.iter().zip(&b.0).map(of).fold(0.0, f64::max)
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn a_hand_leads_without_a_jump(sizes in chains::any(), (body, at, corners) in path()) {
        let s = &sizes;
        let mut settler = Settler::plan(s);
        let straight = *settler.straight();
        let inside = s.pitch_mm * Point::new(at.0, at.1);
        let from = straight.of(body).outward(inside);
        let reach_mm = s.side_gap_mm() + s.pitch_mm * Play::of(s).yaw.angle_rad;
        let (mut last, mut last_to) = (straight, from);
        for corner in corners {
            let corner = from + reach_mm * Point::new(corner.0, corner.1);
            let start = last_to;
            for step in 1..=STEPS {
                let to = start + (corner - start) * (f64::from(step) / f64::from(STEPS));
                let settled = settler.settle(&[Wish::Point { body, inside, to }], &straight);
                prop_assert!(settled.worst_gap_mm >= -OVERLAP_MM);
                let (went_mm, led_mm) =
                    (moved_mm(s, settler.pose(), &last), (to - last_to).length());
                prop_assert!(went_mm <= STRETCH * led_mm + ROUNDING_MM, "{went_mm} {led_mm}");
                let now = *settler.pose();
                if went_mm > LONG * led_mm + ROUNDING_MM {
                    for slow in 1..=SLOWLY {
                        let to = last_to + (to - last_to) * (f64::from(slow) / f64::from(SLOWLY));
                        settler.settle(&[Wish::Point { body, inside, to }], &straight);
                        let went_mm = moved_mm(s, settler.pose(), &last);
                        let led_mm = led_mm / f64::from(SLOWLY);
                        prop_assert!(went_mm <= STRETCH * led_mm + ROUNDING_MM, "{went_mm} {led_mm}");
                        last = *settler.pose();
                    }
                }
                (last, last_to) = (now, to);
            }
        }
    }

    #[test]
    fn the_same_place_of_the_hand_is_the_same_pose(sizes in chains::any(), (body, at, corners) in path()) {
        let s = &sizes;
        let (mut one, mut other) = (Settler::plan(s), Settler::plan(s));
        let straight = *one.straight();
        let inside = s.pitch_mm * Point::new(at.0, at.1);
        let from = straight.of(body).outward(inside);
        let mut last = from;
        for corner in corners {
            last = from + s.side_gap_mm() * Point::new(corner.0, corner.1);
            one.settle(&[Wish::Point { body, inside, to: last }], &straight);
        }
        other.settle(&[Wish::Point { body, inside, to: last }], &straight);
        for (a, b) in one.pose().0.iter().zip(&other.pose().0) {
            prop_assert_eq!(a.x_mm.to_bits(), b.x_mm.to_bits());
            prop_assert_eq!(a.y_mm.to_bits(), b.y_mm.to_bits());
            prop_assert_eq!(a.yaw_rad.to_bits(), b.yaw_rad.to_bits());
        }
    }
}
