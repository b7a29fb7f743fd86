//! The contact solver against clarabel and against its own conditions: random problems, degenerate
//! ones, and for each the twin that no pose solves, the twin in odd units and the stiff twin.
//! Status first, then numbers; single pushes are not unique where faces lie flat, so their sums
//! (the force they balance) are compared.

mod cases;
mod clarabel;

use ::clarabel::solver::SolverStatus;
use cases::{Case, Joint, REFERENCE, Random, joint, random, strand, three_links};
use lightgap::solve::{Report, Solver, Start, Status};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, RngSeed, TestRunner};

/// Clarabel stops at residuals of 1e-8 of its own scaling; values agree to a hundred times that.
const VALUE: f64 = 1e-6;
/// Forces come from differences of poses times stiffness: two digits less.
const FORCE: f64 = 1e-4;
/// Our own residuals, relative to the size of the pose or of the largest push: the solver asks
/// 1e-12 in its own scale, which is at most a factor 4 from the caller's.
const EXACT: f64 = 4e-12;
/// Two of our answers to one problem: residuals times the condition of the held rows.
const SAME: f64 = 1e-7;
/// How much too tight the infeasible twins are, mm.
const SHORT_MM: f64 = 1e-3;

/// 256 cases, the same ones on every run.
fn config() -> Config {
    Config {
        cases: 256,
        rng_algorithm: RngAlgorithm::ChaCha,
        rng_seed: RngSeed::Fixed(0x1196_7a90),
        failure_persistence: None,
        ..Config::default()
    }
}

fn largest(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |largest, value| largest.max(value.abs()))
}

/// The conditions of the optimum, from the case's own data.
fn assert_optimal(case: &Case, solver: &Solver, report: &Report) {
    assert_eq!(report.status, Status::Solved, "{report:?}");
    let (x, push) = (solver.x(), solver.push());
    let mut force = case.force(x);
    for ((first, coefficients, gap), &push) in case.rows.iter().zip(push) {
        let norm = largest(coefficients);
        let at: f64 = gap + coefficients.iter().zip(&x[*first..]).map(|(a, x)| a * x).sum::<f64>();
        let room = EXACT * norm * (1.0 + largest(x)) + EXACT * gap.abs().max(norm * widest(case));
        assert!(at >= -room, "gap {at}, room {room}");
        assert!(push >= 0.0);
        assert!(push == 0.0 || at <= room, "pushes at a gap of {at}");
        for (force, value) in force[*first..].iter_mut().zip(coefficients) {
            *force -= push * value;
        }
    }
    let hardest = strongest(case, push);
    assert!(largest(&force) <= EXACT * hardest, "unbalanced {}", largest(&force));
}

/// The largest gap, each row taken as a distance.
fn widest(case: &Case) -> f64 {
    case.rows.iter().map(|row| row.2.abs() / largest(&row.1)).fold(0.0, f64::max)
}

/// The largest force at work: a load, a push, or the stiffness times the largest gap.
fn strongest(case: &Case, push: &[f64]) -> f64 {
    let pushes = case.rows.iter().zip(push).map(|(row, push)| push * largest(&row.1));
    let stiffest = case.hessian.iter().map(|entry| entry.2.abs()).fold(0.0, f64::max);
    pushes.fold(largest(&case.gradient).max(stiffest * widest(case)), f64::max)
}

fn assert_agrees(case: &Case) {
    let mut solver = Solver::new();
    let report = solver.solve(&case.problem(), Start::Cold);
    let opinion = clarabel::pose(case).solve();
    assert_eq!(opinion.status, SolverStatus::Solved);
    assert_optimal(case, &solver, &report);
    let (ours, theirs) = (case.value(solver.x()), case.value(&opinion.x));
    assert!((ours - theirs).abs() <= VALUE * (1.0 + theirs.abs()), "{ours} against {theirs}");
    let (ours, theirs) = (case.force(solver.x()), case.force(&opinion.x));
    let scale = 1.0 + strongest(case, &opinion.push);
    for (ours, theirs) in ours.iter().zip(&theirs) {
        assert!((ours - theirs).abs() <= FORCE * scale, "{ours} against {theirs}");
    }
}

/// Refused by both, and our proof holds: pushes that cancel in every direction of motion while
/// their gaps add up to less than nothing.
fn assert_infeasible(case: &Case) {
    let mut solver = Solver::new();
    let report = solver.solve(&case.problem(), Start::Cold);
    assert_eq!(report.status, Status::Infeasible, "{report:?}");
    let theirs = clarabel::pose(case).solve().status;
    // Its verdict on the longest strands is that it ran out of steps; it never finds a pose.
    assert!(!matches!(theirs, SolverStatus::Solved | SolverStatus::AlmostSolved), "{theirs:?}");
    let mut sum = vec![0.0; case.unknowns];
    let mut room = 0.0;
    for ((first, coefficients, gap), push) in case.rows.iter().zip(solver.push()) {
        room += push * gap;
        for (sum, value) in sum[*first..].iter_mut().zip(coefficients) {
            *sum += push * value;
        }
    }
    // What the unbalanced rest could gain by moving as far as the pose is large stays below.
    let rest = sum.iter().map(|sum| sum.abs()).sum::<f64>() * largest(solver.x());
    assert!(room < -rest, "room {room}, unbalanced {rest}");
    assert!(report.worst_gap < 0.0);
}

fn assert_with_twins(case: &Case, random: &mut Random) {
    assert_agrees(case);
    assert_infeasible(&case.infeasible_twin(SHORT_MM));
    assert_agrees(&case.uneven_twin(random));
    assert_agrees(&case.stiff_twin(random));
}

/// A joint with none, one or both of its gaps closed, and a load that may lie along an axis.
fn degenerate(random: &mut Random) -> (Joint, [f64; 3]) {
    let mut sizes = REFERENCE;
    sizes.clearance *= [0.0, 1.0, 1.0][random.below(3)];
    sizes.side_gap *= [0.0, 1.0, 1.0, 1.0][random.below(4)];
    let load = [300.0, 20.0 * random.signed(), 100.0 * random.signed()];
    let along = [1.0, 0.0];
    (sizes, [load[0], load[1] * along[random.below(2)], load[2] * along[random.below(2)]])
}

#[test]
fn random_problems_agree_with_clarabel() {
    TestRunner::new(config())
        .run(&(any::<u64>(), 1..13_usize, 0..60_usize, 0..13_usize), |(seed, n, rows, rank)| {
            let mut source = Random(seed);
            let case = random(&mut source, n, rows, rank.min(n));
            assert_with_twins(&case, &mut source);
            Ok(())
        })
        .unwrap();
}

#[test]
fn flat_faces_closed_gaps_and_equal_rows_agree_with_clarabel() {
    TestRunner::new(config())
        .run(&any::<u64>(), |seed| {
            let mut source = Random(seed);
            let (sizes, load) = degenerate(&mut source);
            assert_with_twins(&joint(sizes, load, source.below(2) == 0), &mut source);
            let mut three = three_links(sizes, load);
            assert_with_twins(&three, &mut source);
            three.rows.extend(three.rows.clone());
            assert_agrees(&three);
            Ok(())
        })
        .unwrap();
}

#[test]
fn strands_agree_with_clarabel_or_are_refused_by_both() {
    let mut source = Random(7);
    let (mut posed, mut refused) = (0, 0);
    for turn in 0..32 {
        let links = 5 + source.below(30);
        let mut sizes = REFERENCE;
        sizes.clearance *= if turn % 4 == 0 { 0.0 } else { 1.0 };
        let offset = 0.75 * links as f64 * source.signed();
        let case = strand(sizes, links, offset, 300.0);
        if Solver::new().solve(&case.problem(), Start::Cold).status == Status::Infeasible {
            refused += 1;
            assert_infeasible(&case);
        } else {
            posed += 1;
            assert_agrees(&case);
            assert_agrees(&case.uneven_twin(&mut source));
            assert_infeasible(&case.infeasible_twin(SHORT_MM));
        }
    }
    assert!(posed >= 8 && refused >= 8, "{posed} posed, {refused} refused");
}

/// The case whose answer are, after `y`, the forces of least norm that balance what `solver` has posed: with
/// `t_i >= row_i . y` and `t_i >= 0` over the rows that touch, `1/2 t't - f . y` is least at
/// `t_i = push_i`. A little weight holds `y` where no row does.
fn spreading(case: &Case, solver: &Solver) -> (Case, Vec<usize>) {
    const WEAK: f64 = 1e-9;
    let gap = |(first, line, gap): &(usize, Vec<f64>, f64)| {
        gap + line.iter().zip(&solver.x()[*first..]).map(|(a, x)| a * x).sum::<f64>()
    };
    let room = 1e-9 * (1.0 + widest(case));
    let touching: Vec<_> = (0..case.rows.len()).filter(|&i| gap(&case.rows[i]) <= room).collect();
    let (n, m) = (case.unknowns, touching.len());
    let mut spread = Case::new(n + m, n + m - 1);
    let weights = (0..n + m).map(|i| (i, i, if i < n { WEAK } else { 1.0 }));
    spread.hessian.extend(weights);
    for (gradient, force) in spread.gradient.iter_mut().zip(case.force(solver.x())) {
        *gradient = -force;
    }
    for (k, &row) in touching.iter().enumerate() {
        let (first, line, _) = &case.rows[row];
        let mut above = vec![0.0; n + m];
        for (i, value) in line.iter().enumerate() {
            above[first + i] = -value;
        }
        above[n + k] = 1.0;
        spread.row(0, &above, 0.0);
        spread.row(n + k, &[1.0], 0.0);
    }
    (spread, touching)
}

#[test]
fn spread_forces_are_those_of_least_norm_that_clarabel_finds() {
    let mut source = Random(11);
    let (mut compared, mut spread_wider) = (0, 0);
    for _ in 0..24 {
        let links = 3 + source.below(12);
        let case = strand(REFERENCE, links, 0.4 * links as f64 * source.signed(), 300.0);
        let mut solver = Solver::new();
        let problem = case.problem();
        if solver.solve(&problem, Start::Cold).status != Status::Solved {
            continue;
        }
        compared += 1;
        let (twin, touching) = spreading(&case, &solver);
        let theirs = clarabel::pose(&twin).solve_closely();
        assert_eq!(theirs.status, SolverStatus::Solved);
        let unspread = solver.push().to_vec();
        let spread = solver.spread(&problem).to_vec();
        for (i, &push) in spread.iter().enumerate() {
            let place = touching.iter().position(|&row| row == i);
            let wanted = place.map_or(0.0, |k| theirs.x[case.unknowns + k]);
            assert!((push - wanted).abs() <= FORCE * 300.0, "row {i}: {push} is not {wanted}");
        }
        let apart = unspread.iter().zip(&spread).map(|(a, b)| (a - b).abs());
        spread_wider += u32::from(apart.fold(0.0, f64::max) > 1.0);
        assert!(solver.push() == unspread, "the answer itself stays");
    }
    assert!(
        compared >= 12 && spread_wider >= 4,
        "{compared} compared, {spread_wider} spread wider"
    );
}

#[test]
fn a_long_strand_takes_hardly_more_rounds_than_a_short_one() {
    // One round is linear in the links, so bounded rounds are linear time. The most seen is 53, at
    // 1000 links and an offset where forces fade out over hundreds of them.
    const MOST_ROUNDS: u32 = 80;
    for links in [50, 500] {
        for share in [0.01, 0.3] {
            let case = strand(REFERENCE, links, share * links as f64, 300.0);
            let mut solver = Solver::new();
            let report = solver.solve(&case.problem(), Start::Cold);
            assert_optimal(&case, &solver, &report);
            assert!(report.rounds <= MOST_ROUNDS, "{links} links: {} rounds", report.rounds);
            let neighbour = strand(REFERENCE, links, 1.0001 * share * links as f64, 300.0);
            let report = solver.solve(&neighbour.problem(), Start::Warm);
            assert_optimal(&neighbour, &solver, &report);
        }
    }
}

#[test]
fn other_units_by_powers_of_two_change_no_bit() {
    TestRunner::new(config())
        .run(&any::<u64>(), |seed| {
            let mut source = Random(seed);
            let (sizes, load) = degenerate(&mut source);
            let case = three_links(sizes, load);
            let (length, force) = (1.0 / 1024.0, 8.0);
            let mut other = case.clone();
            other.rows.iter_mut().for_each(|row| row.2 *= length);
            other.gradient.iter_mut().for_each(|load| *load *= force);
            other.hessian.iter_mut().for_each(|entry| entry.2 *= force / length);
            let (mut one, mut two) = (Solver::new(), Solver::new());
            one.solve(&case.problem(), Start::Cold);
            two.solve(&other.problem(), Start::Cold);
            for (one, two) in one.x().iter().zip(two.x()) {
                assert_eq!((one * length).to_bits(), two.to_bits());
            }
            for (one, two) in one.push().iter().zip(two.push()) {
                assert_eq!((one * force).to_bits(), two.to_bits());
            }
            Ok(())
        })
        .unwrap();
}

#[test]
fn the_order_of_rows_and_the_start_change_no_force() {
    TestRunner::new(config())
        .run(&any::<u64>(), |seed| {
            let mut source = Random(seed);
            let (sizes, load) = degenerate(&mut source);
            let case = three_links(sizes, load);
            let mut turned = case.clone();
            turned.rows.rotate_left(source.below(case.rows.len()));
            turned.rows.reverse();
            let mut neighbour = case.clone();
            neighbour.gradient.iter_mut().for_each(|load| *load *= 1.0 + 0.1 * source.signed());
            let (mut one, mut two) = (Solver::new(), Solver::new());
            one.solve(&case.problem(), Start::Cold);
            two.solve(&turned.problem(), Start::Cold);
            let wanted = case.force(one.x());
            assert_same(&case.force(two.x()), &wanted);
            two.solve(&neighbour.problem(), Start::Cold);
            let report = two.solve(&case.problem(), Start::Warm);
            assert_optimal(&case, &two, &report);
            assert_same(&case.force(two.x()), &wanted);
            Ok(())
        })
        .unwrap();
}

fn assert_same(got: &[f64], wanted: &[f64]) {
    let scale = 1.0 + largest(wanted);
    for (got, wanted) in got.iter().zip(wanted) {
        assert!((got - wanted).abs() <= SAME * scale, "{got} is not {wanted}");
    }
}
