//! Times the rows with criterion and prints their ratios.

use crate::cases::{REFERENCE, strand};
use crate::frames::Bench;
use crate::whole::brought;
use crate::work::Work;
use criterion::Criterion;
use lightgap::solve::{Solver, Start, Status};
use lightgap_tests::speed::Row;
use std::cell::RefCell;
use std::hint::black_box;
use std::time::Instant;

/// Times both sides of every row and prints the ratio of the medians beside the goal.
pub fn time(criterion: &mut Criterion, works: impl IntoIterator<Item = Work>) {
    for mut work in works {
        work.answers();
        let theirs = median_ns(criterion, &mut work, 0);
        let mine = median_ns(criterion, &mut work, 1);
        // Filtered out on the command line: nothing was timed.
        if let (Some(theirs), Some(mine)) = (theirs, mine) {
            let ratio = theirs / mine;
            let Work { row: Row { work, rival, goal, .. }, note, .. } = work;
            let verdict = if ratio >= goal { "reached" } else { "NOT reached" };
            let note = if note.is_empty() { note } else { format!("; {note}") };
            println!(
                "RATIO {work}: {rival} {theirs:.0} ns, lightgap {mine:.0} ns: {ratio:.1}x (goal {goal}x {verdict}){note}\n"
            );
        }
    }
}

fn median_ns(criterion: &mut Criterion, work: &mut Work, side: usize) -> Option<f64> {
    let who = [&work.row.rival, "lightgap"][side];
    let samples = RefCell::new(Vec::new());
    criterion.bench_function(&format!("{}/{who}", work.row.work), |bencher| {
        bencher.iter_custom(|turns| {
            let start = Instant::now();
            for _ in 0..turns {
                work.turns(side, 1);
            }
            let took = start.elapsed();
            samples.borrow_mut().push(took.as_secs_f64() * 1e9 / turns as f64);
            took
        });
    });
    let mut samples = samples.into_inner();
    samples.sort_by(f64::total_cmp);
    samples.get(samples.len() / 2).copied()
}

/// Settles the true and the drawn pitch (SETTLE), and makes the whole document of that pose (FRAME), at
/// shares of every scenario's movement; beside the goal and beside what a screen allows.
/// `tests/bench/wasm.mjs` reads these lines and sets the page's own kernel beside them.
pub fn print_frames(_: &mut Criterion) {
    /// What the work of a frame may take, ms.
    const GOAL_MS: f64 = 4.0;
    /// What a screen that shows 60 pictures a second allows, ms.
    const SCREEN_MS: f64 = 1e3 / 60.0;
    for (id, scenario) in lightgap_tests::scenarios() {
        if !scenario.chain.chain().goes_together() {
            continue;
        }
        let mut bench = Bench::new(scenario);
        let [median, most] = spread_ms(|share| bench.stage.scrub(share));
        println!("SETTLE {id}: median {median:.4} ms, 95 % {most:.4} ms");
        let [median, most] = spread_ms(|share| {
            black_box(bench.svg(share));
        });
        println!(
            "FRAME {id}: median {median:.4} ms, 95 % {most:.4} ms: 1/{:.0} of the goal of {GOAL_MS} ms, 1/{:.0} of a screen's {SCREEN_MS:.1} ms",
            GOAL_MS / most,
            SCREEN_MS / most
        );
    }
}

/// Median and 95th percentile of the time that a work takes over shares of a movement, ms; the first
/// round is not counted.
fn spread_ms(mut work: impl FnMut(f64)) -> [f64; 2] {
    const TURNS: u32 = 400;
    let mut times = Vec::new();
    for _ in 0..2 {
        times.clear();
        times.extend((0..TURNS).map(|turn| {
            let start = Instant::now();
            work(f64::from(turn) / f64::from(TURNS));
            start.elapsed().as_secs_f64() * 1e3
        }));
    }
    times.sort_by(f64::total_cmp);
    [0.5, 0.95].map(|share: f64| times[(share * f64::from(TURNS - 1)) as usize])
}

/// What a link costs, of one problem and of a whole strand, from 30 to 1,000 links: flat where time is linear. The offset
/// grows with the links, so that the same share of them must turn.
pub fn print_cost_of_links(_: &mut Criterion) {
    const LINKS: [usize; 6] = [30, 60, 120, 250, 500, 1000];
    let costs: [(&str, &dyn Fn(usize) -> f64); 3] = [
        ("one linear problem, cold", &|links| cost_of_a_link_ns(links, Start::Cold)),
        ("one linear problem, warm", &|links| cost_of_a_link_ns(links, Start::Warm)),
        ("a whole strand from nothing", &cost_of_a_whole_one_ns),
    ];
    for (how, cost) in costs {
        let costs_ns = LINKS.map(cost);
        let (least, most) =
            costs_ns.iter().fold((f64::INFINITY, 0.0_f64), |(a, b), c| (a.min(*c), b.max(*c)));
        let each =
            LINKS.iter().zip(costs_ns).map(|(links, ns)| format!("{links} links {ns:.0} ns"));
        let each: Vec<_> = each.collect();
        println!(
            "COST PER LINK, {how}: {}; the dearest is {:.1} times the cheapest",
            each.join(", "),
            most / least
        );
    }
}

/// Median time of one solve over the links; turns go to and fro between two offsets.
fn cost_of_a_link_ns(links: usize, start: Start) -> f64 {
    const TURNS: usize = 15;
    let offset_mm = 0.3 * links as f64;
    let problems =
        [1.0, 1.001].map(|share| strand(REFERENCE, links, share * offset_mm, 300.0).problem());
    let mut solver = Solver::new();
    median(TURNS, |turn| {
        let report = solver.solve(&problems[turn % 2], start);
        assert_eq!(report.status, Status::Solved);
    }) / links as f64
}

/// The same for a whole strand, made anew each time.
fn cost_of_a_whole_one_ns(links: usize) -> f64 {
    const TURNS: usize = 5;
    let took_ns = median(TURNS, |_| {
        black_box(brought(links));
    });
    took_ns / links as f64
}

/// Median time of a turn, ns.
fn median(turns: usize, mut work: impl FnMut(usize)) -> f64 {
    let mut times_ns: Vec<f64> = (0..turns)
        .map(|turn| {
            let began = Instant::now();
            work(turn);
            began.elapsed().as_secs_f64() * 1e9
        })
        .collect();
    times_ns.sort_by(f64::total_cmp);
    times_ns[turns / 2]
}
