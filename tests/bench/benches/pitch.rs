//! A whole pitch: its settled pose beside clarabel, its gaps beside parry, its frame beside the time
//! that a frame may take.
//!
//! A general-purpose rigid-body engine is left out: it steps towards a pose and does not say when it
//! has come there, so no two times of equal outputs can be compared.

#[path = "../../oracles/cases.rs"]
mod cases;
#[path = "../../oracles/clarabel.rs"]
mod clarabel;

use ::clarabel::solver::SolverStatus;
use cases::Case;
use criterion::{Criterion, criterion_group, criterion_main};
use lightgap::chain::Sizes;
use lightgap::contact::{Along, Body, Meeting, Play, Pose, Settler, Wish};
use lightgap::paint::{Recorder, walk};
use lightgap::picture::Picture;
use lightgap::scene::Lexicon;
use lightgap::stage::Stage;
use lightgap_bench::{Row, row};
use lightgap_tests::scenarios;
use parry2d_f64::math::{Pose as Isometry, Vector};
use parry2d_f64::query;
use parry2d_f64::shape::{Ball, HalfSpace};
use std::hint::black_box;
use std::time::Instant;

/// The chain of a scenario.
fn sizes_of(id: &str) -> Sizes {
    let (_, scenario) = scenarios().into_iter().find(|(name, _)| name == id).expect("a scenario");
    *scenario.chain.chain().sizes()
}

/// A turn asked for a little further than the stop.
fn to_the_stop(sizes: &Sizes) -> [Wish; 3] {
    let beyond = 1.02 * Play::of(sizes).turn.angle_rad;
    let yaw = |body, value| Wish::Coordinate { body, along: Along::Yaw, value, weight: 1.0 };
    [
        yaw(Body::NextOuter, beyond),
        yaw(Body::InnerFar, 0.5 * beyond),
        yaw(Body::InnerNear, 0.5 * beyond),
    ]
}

/// All rounds to the exact pose, beside one solve of the last round alone.
fn settle(criterion: &mut Criterion) {
    for id in ["ferry-winch", "ferry-trike"] {
        let sizes = sizes_of(id);
        let wishes = to_the_stop(&sizes);
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let settled = settler.settle(&wishes, &straight);
        let posed = clarabel::pose(&Case::of(settler.problem()));
        assert_eq!(posed.solve().status, SolverStatus::Solved);
        println!("{id}: {} gaps, {} rounds", settler.meetings().len(), settled.rounds);
        row(
            criterion,
            Row {
                work: &format!("{id} to its stop, all rounds"),
                baseline: "clarabel, one round",
                goal: 1.0,
            },
            || posed.solve().x[0],
            || settler.settle(&wishes, &straight).rounds,
        );
    }
}

/// A meeting as parry takes it: a ball (a corner) over a half space (a face).
struct Query {
    ball: Ball,
    face: HalfSpace,
    corner: Isometry,
    plane: Isometry,
}

impl Query {
    fn of(meeting: &Meeting, pose: &Pose) -> Self {
        let place = pose.of(meeting.corner_body);
        let at = place.outward(meeting.corner);
        let face_place = pose.of(meeting.face_body);
        let through = face_place.outward(meeting.face);
        Self {
            ball: Ball::new(meeting.radius_mm),
            face: HalfSpace::new(Vector::new(meeting.normal.x, meeting.normal.y)),
            corner: Isometry::new(Vector::new(at.x, at.y), place.yaw_rad),
            plane: Isometry::new(Vector::new(through.x, through.y), face_place.yaw_rad),
        }
    }

    fn gap_mm(&self) -> f64 {
        const FAR_MM: f64 = 1e3;
        query::contact(&self.plane, &self.face, &self.corner, &self.ball, FAR_MM)
            .expect("a pair that is known")
            .map_or(f64::NAN, |contact| contact.dist)
    }
}

/// Every gap of a pitch, its witness included on both sides' terms: parry gives the distance and two
/// points, we the distance and its slope. Placing the shapes is not counted against parry.
fn gaps(criterion: &mut Criterion) {
    let sizes = sizes_of("ferry-trike");
    let mut settler = Settler::plan(&sizes);
    let straight = *settler.straight();
    settler.settle(&to_the_stop(&sizes), &straight);
    let pose = *settler.pose();
    let meetings = settler.meetings().to_vec();
    let queries: Vec<_> = meetings.iter().map(|meeting| Query::of(meeting, &pose)).collect();
    for (query, meeting) in queries.iter().zip(&meetings) {
        let (theirs, ours) = (query.gap_mm(), meeting.gap_mm(&pose));
        assert!((theirs - ours).abs() < 1e-9, "{}: {theirs} {ours}", meeting.contact.id());
    }
    row(
        criterion,
        Row { work: "every gap of a pitch, with slope", baseline: "parry, contact", goal: 1.0 },
        || queries.iter().map(Query::gap_mm).sum::<f64>(),
        || meetings.iter().map(|meeting| black_box(meeting.slope(&pose)).gap_mm).sum::<f64>(),
    );
}

/// Median and 95th percentile of the time that a work takes over shares of a movement, ms.
fn spread_ms(mut work: impl FnMut(f64)) -> [f64; 2] {
    const TURNS: u32 = 400;
    let mut times: Vec<f64> = (0..TURNS)
        .map(|i| {
            let start = Instant::now();
            work(f64::from(i) / f64::from(TURNS));
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    [0.5, 0.95].map(|share: f64| times[(share * f64::from(TURNS - 1)) as usize])
}

/// Settle the true and the drawn pitch (SETTLE), then also compose the scene and walk it (FRAME).
/// `tests/bench/wasm.mjs` reads these lines and sets the page's own kernel beside them.
fn frame(_: &mut Criterion) {
    /// What a frame's work may take, ms.
    const FRAME_MS: f64 = 4.0;
    for (id, scenario) in scenarios() {
        if !scenario.chain.chain().goes_together() {
            continue;
        }
        let mut stage = Stage::new(scenario);
        let [median, most] = spread_ms(|share| stage.scrub(share));
        println!("SETTLE {id}: median {median:.4} ms, 95 % {most:.4} ms");
        let mut picture = Picture::new(Lexicon::new([]));
        picture.lay(1000.0, 700.0, 14.0, false);
        let unit = picture.unit_px();
        let [median, most] = spread_ms(|share| {
            stage.scrub(share);
            picture.stage_changed();
            let mut recorder = Recorder::default();
            walk(picture.scene(&stage, None), unit, |_| true, &mut recorder);
            black_box(&recorder);
        });
        let goal = FRAME_MS / most;
        println!(
            "FRAME {id}: median {median:.4} ms, 95 % {most:.4} ms: 1/{goal:.0} of {FRAME_MS} ms"
        );
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30).measurement_time(std::time::Duration::from_secs(2)).warm_up_time(std::time::Duration::from_millis(500));
    targets = settle, gaps, frame
}
criterion_main!(benches);
