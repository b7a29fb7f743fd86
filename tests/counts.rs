//! What named solves cost, in factorisations and rounds, which no load of a machine changes. Each limit
//! stands a little above what the solve takes today, which `--nocapture` prints.
//!
//! A solve that has become dearer is either mended, or its limit is raised in the commit that makes it
//! dearer and says why. Where a solve has become cheaper, lower its limit. `valgrind --tool=callgrind`
//! (see DEVELOPERS.md) tells what a factorisation costs.

#[path = "oracles/cases.rs"]
mod cases;

use cases::{Case, REFERENCE, joint, strand, three_links};
use lightgap::chain::{Chain, Sizes};
use lightgap::contact::{Along, Body, Play, Settler, Wish, widen};
use lightgap::drive::{ChainLine, Study, Sweep, Variant};
use lightgap::plane::Point;
use lightgap::posing::{Ask, Mode, Posing, cap};
use lightgap::solve::{Solver, Start, Status};
use lightgap::strand::{Ends, Outcome, Setup, Strand};
use lightgap_tests::read_scenario;

const LOAD: [f64; 3] = [300.0, 7.0, 40.0];
/// Pull on a strand, N.
const TAUT_N: f64 = 300.0;

fn hold(what: &str, count: u32, most: u32) {
    println!("{what}: {count} of at most {most}");
    assert!(
        count <= most,
        "{what}: {count}, where {most} was the limit; mend it, or raise the limit in tests/counts.rs and say why"
    );
}

/// Factorisations of a solve from nothing, and of the next one whose gaps are a thousandth wider.
fn solved(one: &Case, next: &Case) -> [u32; 2] {
    let mut solver = Solver::new();
    [(one, Start::Cold), (next, Start::Warm)].map(|(case, start)| {
        let report = solver.solve(&case.problem(), start);
        assert_eq!(report.status, Status::Solved);
        report.rounds
    })
}

#[test]
fn a_contact_problem_costs_so_many_factorisations() {
    let wider = cases::Joint { clearance: 1.001 * REFERENCE.clearance, ..REFERENCE };
    let joints = solved(&joint(REFERENCE, LOAD, true), &joint(wider, LOAD, true));
    hold("a joint, cold", joints[0], 2);
    hold("a joint, warm", joints[1], 2);
    let threes = solved(&three_links(REFERENCE, LOAD), &three_links(wider, LOAD));
    hold("three links, cold", threes[0], 2);
    hold("three links, warm", threes[1], 2);
}

#[test]
fn a_strand_costs_factorisations_that_hardly_grow_with_its_links() {
    for (links, cold, warm) in [(10, 11, 2), (40, 11, 2), (200, 12, 2), (1000, 13, 2)] {
        let offset_mm = 0.3 * links as f64;
        let at = |share: f64| strand(REFERENCE, links, share * offset_mm, TAUT_N);
        let [first, next] = solved(&at(1.0), &at(1.001));
        hold(&format!("a strand of {links} links, cold"), first, cold);
        hold(&format!("a strand of {links} links, warm"), next, warm);
    }
}

#[test]
fn a_whole_strand_takes_no_more_rounds_the_longer_it_is() {
    let sizes: Sizes = *winch().sizes();
    // Up to 47 joints it is led from the free strand; a longer one begins as one of half as many.
    for (joints, springy, rigid) in [(30, 13, 11), (100, 9, 4), (300, 8, 4), (1000, 6, 5)] {
        for (stiffness_n_mm, most) in [(Some(6e5), springy), (None, rigid)] {
            let setup = Setup { joints, tension_n: TAUT_N, stiffness_n_mm, ends: Ends::Held };
            let mut strand = Strand::new(&sizes, setup);
            let solution = strand.solve(1.5 * strand.free_offset_mm());
            assert_eq!(solution.outcome, Outcome::Solved);
            let what = if stiffness_n_mm.is_some() { "springy" } else { "rigid" };
            hold(&format!("a whole {what} strand of {joints} joints"), solution.rounds, most);
        }
    }
}

/// The chain of the winch.
fn winch() -> Chain {
    let text = include_str!("../scenarios/ferry-winch.json");
    *read_scenario(text).expect("a scenario without faults").chain.chain()
}

#[test]
fn a_pitch_comes_to_its_stop_in_a_few_rounds() {
    let sizes: Sizes = *winch().sizes();
    let beyond = 1.02 * Play::of(&sizes).turn.angle_rad;
    let yaw = |body, value| Wish::Coordinate { body, along: Along::Yaw, value, weight: 1.0 };
    let turned = [(Body::NextOuter, 1.0), (Body::InnerFar, 0.5), (Body::InnerNear, 0.5)];
    let wishes = turned.map(|(body, share)| yaw(body, share * beyond));
    let mut settler = Settler::plan(&sizes);
    let straight = *settler.straight();
    let settled = settler.settle(&wishes, &straight);
    hold("a pitch to its stop, rounds", settled.rounds, 4);
    hold("a pitch to its stop, the last round's factorisations", settled.solve.rounds, 2);
}

#[test]
fn a_frame_of_a_drag_costs_a_few_rounds() {
    const FRAMES: u32 = 60;
    let chain = winch();
    let factor = f64::from(cap(&chain));
    let drawn = Chain::new(widen(&chain, factor)).expect("it can be drawn");
    let mut posing = Posing::new(&chain, &drawn, factor, 0.4);
    posing.put(Ask::Share { mode: Mode::Turn, share: 0.0 });
    let pitch_mm = chain.sizes().pitch_mm;
    let at = posing.drawn_pose().of(Body::NextOuter).outward(Point::new(0.8 * pitch_mm, 0.0));
    posing.grab(Body::NextOuter, at);
    let (mut rounds, mut factorised) = (0, 0);
    for frame in 0..FRAMES {
        let turn = std::f64::consts::TAU * f64::from(frame) / f64::from(FRAMES);
        posing.drag(at + 0.1 * pitch_mm * Point::new(0.3 * turn.cos(), turn.sin()));
        for settled in posing.settled().map(|settled| settled.expect("it was settled")) {
            rounds += settled.rounds;
            factorised += settled.solve.rounds;
        }
    }
    hold("sixty frames of a drag, rounds of both pitches", rounds, 430);
    hold("sixty frames of a drag, factorisations of last rounds", factorised, 130);
}

#[test]
fn a_step_of_a_drive_s_slider_costs_a_few_rounds() {
    let text = include_str!("../scenarios/ferry-trike.json");
    let line = ChainLine::of(&read_scenario(text).expect("a scenario")).expect("a drive");
    let study = Study::of(&line, 60);
    for (variant, whole, most) in [(Variant::Elastic, 70, 6), (Variant::Rigid, 48, 4)] {
        let strand = variant.strand(&line).expect("its own chain");
        let mut sweep = Sweep::new(&line, strand, study.step_mm());
        let middle = sweep.step(0.5 * study.largest_mm());
        let rounds = (0..=middle).map(|step| sweep.at(step).expect("a pose").rounds);
        let rounds: Vec<u32> = rounds.collect();
        let key = variant.key();
        hold(&format!("{key} strand, rounds of {middle} steps"), rounds.iter().sum(), whole);
        hold(&format!("{key} strand, rounds of the last step"), rounds[middle], most);
    }
}
