//! The contact solver beside clarabel, set-up included on both sides, data identical.

#[path = "../../oracles/cases.rs"]
mod cases;
#[path = "../../oracles/clarabel.rs"]
mod clarabel;

use cases::{Case, Joint, REFERENCE, joint, strand, three_links};
use criterion::{Criterion, criterion_group, criterion_main};
use lightgap::solve::{Problem, Solver, Start, Status};
use lightgap_bench::{Row, row};

/// Solves once to be sure of the answer, then compares the times. Turns alternate between the case
/// and a neighbour that differs in its gaps alone, as it does under a slider: what a warm start is for.
fn compare(
    criterion: &mut Criterion,
    work: &str,
    case: &Case,
    neighbour: &Case,
    start: Start,
    goal: f64,
) {
    let posed = clarabel::pose(case);
    let mut problem: Problem = case.problem();
    let mut solver = Solver::new();
    let report = solver.solve(&problem, Start::Cold);
    assert_eq!(report.status, Status::Solved);
    let wanted = case.value(&posed.solve().x);
    let got = case.value(solver.x());
    assert!((got - wanted).abs() <= 1e-6 * (1.0 + wanted.abs()), "{got} against {wanted}");
    let mut turn = false;
    row(
        criterion,
        Row { work, baseline: "clarabel", goal },
        || posed.solve().x[0],
        || {
            turn = !turn;
            let now = if turn { neighbour } else { case };
            for (row, (_, _, gap)) in now.rows.iter().enumerate() {
                problem.set_gap(row, *gap);
            }
            let report = solver.solve(&problem, start);
            debug_assert_eq!(report.status, Status::Solved);
            solver.x()[0]
        },
    );
}

fn solve(criterion: &mut Criterion) {
    let load = [300.0, 7.0, 40.0];
    let wider = Joint { clearance: 1.01 * REFERENCE.clearance, ..REFERENCE };
    let (one, other) = (joint(REFERENCE, load, true), joint(wider, load, true));
    let (three, three_wider) = (three_links(REFERENCE, load), three_links(wider, load));
    let (taut, further) =
        (strand(REFERENCE, 40, 12.0, 300.0), strand(REFERENCE, 40, 12.012, 300.0));
    for (how, start) in [("cold", Start::Cold), ("warm", Start::Warm)] {
        let mut with = |work: &str, case: &Case, neighbour: &Case, goal: f64| {
            compare(criterion, &format!("{work}, {how}"), case, neighbour, start, goal);
        };
        with("joint (3 unknowns, 16 gaps)", &one, &other, 100.0);
        with("three links (9 unknowns, 60 gaps)", &three, &three_wider, 50.0);
        let goal = if start == Start::Warm { 40.0 } else { 8.0 };
        with("strand (121 unknowns, 656 gaps)", &taut, &further, goal);
    }
    for links in [200, 1000] {
        let at = |offset_mm: f64| strand(REFERENCE, links, offset_mm, 300.0);
        let offset_mm = 0.3 * links as f64;
        let (case, neighbour) = (at(offset_mm), at(1.001 * offset_mm));
        compare(
            criterion,
            &format!("strand of {links} links, cold"),
            &case,
            &neighbour,
            Start::Cold,
            8.0,
        );
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30).measurement_time(std::time::Duration::from_secs(2)).warm_up_time(std::time::Duration::from_millis(500));
    targets = solve
}
criterion_main!(benches);
