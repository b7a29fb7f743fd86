//! A whole pitch: settled poses beside clarabel, every gap beside parry.
//!
//! Ours comes to the exact pose in several rounds of linearised gaps; clarabel is given the last
//! round's problem, so it does a third to a fifth of the work.

use crate::cases::Case;
use crate::clarabel::{Posed, pose};
use crate::work::Work;
use ::clarabel::solver::SolverStatus;
use lightgap::chain::{Construction, Sizes};
use lightgap::contact::{Along, Body, Meeting, Play, Pose, Settler, Wish};
use lightgap::plane::Point;
use lightgap::scenario::Scenario;
use parry2d_f64::math::{Pose as Isometry, Vector};
use parry2d_f64::query;
use parry2d_f64::shape::{Ball, HalfSpace};
use std::hint::black_box;

/// Clarabel's residuals of 1e-8, over the weakest weight of a wish.
pub(crate) const POSE: f64 = 1e-5;
/// Two ways to add up the same products.
const ROUNDING: f64 = 1e-9;
/// Places that a moving hand comes through.
const PLACES: usize = 32;

/// The scenarios timed: a chain of each construction.
pub(crate) fn timed() -> [(&'static str, Scenario); 2] {
    let read = |text| lightgap_tests::read_scenario(text).expect("a scenario without faults");
    [
        ("ferry-winch", read(include_str!("../../../scenarios/ferry-winch.json"))),
        ("ferry-trike", read(include_str!("../../../scenarios/ferry-trike.json"))),
    ]
}

pub(crate) fn works() -> Vec<Work> {
    let mut works = Vec::new();
    for (id, scenario) in timed() {
        let sizes = *scenario.chain.chain().sizes();
        works.push(settle(
            &format!("{id} to its stop, all rounds"),
            &sizes,
            &[to_the_stop(&sizes)],
        ));
        let places: Vec<_> = (0..PLACES).map(|place| vec![held(&sizes, place)]).collect();
        works.push(settle(&format!("{id} under a moving hand, all rounds"), &sizes, &places));
        works.push(gaps(&format!("{id}, every gap with its slope"), &sizes));
    }
    works
}

/// A turn asked for a little further than the stop.
pub(crate) fn to_the_stop(sizes: &Sizes) -> Vec<Wish> {
    let beyond = 1.02 * Play::of(sizes).turn.angle_rad;
    let yaw = |body, value| Wish::Coordinate { body, along: Along::Yaw, value, weight: 1.0 };
    let halfway = 0.5 * beyond;
    vec![yaw(Body::NextOuter, beyond), yaw(Body::InnerFar, halfway), yaw(Body::InnerNear, halfway)]
}

/// The next outer link held in its middle by a hand that goes round past both stops.
fn held(sizes: &Sizes, place: usize) -> Wish {
    let inside = Point::new(0.5 * sizes.pitch_mm, 0.0);
    let turn = std::f64::consts::TAU * place as f64 / PLACES as f64;
    let reach_mm = 3.0 * sizes.side_gap_mm();
    let hand = Point::new(0.1 * turn.cos(), turn.sin()) * reach_mm;
    let to = Pose::straight(sizes).of(Body::NextOuter).outward(inside) + hand;
    Wish::Point { body: Body::NextOuter, inside, to }
}

/// The unknown that is the next outer link's yaw times the pitch.
pub(crate) fn next_yaw(sizes: &Sizes) -> usize {
    if sizes.construction == Construction::Bushed { 5 } else { 8 }
}

/// Settles one list of wishes after the other; the answer is how far the next link turned.
fn settle(name: &str, sizes: &Sizes, wishes: &[Vec<Wish>]) -> Work {
    let mut settler = Settler::plan(sizes);
    let straight = *settler.straight();
    let mut posed: Vec<Posed> = Vec::new();
    for wishes in wishes {
        settler.settle(wishes, &straight);
        posed.push(pose(&Case::of(settler.problem())));
        assert_eq!(posed[posed.len() - 1].solve().status, SolverStatus::Solved);
    }
    let (next_yaw, pitch_mm) = (next_yaw(sizes), sizes.pitch_mm);
    let (mut their_turn, mut turn, wishes) = (0, 0, wishes.to_vec());
    Work::new(
        name,
        POSE,
        move || {
            their_turn = (their_turn + 1) % posed.len();
            posed[their_turn].solve().x[next_yaw] / pitch_mm
        },
        move || {
            turn = (turn + 1) % wishes.len();
            settler.settle(&wishes[turn], &straight);
            settler.pose().of(Body::NextOuter).yaw_rad
        },
    )
}

/// A meeting as parry takes it: a ball (a corner) over a half space (a face).
pub(crate) struct Query {
    ball: Ball,
    face: HalfSpace,
    corner: Isometry,
    plane: Isometry,
}

impl Query {
    pub(crate) fn of(meeting: &Meeting, pose: &Pose) -> Self {
        let place = pose.of(meeting.corner_body);
        let at = place.outward(meeting.corner);
        let face_place = pose.of(meeting.face_body);
        let through = face_place.outward(meeting.face);
        Self {
            ball: Ball::new(meeting.radius_mm),
            face: HalfSpace::new(Vector::new(meeting.normal.x, meeting.normal.y)),
            corner: Isometry::new(Vector::new(at.x, at.y), place.yaw_rad),
            plane: Isometry::new(Vector::new(through.x, through.y), face_place.yaw_rad),
        }
    }

    pub(crate) fn gap_mm(&self) -> f64 {
        const FAR_MM: f64 = 1e3;
        query::contact(&self.plane, &self.face, &self.corner, &self.ball, FAR_MM)
            .expect("a pair that is known")
            .map_or(f64::NAN, |contact| contact.dist)
    }
}

/// Every gap of a pitch at its stop, its witness included on both sides' terms: parry gives the
/// distance and two points, we the distance and its slope. Placing the shapes is not counted against
/// parry.
fn gaps(name: &str, sizes: &Sizes) -> Work {
    let mut settler = Settler::plan(sizes);
    let straight = *settler.straight();
    settler.settle(&to_the_stop(sizes), &straight);
    let pose = *settler.pose();
    let meetings = settler.meetings().to_vec();
    let queries: Vec<_> = meetings.iter().map(|meeting| Query::of(meeting, &pose)).collect();
    for (query, meeting) in queries.iter().zip(&meetings) {
        let (theirs, ours) = (query.gap_mm(), meeting.gap_mm(&pose));
        assert!((theirs - ours).abs() < ROUNDING, "{}: {theirs} {ours}", meeting.contact.id());
    }
    Work::new(
        name,
        ROUNDING,
        move || queries.iter().map(|query| black_box(query).gap_mm()).sum(),
        move || meetings.iter().map(|meeting| black_box(meeting.slope(&pose)).gap_mm).sum(),
    )
}
