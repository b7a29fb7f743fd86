//! A whole pitch beside clarabel, parry, rapier and kurbo, and its frame beside the time that a frame
//! may take.

use criterion::{Criterion, criterion_group, criterion_main};
use lightgap_bench::{pitches, print_frames, time};
use std::time::Duration;

fn pitch(criterion: &mut Criterion) {
    time(criterion, pitches());
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30).measurement_time(Duration::from_secs(2)).warm_up_time(Duration::from_millis(500));
    targets = pitch, print_frames
}
criterion_main!(benches);
