//! Settled poses against a general-purpose quadratic-programme solver (clarabel): the squares and
//! the gaps of the last round, about the settled pose, given to both. Status first, then the pose,
//! then the sums of pushes: single pushes are not unique where faces lie flat.

#[path = "../properties/chains.rs"]
mod chains;

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettingsBuilder, DefaultSolver, IPSolver, NonnegativeConeT, SolverStatus,
};
use lightgap::chain::{Chain, Construction, Sizes};
use lightgap::contact::{Along, Body, Joint, Kind, Play, Pose, Settler, Wish};
use lightgap::plane::Point;
use lightgap::posing::{Ask, Mode, Posing};
use lightgap::solve::{Problem, Status};
use lightgap::table::PUBLISHED;
use lightgap_tests::scenarios;
use proptest::prelude::*;

/// The other solver's residuals, in gaps and pushes scaled to about 1.
const CLOSE: f64 = 1e-11;
/// What such residuals leave of a pose, as a share of the largest gap: a thousand of them, over the
/// weakest square (1e-4).
const SAME_PLACE: f64 = 1e-4;
/// The same of the squares, where an error of the pose counts squared.
const SAME_SQUARES: f64 = 1e-8;
/// The same of sums of pushes, as a share of the largest push: the wishes of the other pose.
const SAME_PUSH: f64 = 1e-4;
/// What it leaves of the sums where hardly anything pushes, as a share of the largest gap: a wish of
/// weight 1 that is missed by a little less or more.
const LEFT_PUSHES: f64 = 1e-5;

/// What the other solver says.
struct Opinion {
    status: SolverStatus,
    x: Vec<f64>,
    push: Vec<f64>,
}

/// Puts a problem to clarabel: 1/2 x'Hx + q'x with -row.x + s = gap, s >= 0; lengths in units of the
/// largest gap, as any user of such a solver would.
fn ask(problem: &Problem, unit_mm: f64) -> Opinion {
    let (n, rows) = (problem.unknowns(), problem.rows());
    let mut hessian = (Vec::new(), Vec::new(), Vec::new());
    for j in 0..n {
        for i in 0..=j {
            let value = problem.hessian(j, i);
            if value != 0.0 {
                hessian.0.push(i);
                hessian.1.push(j);
                hessian.2.push(value);
            }
        }
    }
    let mut matrix = (Vec::new(), Vec::new(), Vec::new());
    for row in 0..rows.len() {
        for j in 0..n {
            let value = rows.coefficient(row, j);
            if value != 0.0 {
                matrix.0.push(row);
                matrix.1.push(j);
                matrix.2.push(-value);
            }
        }
    }
    let p = CscMatrix::new_from_triplets(n, n, hessian.0, hessian.1, hessian.2);
    let a = CscMatrix::new_from_triplets(rows.len(), n, matrix.0, matrix.1, matrix.2);
    let q: Vec<f64> = problem.gradient().iter().map(|value| value / unit_mm).collect();
    let b: Vec<f64> = (0..rows.len()).map(|row| rows.gap(row) / unit_mm).collect();
    let settings = DefaultSettingsBuilder::default()
        .verbose(false)
        .tol_gap_abs(CLOSE)
        .tol_gap_rel(CLOSE)
        .tol_feas(CLOSE)
        .max_iter(200)
        .build()
        .expect("settings");
    let cones = [NonnegativeConeT(rows.len())];
    let mut solver = DefaultSolver::new(&p, &q, &a, &b, &cones, settings).expect("a problem");
    solver.solve();
    let solution = &solver.solution;
    Opinion {
        status: solution.status,
        x: solution.x.iter().map(|x| x * unit_mm).collect(),
        push: solution.z.iter().map(|z| z * unit_mm).collect(),
    }
}

/// Whether the other solver comes to the settled pose, the same squares there, and the same force
/// and moment of all pushes on every body.
fn agrees(settler: &Settler) -> Result<Opinion, String> {
    let problem = settler.problem();
    let unit_mm = unit_mm(settler);
    let opinion = ask(problem, unit_mm);
    if !matches!(opinion.status, SolverStatus::Solved | SolverStatus::AlmostSolved) {
        return Err(format!("the other solver ends {:?}", opinion.status));
    }
    let ours = settler.deviations_mm();
    for (i, (ours, theirs)) in ours.iter().zip(&opinion.x).enumerate() {
        if !near(*ours, *theirs, SAME_PLACE * unit_mm) {
            return Err(format!("unknown {i}: {ours} and {theirs} of {unit_mm}"));
        }
    }
    let (least, other) = (squares(problem, ours), squares(problem, &opinion.x));
    if !near(least, other, SAME_SQUARES * unit_mm * unit_mm.max(least.abs())) {
        return Err(format!("squares {least} and {other}"));
    }
    let most = settler.push().iter().fold(unit_mm, |most, push| most.max(*push));
    for unknown in 0..problem.unknowns() {
        let of = |push: &[f64]| -> f64 {
            let pushes = push.iter().enumerate();
            pushes.map(|(row, push)| push * problem.rows().coefficient(row, unknown)).sum()
        };
        let (ours, theirs) = (of(settler.push()), of(&opinion.push));
        if !near(ours, theirs, SAME_PUSH * most) {
            return Err(format!("force {unknown}: {ours} and {theirs} of {most}"));
        }
    }
    Ok(opinion)
}

/// The largest gap.
fn unit_mm(settler: &Settler) -> f64 {
    settler.gaps_mm().iter().fold(0.0, |most: f64, gap| most.max(gap.abs()))
}

/// Whether two numbers are numbers and so near.
fn near(one: f64, other: f64, within: f64) -> bool {
    (one - other).abs() <= within
}

/// 1/2 x'Hx + q'x.
fn squares(problem: &Problem, x: &[f64]) -> f64 {
    let row = |i: usize| -> f64 { (0..x.len()).map(|j| problem.hessian(i, j) * x[j]).sum() };
    (0..x.len()).map(|i| x[i] * (0.5 * row(i) + problem.gradient()[i])).sum()
}

/// Whether the pushes of each joint and each pair of surfaces have the same sums.
fn sums_agree(settler: &Settler, opinion: &Opinion) -> Result<(), String> {
    let most = settler.push().iter().fold(0.0, |most: f64, push| most.max(*push));
    let unit_mm = unit_mm(settler);
    for (&joint, &kind) in Joint::ALL.iter().flat_map(|j| Kind::ALL.iter().map(move |k| (j, k))) {
        let of = |push: &[f64]| -> f64 {
            let pairs = settler.meetings().iter().zip(push);
            let own = pairs.filter(|(m, _)| m.contact.joint == joint && m.contact.kind == kind);
            own.map(|(_, push)| push).sum()
        };
        let (ours, theirs) = (of(settler.push()), of(&opinion.push));
        if !near(ours, theirs, SAME_PUSH * most + LEFT_PUSHES * unit_mm) {
            return Err(format!("{joint:?} {kind:?}: {ours} and {theirs} of {most}"));
        }
    }
    Ok(())
}

/// Every published size in both constructions, and every scenario, that goes together.
fn real() -> Vec<(String, Chain)> {
    let published = PUBLISHED.iter().flat_map(|size| {
        let named =
            |c: &Construction| (format!("{} {}", size.number, c.key()), size.fill(*c).sizes());
        Construction::ALL.iter().map(named)
    });
    let published = published.map(|(name, s)| (name, Chain::new(s).expect("a published size")));
    let ours = scenarios().into_iter().map(|(id, scenario)| (id, *scenario.chain.chain()));
    published.chain(ours).filter(|(_, chain)| chain.goes_together()).collect()
}

#[test]
fn real_chains_stand_where_the_other_solver_puts_them() {
    const SHARES: [f64; 5] = [-1.0, -0.5, 0.0, 0.25, 1.0];
    let mut faults = Vec::new();
    for (name, chain) in real() {
        let mut posing = Posing::new(&chain, &chain, 1.0, 0.4);
        for taut in [false, true] {
            posing.set_taut(taut);
            for mode in [Mode::Turn, Mode::Aside, Mode::Lean] {
                for share in SHARES {
                    posing.put(Ask::Share { mode, share });
                    let [settled, _] = posing.settled();
                    assert_eq!(settled.expect("settled").solve.status, Status::Solved);
                    let verdict = agrees(posing.plan()).and_then(|opinion| match mode {
                        // A leaning plate jams on both pins at once: how they share is not unique.
                        Mode::Lean => Ok(()),
                        // A pin that fills its bore is pinched by as much as one likes.
                        _ if chain.pin_clearance_mm() <= 0.0 => Ok(()),
                        _ => sums_agree(posing.plan(), &opinion),
                    });
                    if let Err(fault) = verdict {
                        faults.push(format!("{name} {mode:?} {share} taut {taut}: {fault}"));
                    }
                }
            }
        }
    }
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}

/// Two wishes: one number of a link, and a point of another held by a hand.
fn wishes(s: &Sizes, picks: [f64; 5]) -> [Wish; 2] {
    let reach_mm = s.side_gap_mm() + 3.0 * s.pitch_mm * Play::of(s).yaw.angle_rad;
    let [u, v, w, along, across] = picks;
    let yaw_rad = reach_mm * u / s.pitch_mm;
    let inside = s.pitch_mm * Point::new(0.6 * v, 0.1 * w);
    let from = Pose::straight(s).of(Body::NextOuter).outward(inside);
    [
        Wish::Coordinate { body: Body::InnerFar, along: Along::Yaw, value: yaw_rad, weight: 1.0 },
        Wish::Point {
            body: Body::NextOuter,
            inside,
            to: from + reach_mm * Point::new(along, across),
        },
    ]
}

proptest! {
    #![proptest_config(chains::fixed())]

    #[test]
    fn random_chains_stand_where_the_other_solver_puts_them(
        sizes in chains::any(),
        picks in prop::array::uniform5(-1.5..1.5_f64),
    ) {
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let settled = settler.settle(&wishes(&sizes, picks), &straight);
        prop_assert_eq!(settled.solve.status, Status::Solved);
        let verdict = agrees(&settler);
        prop_assert!(verdict.is_ok(), "{:?} {settled:?}", verdict.err());
    }
}
