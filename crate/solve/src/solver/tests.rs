//! Small problems with answers known by hand.

use super::*;

/// Rounding of scaled numbers near 1, with room for the last bits of a refinement.
const EXACT: f64 = 1e-12;

fn dense(hessian: &[&[f64]], gradient: &[f64], rows: &[(&[f64], f64)]) -> Problem {
    let n = gradient.len();
    let mut problem = Problem::new(n, n - 1);
    for i in 0..n {
        for j in 0..=i {
            *problem.hessian_mut(i, j) = hessian[i][j];
        }
    }
    problem.gradient_mut().copy_from_slice(gradient);
    for (row, gap) in rows {
        problem.push_row(0, row, *gap);
    }
    problem
}

fn assert_near(got: &[f64], wanted: &[f64]) {
    assert_eq!(got.len(), wanted.len());
    for (got, wanted) in got.iter().zip(wanted) {
        assert!((got - wanted).abs() < EXACT, "{got} is not {wanted}");
    }
}

#[test]
fn a_corner_holds_a_pulled_body() {
    let problem = dense(
        &[&[0.0, 0.0], &[0.0, 0.0]],
        &[-3.0, -5.0],
        &[(&[-1.0, 0.0], 0.25), (&[0.0, -1.0], 0.5), (&[-1.0, -1.0], 9.0)],
    );
    let mut solver = Solver::new();
    let report = solver.solve(&problem, Start::Cold);
    assert_eq!(report.status, Status::Solved);
    assert_near(solver.x(), &[0.25, 0.5]);
    assert_near(solver.push(), &[3.0, 5.0, 0.0]);
    assert_eq!(solver.active(), &[true, true, false]);
}

#[test]
fn equal_rows_share_a_spread_force_equally() {
    let row: (&[f64], f64) = (&[-1.0, 0.0], 0.25);
    let problem = dense(&[&[0.0, 0.0], &[0.0, 1.0]], &[-3.0, 0.0], &[row, row, row]);
    let mut solver = Solver::new();
    assert_eq!(solver.solve(&problem, Start::Cold).status, Status::Solved);
    assert_near(solver.x(), &[0.25, 0.0]);
    assert_near(&[solver.push().iter().sum()], &[3.0]);
    assert_near(solver.spread(&problem), &[1.0, 1.0, 1.0]);
}

#[test]
fn a_body_nothing_acts_on_stays_where_it_is() {
    let problem = dense(&[&[0.0, 0.0], &[0.0, 0.0]], &[0.0, 0.0], &[(&[1.0, 1.0], 0.5)]);
    let mut solver = Solver::new();
    assert_eq!(solver.solve(&problem, Start::Cold).status, Status::Solved);
    assert_near(solver.x(), &[0.0, 0.0]);
    assert_near(solver.push(), &[0.0]);
}

#[test]
fn two_walls_too_close_are_infeasible_by_the_right_amount() {
    let problem = dense(&[&[1.0]], &[0.0], &[(&[1.0], -0.3), (&[-1.0], 0.1)]);
    let mut solver = Solver::new();
    let report = solver.solve(&problem, Start::Cold);
    assert_eq!(report.status, Status::Infeasible);
    assert_near(solver.x(), &[0.2]);
    assert_near(solver.push(), &[0.1, 0.1]);
    assert!((report.worst_gap + 0.1).abs() < EXACT);
}

#[test]
fn a_gap_of_exactly_zero_is_possible() {
    let problem = dense(&[&[0.0]], &[1.0], &[(&[1.0], -0.3), (&[-1.0], 0.3)]);
    let mut solver = Solver::new();
    assert_eq!(solver.solve(&problem, Start::Cold).status, Status::Solved);
    assert_near(solver.x(), &[0.3]);
    assert_near(&[solver.push()[0] - solver.push()[1]], &[1.0]);
}

#[test]
fn nothing_to_stop_the_body_is_stalled() {
    let problem = dense(&[&[0.0]], &[-1.0], &[(&[1.0], 0.5)]);
    assert_eq!(Solver::new().solve(&problem, Start::Cold).status, Status::Stalled);
}

#[test]
fn numbers_that_are_not_finite_are_stalled() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let gap = dense(&[&[1.0]], &[0.0], &[(&[1.0], bad)]);
        let row = dense(&[&[1.0]], &[0.0], &[(&[bad], 1.0)]);
        let load = dense(&[&[1.0]], &[bad], &[(&[1.0], 1.0)]);
        let stiffness = dense(&[&[bad]], &[0.0], &[(&[1.0], 1.0)]);
        for problem in [gap, row, load, stiffness] {
            assert_eq!(Solver::new().solve(&problem, Start::Cold).status, Status::Stalled);
        }
    }
}

#[test]
fn a_warm_start_gives_the_cold_answer() {
    let mut problem = dense(
        &[&[2.0, 0.5], &[0.5, 1.0]],
        &[-3.0, -5.0],
        &[(&[-1.0, 0.0], 0.25), (&[0.0, -1.0], 0.5), (&[-1.0, -1.0], 0.6)],
    );
    let mut warm = Solver::new();
    warm.solve(&problem, Start::Cold);
    problem.set_gap(2, 0.7);
    let mut cold = Solver::new();
    assert_eq!(warm.solve(&problem, Start::Warm).status, Status::Solved);
    assert_eq!(cold.solve(&problem, Start::Cold).status, Status::Solved);
    assert_near(warm.x(), cold.x());
    assert_near(warm.push(), cold.push());
}

#[test]
fn a_foreseen_answer_is_found_at_once() {
    // Bodies pushed against a wall each, every other one too weakly to reach it.
    let bodies = SMALL + 3;
    let mut problem = Problem::new(bodies, 1);
    for body in 0..bodies {
        *problem.hessian_mut(body, body) = 1.0;
        problem.gradient_mut()[body] = if body % 2 == 0 { -1.0 } else { -0.2 };
        problem.push_row(body, &[-1.0], 0.5);
    }
    let foreseen = (0..bodies).map(|body| if body % 2 == 0 { (0.5, true) } else { (0.0, false) });
    let mut solver = Solver::new();
    solver.foresee(bodies, foreseen.clone());
    let report = solver.solve(&problem, Start::Warm);
    assert_eq!((report.status, report.rounds), (Status::Solved, 1));
    assert_near(solver.push(), &foreseen.map(|(push, _)| push).collect::<Vec<_>>());
    let cold = Solver::new().solve(&problem, Start::Cold);
    assert!(cold.rounds > 1, "{}", cold.rounds);
}
