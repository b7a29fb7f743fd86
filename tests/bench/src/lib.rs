//! One row of the speed table: a baseline and ours, on identical data, in one run.
//!
//! Absolute times drift from machine to machine and from hour to hour; the ratio of two medians
//! taken in turns on one machine is what the goals speak of. A new row is one call of [`row`] in a
//! file under `benches/` and, for a new file, four lines in `Cargo.toml`.

#![cfg(feature = "compare")]

use criterion::Criterion;
use std::cell::RefCell;
use std::hint::black_box;
use std::time::Instant;

/// What a row compares and how much faster ours ought to be.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    /// The work, such as `joint, cold`.
    pub work: &'a str,
    /// Who else does it.
    pub baseline: &'a str,
    /// Baseline time over ours that the design asks for.
    pub goal: f64,
}

/// Times both sides with criterion and prints the ratio of the medians beside the goal.
pub fn row<A, B>(
    criterion: &mut Criterion,
    row: Row<'_>,
    baseline: impl FnMut() -> A,
    ours: impl FnMut() -> B,
) {
    let theirs = median_ns(criterion, &format!("{}/{}", row.work, row.baseline), baseline);
    let mine = median_ns(criterion, &format!("{}/lightgap", row.work), ours);
    // Filtered out on the command line: nothing was timed.
    if let (Some(theirs), Some(mine)) = (theirs, mine) {
        let ratio = theirs / mine;
        let verdict = if ratio >= row.goal { "reached" } else { "NOT reached" };
        println!(
            "RATIO {}: {} {theirs:.0} ns, lightgap {mine:.0} ns: {ratio:.1}x (goal {}x {verdict})\n",
            row.work, row.baseline, row.goal
        );
    }
}

fn median_ns<T>(criterion: &mut Criterion, name: &str, mut work: impl FnMut() -> T) -> Option<f64> {
    let samples = RefCell::new(Vec::new());
    criterion.bench_function(name, |bencher| {
        bencher.iter_custom(|turns| {
            let start = Instant::now();
            for _ in 0..turns {
                black_box(work());
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
