//! The contact solver beside clarabel, and what a link of a strand costs.

use criterion::{Criterion, criterion_group, criterion_main};
use lightgap_bench::{print_cost_of_links, solves, time};
use std::time::Duration;

fn solve(criterion: &mut Criterion) {
    time(criterion, solves());
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30).measurement_time(Duration::from_secs(2)).warm_up_time(Duration::from_millis(500));
    targets = solve, print_cost_of_links
}
criterion_main!(benches);
