//! Contact problems beside clarabel, set-up included on both sides.

use crate::cases::{Case, Joint, REFERENCE, joint, strand, three_links};
use crate::clarabel::pose;
use crate::work::Work;
use ::clarabel::solver::SolverStatus;
use lightgap::solve::{Report, Solver, Start, Status};

/// Clarabel stops at residuals of 1e-8 of its own scaling; values agree to a hundred times that.
const VALUE: f64 = 1e-6;
/// What ours must hold before it is timed, as a share of the largest force or length.
const EXACT: f64 = 1e-10;

pub(crate) fn works() -> Vec<Work> {
    let load = [300.0, 7.0, 40.0];
    let wider = Joint { clearance: 1.01 * REFERENCE.clearance, ..REFERENCE };
    let joints = [REFERENCE, wider].map(|sizes| joint(sizes, load, true));
    let threes = [REFERENCE, wider].map(|sizes| three_links(sizes, load));
    let taut = |links: usize, offset_mm: f64| {
        [1.0, 1.001].map(|share| strand(REFERENCE, links, share * offset_mm, 300.0))
    };
    let mut works = Vec::new();
    for (how, start) in [("cold", Start::Cold), ("warm", Start::Warm)] {
        let mut add = |work: &str, cases: &[Case; 2]| {
            works.push(row(&format!("{work}, {how}"), cases, start));
        };
        add("joint (3 unknowns, 16 gaps)", &joints);
        add("three links (9 unknowns, 60 gaps)", &threes);
        add("strand of 10 links", &taut(10, 3.0));
        add("strand of 40 links (121 unknowns, 656 gaps)", &taut(40, 12.0));
        add("strand of 200 links", &taut(200, 60.0));
        add("strand of 1000 links", &taut(1000, 300.0));
    }
    works
}

/// Turns go to and fro between two cases that differ in their gaps alone, as they do under a slider:
/// what a warm start is for. The answer is the work done by the load, the same for every optimum.
fn row(name: &str, cases: &[Case; 2], start: Start) -> Work {
    let posed = [pose(&cases[0]), pose(&cases[1])];
    let loads = cases[0].gradient.clone();
    let also_loads = loads.clone();
    let mut problem = cases[0].problem();
    let gaps = cases.each_ref().map(|case| case.rows.iter().map(|row| row.2).collect::<Vec<_>>());
    let mut solver = Solver::new();
    for (case, posed) in cases.iter().zip(&posed) {
        let report = solver.solve(&case.problem(), start);
        assert_exact(case, &solver, &report);
        let theirs = posed.solve();
        assert_eq!(theirs.status, SolverStatus::Solved);
        let (got, wanted) = (case.value(solver.x()), case.value(&theirs.x));
        assert!((got - wanted).abs() <= VALUE * (1.0 + wanted.abs()), "{got} against {wanted}");
    }
    let (mut their_turn, mut turn) = (0, 0);
    Work::new(
        name,
        VALUE,
        move || {
            their_turn = 1 - their_turn;
            work_done(&loads, &posed[their_turn].solve().x)
        },
        move || {
            turn = 1 - turn;
            for (row, gap) in gaps[turn].iter().enumerate() {
                problem.set_gap(row, *gap);
            }
            solver.solve(&problem, start);
            work_done(&also_loads, solver.x())
        },
    )
}

fn work_done(loads: &[f64], x: &[f64]) -> f64 {
    loads.iter().zip(x).map(|(load, x)| load * x).sum()
}

/// The conditions of the optimum, from the case's own data: no gap below zero, no pull, no push
/// where it is apart, every force balanced, all to a share of [`EXACT`].
fn assert_exact(case: &Case, solver: &Solver, report: &Report) {
    assert_eq!(report.status, Status::Solved);
    let largest = |values: &[f64]| values.iter().fold(0.0_f64, |most, x| most.max(x.abs()));
    let length = EXACT * (1.0 + largest(solver.x()));
    let strength = EXACT * (1.0 + largest(solver.push()).max(largest(&case.gradient)));
    let mut force = case.force(solver.x());
    for ((first, coefficients, gap), push) in case.rows.iter().zip(solver.push()) {
        let moved: f64 = coefficients.iter().zip(&solver.x()[*first..]).map(|(a, x)| a * x).sum();
        let at = gap + moved;
        assert!(at >= -length && *push >= 0.0 && (*push == 0.0 || at <= length), "{at} {push}");
        for (force, value) in force[*first..].iter_mut().zip(coefficients) {
            *force -= push * value;
        }
    }
    assert!(largest(&force) <= strength, "unbalanced {}", largest(&force));
}
