//! A million parts, a joint's openings, a file: what the page's later questions do,
//! beside libraries that could do it.

use crate::closing::{LIQUID, PROBES, opened};
use crate::crowd::{parts, ranks};
use crate::work::Work;
use lightgap::chain::Sizes;
use lightgap::contact::{Joint, Pose};
use lightgap::reach::{Entered, Hull, Wall, WallEntry, section};
use parry2d_f64::math::{Pose as Isometry, Vector};
use parry2d_f64::query;
use parry2d_f64::shape::{Ball, SharedShape};
use serde_json::Value;
use std::hint::black_box;

/// A grain may be this much deeper in metal, mm, than it fits.
const SLACK_MM: f64 = 2e-9;
/// Places beside ends: one place of a wall at either.
const SPACED: f64 = 0.02;
/// Places of a wall that parry is asked for; ours finds the ends of what is reached.
const PLACES: u32 = 65;

pub(crate) fn works() -> Vec<Work> {
    vec![order(), reach(), read()]
}

/// Sorts the numbers of four times a million parts by their size.
fn order() -> Work {
    let (kinds, _) = parts();
    let first = move |kind: &Vec<f64>| {
        let mut order: Vec<u32> = (0..kind.len() as u32).collect();
        order.sort_unstable_by(|a, b| kind[*a as usize].total_cmp(&kind[*b as usize]));
        f64::from(order[0])
    };
    Work::new(
        "matching, the order of 4 times a million parts",
        0.0,
        move || kinds.iter().map(&first).sum(),
        || ranks(1),
    )
}

/// Where a grain can lie on the walls of a joint. Ours also finds out whether it can come there, where a
/// bristle reaches and how a liquid fills the gaps.
fn reach() -> Work {
    let (sizes, pose) = opened();
    let cut = section(&sizes, &pose, Joint::First);
    let metal: Vec<_> = cut.hulls.iter().map(piece).collect();
    let radius_mm = 0.5 * PROBES.particle_mm;
    let clear = move || {
        let grain = Ball::new(radius_mm);
        let is_clear = |share: f64, wall: &Wall| {
            let middle = wall.at(share) + radius_mm * wall.normal;
            let place = Isometry::translation(middle.x, middle.y);
            metal.iter().all(|(piece, extra_mm)| {
                query::contact(&Isometry::IDENTITY, piece.as_ref(), &place, &grain, *extra_mm)
                    .expect("a pair that is known")
                    .is_none_or(|contact| contact.dist >= extra_mm - SLACK_MM)
            })
        };
        let of_wall = |wall| {
            let shares = (0..PLACES).map(|place| f64::from(place) / f64::from(PLACES - 1));
            shares.filter(|share| is_clear(*share, wall)).count() as f64 / f64::from(PLACES)
        };
        cut.walls.iter().map(of_wall).sum::<f64>() / cut.walls.len() as f64
    };
    let row = "reach, bristle, grain and liquid in a joint";
    Work::new(row, SPACED, clear, move || entered(&sizes, &pose))
}

/// The same share by ours, every wall alike.
fn entered(sizes: &Sizes, pose: &Pose) -> f64 {
    let walls = Entered::of(sizes, pose, Joint::First, &PROBES, &LIQUID).walls;
    let share = |wall: &WallEntry| wall.particle.iter().map(|(from, to)| to - from).sum::<f64>();
    walls.iter().map(share).sum::<f64>() / walls.len() as f64
}

/// A piece of metal as parry takes it, and how far the metal reaches past it.
fn piece(hull: &Hull) -> (SharedShape, f64) {
    let points: Vec<_> = hull.points().iter().map(|at| Vector::new(at.x, at.y)).collect();
    let shape = match points[..] {
        [from, to] => SharedShape::segment(from, to),
        _ => SharedShape::convex_hull(&points).expect("a convex piece"),
    };
    (shape, hull.radius_mm())
}

/// Reads a scenario's text. Theirs holds it to the published schema; ours also to the rules between
/// sizes, and makes the chain.
fn read() -> Work {
    const TEXT: &str = include_str!("../../../scenarios/ferry-thousand.json");
    let schema = serde_json::from_str(include_str!("../../../scenarios/schema.json"));
    let schema = jsonschema::validator_for(&schema.expect("JSON")).expect("a schema");
    Work::new(
        "scenario ferry-thousand, read and checked",
        0.0,
        move || {
            let file: Value = serde_json::from_str(black_box(TEXT)).expect("JSON");
            assert!(schema.is_valid(&file), "a scenario");
            file["limits"].as_array().map_or(f64::NAN, |limits| limits.len() as f64)
        },
        || {
            let scenario = lightgap_tests::read_scenario(black_box(TEXT));
            scenario.expect("a scenario without faults").limits.len() as f64
        },
    )
}
