use super::*;
use crate::drive::Variant;
use crate::scenario::sample::aside;

fn line(offset_mm: f64) -> ChainLine {
    ChainLine::of(&aside(offset_mm)).expect("it goes together")
}

fn straight() -> Run {
    let line = line(0.0);
    Run::of(&line, [JointLoad::straight(line.running.tight_n); 2])
}

fn crooked() -> Run {
    let line = line(14.0);
    let solution = line.solve(Variant::Rigid).expect("it settles");
    Run::of(&line, ChainLine::end_loads(&solution))
}

/// The sum over one circuit is the drive's loss, straight and crooked, to 1e-12.
#[test]
fn the_work_of_a_circuit_is_what_the_drive_loses() {
    for run in [straight(), crooked()] {
        let running = &run.line().running;
        let expected = running.offset_fraction(&run.ends) + running.roller_fraction();
        let got = run.loss_fraction();
        assert!((got - expected).abs() <= 1e-12 * expected, "{got} {expected}");
    }
    assert!(crooked().loss_fraction() > 1.2 * straight().loss_fraction());
}

#[test]
fn a_joint_folds_four_times_in_a_circuit_and_ends_with_all_its_work() {
    for run in [straight(), crooked()] {
        let whole = f64::from(run.pitches());
        for joint in [0, 1, 7] {
            let end = run.followed(f64::from(joint) + whole - 1e-9, joint);
            let all = run.circuit(Run::first_turns(joint)).total_n_mm();
            assert!((end.work.total_n_mm() - all).abs() <= 1e-6 * all);
            let begin = run.followed(f64::from(joint), joint);
            assert!(begin.work.total_n_mm().abs() < 1e-12 && begin.bent_rad.abs() < 1e-12);
            assert_eq!(begin.place, Place::Tight);
        }
    }
}

#[test]
fn work_never_falls_and_a_joint_on_a_strand_does_none() {
    let run = crooked();
    let steps = 50 * run.pitches();
    let mut before = run.followed(0.0, 0);
    let mut folds = Vec::new();
    for step in 1..steps {
        let now = run.followed(f64::from(step) / 50.0, 0);
        let more = now.work.total_n_mm() - before.work.total_n_mm();
        assert!(more >= 0.0, "{step}");
        if before.folding.is_none() && now.folding.is_none() {
            assert!(more.abs() < 1e-9, "{step} {more}");
        }
        if let Some(fold) = now.folding.filter(|_| before.folding != now.folding) {
            folds.push(fold);
        }
        before = now;
    }
    assert_eq!(folds, [0, 1, 2, 3]);
}

#[test]
fn a_joint_bends_on_each_wheel_by_its_articulation() {
    let run = straight();
    let [on_driver, off_driver, on_driven, off_driven] = run.folds_at();
    let bent = |done: f64| run.followed(done, 0).bent_rad;
    let (driver, driven) = (run.line().running.driver, run.line().running.driven);
    assert!((bent(0.5 * (on_driver + off_driver)) - driver.articulation_rad()).abs() < 1e-12);
    assert!((bent(0.5 * (on_driven + off_driven)) - driven.articulation_rad()).abs() < 1e-12);
    assert!(bent(on_driver - 0.1).abs() < 1e-12 && bent(off_driver + 1.1).abs() < 1e-12);
    assert!((off_driven + 1.0 - f64::from(run.pitches())).abs() < 1e-9);
}

/// A joint that runs onto the driver stands in the gap that its wheel has there, and the drawn links
/// beside it fold by what is told.
#[test]
fn drawn_links_fold_as_the_joint_is_told_to() {
    let run = straight();
    let [on_driver, ..] = run.folds_at();
    for share in [0.0, 0.25, 0.5, 1.0] {
        let moment = run.at(on_driver + share, 0);
        let count = moment.joints.len();
        let (ahead, here, behind) = (moment.joints[count - 1], moment.joints[0], moment.joints[1]);
        let (one, other) = ((ahead - here).normalize(), (here - behind).normalize());
        let drawn_rad = libm::asin(other.perp_dot(one));
        assert!((drawn_rad - moment.followed.bent_rad).abs() < 2e-3, "{share} {drawn_rad}");
    }
}

#[test]
fn pull_falls_round_the_driver_and_rises_round_the_driven_wheel() {
    let run = straight();
    let mut last = f64::INFINITY;
    let [on_driver, off_driver, on_driven, off_driven] = run.folds_at();
    for i in 0..=40 {
        let within = |from: f64, to: f64| from + (to - from) * f64::from(i) / 40.0;
        let now = run.followed(within(on_driver, off_driver), 0).pull_n;
        assert!(now <= last);
        last = now;
    }
    assert!((last - 20.0).abs() < 1e-9);
    for i in 0..=40 {
        let share = f64::from(i) / 40.0;
        let now = run.followed(on_driven + (off_driven + 0.99 - on_driven) * share, 0).pull_n;
        assert!(now >= last);
        last = now;
    }
    assert!((last - run.line().running.tight_n).abs() < 1e-9);
}
