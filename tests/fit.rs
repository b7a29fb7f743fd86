//! Chance and cost against closed forms, other seeds and a general-purpose optimiser. Published figures
//! and the quadrature of another library are in `checked/sums.rs` and `checked/laws.rs`.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettingsBuilder, DefaultSolver, IPSolver, NonnegativeConeT, PowerConeT,
    SecondOrderConeT, SolverStatus, SupportedConeT,
};
use lightgap::chain::Dimension;
use lightgap::fit::cost::{Priced, Rule, cheapest, total};
use lightgap::fit::{Law, Many, Study};
use lightgap::lot::Lot;
use lightgap::quantity::Quantity;
use lightgap::report::Report;
use lightgap::stage::{TriedView, bought};
use lightgap_tests::checked::laws::{SETS, mixed, nominal, spread, wanted};
use lightgap_tests::scenarios;

#[test]
fn standard_errors_are_those_that_other_seeds_show() {
    // Forty seeds: their means, deviations and yields scatter as the standard errors say, to within
    // a third (the spread of a spread of forty is 11 %).
    const SEEDS: u64 = 40;
    let of_seed = |seed| {
        let mut study = mixed();
        study.many.seed = seed;
        study.sets = 4_000;
        let each = &study.whole().each[0];
        [each.mean, each.sd, each.yield_fraction]
    };
    let all: Vec<_> = (0..SEEDS).map(of_seed).collect();
    for what in 0..3 {
        let mean = all.iter().map(|each| each[what].0).sum::<f64>() / SEEDS as f64;
        let square = |each: &[(f64, f64); 3]| (each[what].0 - mean) * (each[what].0 - mean);
        let scatter = (all.iter().map(square).sum::<f64>() / (SEEDS - 1) as f64).sqrt();
        let told = all.iter().map(|each| each[what].1).sum::<f64>() / SEEDS as f64;
        assert!((scatter / told - 1.0).abs() < 0.34, "{what}: {scatter} {told}");
    }
}

#[test]
fn sums_of_even_and_of_triangular_laws_have_their_exact_moments() {
    // Variance of the side gap b3 - b1 - 2 ti: t^2/3 each for even laws, t^2/6 for triangular ones;
    // 4 times as much for the two plates. Fourth moments add up through the kurtosis.
    for (law, part) in [(Law::Uniform, 1.0 / 3.0), (Law::Triangular, 1.0 / 6.0)] {
        let halves = [0.05, 0.03, 0.02];
        let dimensions = [Dimension::OuterSpacing, Dimension::InnerWidth, Dimension::InnerPlate];
        let spreads = dimensions.iter().zip(halves).map(|(d, half)| spread(*d, half, law));
        let many = Many::new(nominal(), spreads.collect(), 7);
        let study = Study::new(many, vec![wanted(Quantity::SideGap, 0.1, 0.3)], SETS);
        let exact = [1.0, 1.0, 4.0].iter().zip(halves).map(|(f, t)| f * t * t * part).sum::<f64>();
        let chance = study.whole();
        let each = &chance.each[0];
        assert!((each.mean.0 - 0.2).abs() < 5.0 * each.mean.1, "{law:?} {:?}", each.mean);
        assert!((each.sd.0 - exact.sqrt()).abs() < 5.0 * each.sd.1, "{law:?} {:?}", each.sd);
        let rss_sd = study.stacks[0].as_ref().expect("a stack").rss_sd;
        assert!((rss_sd - exact.sqrt()).abs() < 1e-12, "{law:?} {rss_sd}");
        // No sum of bounded laws leaves the worst case.
        let last = each.histogram.last().expect("bars");
        assert!(last.low < 0.2 + 0.12 && each.histogram[0].high > 0.2 - 0.12);
    }
}

/// The cheapest tolerances put to clarabel: minimise the sum of B s with s t^k >= 1, a power cone of
/// exponent 1/(k+1), and the room as a row or as a second-order cone. Tolerances in hundredths of a
/// millimetre, so that all numbers are near one.
fn by_clarabel(rule: Rule, priced: &[Priced], room_mm: f64) -> (SolverStatus, Vec<f64>) {
    const SCALE_MM: f64 = 0.01;
    let n = priced.len();
    let scaled = |p: &Priced| p.factor / SCALE_MM.powf(p.exponent);
    let largest = priced.iter().map(scaled).fold(0.0, f64::max);
    let (mut triplets, mut b, mut cones) = (Vec::new(), Vec::new(), Vec::new());
    for (i, each) in priced.iter().enumerate() {
        triplets.extend([(b.len(), n + i, -1.0), (b.len() + 1, i, -1.0)]);
        b.extend([0.0, 0.0, 1.0]);
        cones.push(PowerConeT(1.0 / (each.exponent + 1.0)));
    }
    let first = b.len();
    let slopes = priced.iter().enumerate().map(|(i, p)| (i, p.slope.abs()));
    b.push(room_mm / SCALE_MM);
    match rule {
        Rule::Worst => {
            triplets.extend(slopes.map(|(i, slope)| (first, i, slope)));
            cones.push(NonnegativeConeT(1));
        }
        Rule::RootSumSquare => {
            triplets.extend(slopes.map(|(i, slope)| (first + 1 + i, i, -slope)));
            b.extend(vec![0.0; n]);
            cones.push(SecondOrderConeT(n + 1));
        }
    }
    let (rows, columns): (Vec<_>, Vec<_>) = triplets.iter().map(|t| (t.0, t.1)).unzip();
    let values = triplets.iter().map(|t| t.2).collect();
    let a = CscMatrix::new_from_triplets(b.len(), 2 * n, rows, columns, values);
    let costs = priced.iter().map(|p| scaled(p) / largest);
    let q: Vec<_> = vec![0.0; n].into_iter().chain(costs).collect();
    let p = CscMatrix::<f64>::zeros((2 * n, 2 * n));
    let settings = DefaultSettingsBuilder::default().verbose(false).build().expect("settings");
    let cones: Vec<SupportedConeT<f64>> = cones;
    let mut solver = DefaultSolver::new(&p, &q, &a, &b, &cones, settings).expect("a problem");
    solver.solve();
    let halves = solver.solution.x[..n].iter().map(|t| t * SCALE_MM).collect();
    (solver.solution.status, halves)
}

#[test]
fn the_cheapest_tolerances_are_those_of_a_general_purpose_optimiser() {
    let names = [Dimension::OuterSpacing, Dimension::InnerWidth, Dimension::InnerPlate];
    // Slope, factor, exponent: alike, unlike, and steep against flat.
    let cases: [[(f64, f64, f64); 3]; 3] = [
        [(1.0, 1e-3, 2.0), (-1.0, 1e-3, 2.0), (-2.0, 1e-3, 2.0)],
        [(1.0, 2e-3, 2.0), (-1.0, 9e-4, 2.0), (-2.0, 4e-4, 2.0)],
        [(1.0, 2e-3, 3.0), (-1.0, 5e-2, 1.0), (-2.0, 4e-3, 1.5)],
    ];
    for case in cases {
        let priced: Vec<_> = names
            .iter()
            .zip(case)
            .map(|(&dimension, (slope, factor, exponent))| Priced {
                dimension,
                slope,
                fixed: 0.5,
                factor,
                exponent,
            })
            .collect();
        for &rule in Rule::ALL {
            for room_mm in [0.02, 0.06, 0.2] {
                let ours = cheapest(rule, &priced, room_mm).expect("there is room");
                let (status, theirs) = by_clarabel(rule, &priced, room_mm);
                assert_eq!(status, SolverStatus::Solved, "{rule:?} {room_mm}");
                for (ours, theirs) in ours.halves_mm.iter().zip(&theirs) {
                    assert!((ours / theirs - 1.0).abs() < 2e-3, "{rule:?} {ours} {theirs}");
                }
                // Their tolerances brought exactly to the room are no cheaper than ours.
                let used = rule.used(priced.iter().zip(&theirs).map(|(p, t)| (p.slope, *t)));
                let fitted: Vec<_> = theirs.iter().map(|t| t * room_mm / used).collect();
                let gain = total(&priced, &fitted) / ours.total - 1.0;
                assert!((-1e-12..1e-5).contains(&gain), "{rule:?} {room_mm} {gain}");
            }
        }
    }
}

#[test]
fn the_press_scenario_reports_its_own_numbers() {
    let (_, press) = scenarios().into_iter().find(|(id, _)| id == "ferry-thousand").expect("it");
    let fit = Report::of(&press).fit.expect("it has demands");
    assert_eq!((fit.sets, fit.seed, fit.demands.len()), (20_000, 1911, 4));
    let gap = &fit.demands[0];
    // 0.05 + 0.03 + 2 x 0.02 about 0.2.
    assert!((gap.worst_low.unwrap() - 0.08).abs() < 1e-12);
    assert!((gap.worst_high.unwrap() - 0.32).abs() < 1e-12);
    assert!((gap.yield_fraction - 0.961702).abs() < 5.0 * gap.yield_se, "that of the quadrature");
    let offset = &fit.demands[3];
    assert!((offset.worst_low.unwrap() / gap.worst_low.unwrap() - 17.0).abs() < 1e-9, "34 joints");
    let matching = fit.matching.expect("it pairs plates with spacings");
    assert!(matching.sd_ranked < matching.sd_after && matching.sd_after < matching.sd_before);
    assert!(matching.yield_after > matching.yield_before && matching.leftover_fraction > 0.1);
    let cost = fit.cost.expect("it has prices");
    let (worst, rss) = (cost.worst.expect("room"), cost.rss.expect("room"));
    assert!(rss.total < worst.total && cost.total < cost.halved_total);
    // The fixed parts stay, the others are four times as much: k is 2.
    let fixed = 0.4 + 0.3 + 0.5;
    assert!(((cost.halved_total - fixed) / (cost.total - fixed) - 4.0).abs() < 1e-9);
}

#[test]
fn a_bigger_gap_is_no_wider_tolerance_and_the_other_way_round() {
    let (_, press) = scenarios().into_iter().find(|(id, _)| id == "ferry-thousand").expect("it");
    let at = |bigger_mm, times| TriedView::of(&press, bigger_mm, times).expect("a gap");
    let (plain, bigger, unsure) = (at(0.0, 1.0), at(0.05, 1.0), at(0.0, 2.0));
    let middle = |tried: &TriedView| tried.demand.middle.expect("a chain");
    let half = |tried: &TriedView| tried.demand.halves[0].1;
    assert!((middle(&bigger) - middle(&plain) - 0.05).abs() < 1e-12);
    assert!((half(&bigger) - half(&plain)).abs() < 1e-9);
    assert!((middle(&unsure) - middle(&plain)).abs() < 1e-12);
    assert!((half(&unsure) - 2.0 * half(&plain)).abs() < 1e-9);
    assert!((unsure.chance.sd.0 / plain.chance.sd.0 - 2.0).abs() < 1e-9, "the same draws");
    assert!(bigger.fails_fraction > plain.fails_fraction);
    assert!(unsure.fails_fraction > plain.fails_fraction);
    assert_eq!(at(-5.0, 1.0).demand.middle, None, "a gap that is gone");
}

#[test]
fn what_is_bought_costs_the_least_and_stays_about_its_middle() {
    let (_, press) = scenarios().into_iter().find(|(id, _)| id == "ferry-thousand").expect("it");
    let lot = Lot::of(&press).expect("demands");
    let bill = lot.first_budget().and_then(|budget| budget.bill()).expect("prices");
    for (worst, least) in [(true, bill.worst), (false, bill.rss)] {
        let taken = bought(&press, worst).expect("room");
        let least = least.expect("room");
        assert_eq!(taken.len(), least.halves_mm.len());
        for ((key, [minus_mm, plus_mm]), half_mm) in taken.iter().zip(&least.halves_mm) {
            let many = &lot.study.many;
            let spread = many.spreads.iter().find(|s| s.dimension.key() == *key).expect("limits");
            let middle_mm = spread.dimension.of(&many.nominal) + 0.5 * (plus_mm - minus_mm);
            assert!((middle_mm - spread.middle_mm()).abs() < 1e-12, "{key}");
            assert!((0.5 * (plus_mm + minus_mm) - half_mm).abs() < 1e-12, "{key}");
        }
    }
}
