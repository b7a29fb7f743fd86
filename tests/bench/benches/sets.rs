//! Matching beside the standard library's sort, reach beside parry, a scenario
//! that is read beside serde_json and jsonschema.

use criterion::{Criterion, criterion_group, criterion_main};
use lightgap_bench::{sets, time};
use std::time::Duration;

fn whole(criterion: &mut Criterion) {
    time(criterion, sets());
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).measurement_time(Duration::from_secs(2)).warm_up_time(Duration::from_millis(500));
    targets = whole
}
criterion_main!(benches);
