//! The contact solver beside clarabel, set-up included on both sides, data identical.

#[path = "../../oracles/cases.rs"]
mod cases;
#[path = "../../oracles/clarabel.rs"]
mod clarabel;

use cases::{Case, REFERENCE, joint, strand, three_links};
use criterion::{Criterion, criterion_group, criterion_main};
use lightgap::solve::{Problem, Solver, Start, Status};
use lightgap_bench::{Row, row};

/// Solves once to be sure of the answer, then compares the times.
fn compare(criterion: &mut Criterion, work: &str, case: &Case, start: Start, goal: f64) {
    let posed = clarabel::pose(case);
    let mut problem: Problem = case.problem();
    let mut solver = Solver::new();
    let report = solver.solve(&problem, Start::Cold);
    assert_eq!(report.status, Status::Solved);
    let wanted = case.value(&posed.solve().x);
    let got = case.value(solver.x());
    assert!((got - wanted).abs() <= 1e-6 * (1.0 + wanted.abs()), "{got} against {wanted}");
    // A warm solve is of a neighbour: every gap moves by a thousandth of the largest, back and
    // forth, as it does under a slider.
    let gaps: Vec<f64> = case.rows.iter().map(|row| row.2).collect();
    let shift = 1e-3 * gaps.iter().fold(0.0, |largest: f64, gap| largest.max(gap.abs()));
    let mut turn = false;
    row(
        criterion,
        Row { work, baseline: "clarabel", goal },
        || posed.solve().x[0],
        || {
            turn = !turn;
            for (row, gap) in gaps.iter().enumerate() {
                problem.set_gap(row, if turn { gap + shift } else { *gap });
            }
            let report = solver.solve(&problem, start);
            debug_assert_eq!(report.status, Status::Solved);
            solver.x()[0]
        },
    );
}

fn solve(criterion: &mut Criterion) {
    let load = [300.0, 7.0, 40.0];
    let one = joint(REFERENCE, load, true);
    compare(criterion, "joint (3 unknowns, 16 gaps), cold", &one, Start::Cold, 100.0);
    compare(criterion, "joint (3 unknowns, 16 gaps), warm", &one, Start::Warm, 100.0);
    let three = three_links(REFERENCE, load);
    compare(criterion, "three links (9 unknowns, 60 gaps), cold", &three, Start::Cold, 50.0);
    compare(criterion, "three links (9 unknowns, 60 gaps), warm", &three, Start::Warm, 50.0);
    let taut = strand(REFERENCE, 40, 12.0, 300.0);
    compare(criterion, "strand (121 unknowns, 656 gaps), cold", &taut, Start::Cold, 8.0);
    compare(criterion, "strand (121 unknowns, 656 gaps), warm", &taut, Start::Warm, 40.0);
    for links in [200, 1000] {
        let taut = strand(REFERENCE, links, 0.3 * links as f64, 300.0);
        let work = format!("strand of {links} links, cold");
        compare(criterion, &work, &taut, Start::Cold, 8.0);
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30).measurement_time(std::time::Duration::from_secs(2)).warm_up_time(std::time::Duration::from_millis(500));
    targets = solve
}
criterion_main!(benches);
