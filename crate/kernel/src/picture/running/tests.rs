use super::*;
use crate::chain::Dimension;
use crate::scenario::sample;

fn scenario() -> Scenario {
    let chain = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 3.0),
        (Dimension::PinDiameter, 3.6),
    ];
    sample::with(&chain, &[&sample::POWERED[..], &[("offset_mm", 9.0)]].concat())
}

fn asked() -> RunAsked {
    RunAsked { width_px: 700.0, close_px: 320.0, text_px: 14.0, ..RunAsked::default() }
}

#[test]
fn a_moment_tells_numbers_and_paints_both_pictures() {
    let mut desk = RunDesk::default();
    for step in 0..60 {
        let asked = RunAsked { travel_pitches: 1.9 * f64::from(step), ..asked() };
        let state = desk.state(&scenario(), &asked).expect("it has a drive");
        assert!((state.drive.width - 700.0).abs() < 1e-9 && state.drive.height > 100.0);
        let numbers =
            |leaves: &Leaves| leaves.leaves.iter().filter(|leaf| !leaf.letters.is_empty()).count();
        assert_eq!([numbers(&state.drive), numbers(&state.close)], [4, 3]);
        let told = state.folds.iter().map(|fold| fold.so_far.total_n_mm).sum::<f64>();
        assert!((told - state.so_far.total_n_mm).abs() < 1e-9);
        assert!(
            state
                .drive
                .leaves
                .iter()
                .chain(&state.close.leaves)
                .all(|leaf| !leaf.d.contains("NaN"))
        );
    }
}

#[test]
fn a_fold_that_is_asked_for_is_shown_from_its_first_to_its_last_moment() {
    let mut desk = RunDesk::default();
    for fold in 0..FOLDS {
        for share in [0.0, 0.4, 1.0] {
            let asked = RunAsked { fold: Some((fold, share)), joint: 1, ..asked() };
            let state = desk.state(&scenario(), &asked).expect("it has a drive");
            assert_eq!(state.shown, fold);
            assert!((state.folds[fold].share - share).abs() < 1e-12);
        }
    }
}

#[test]
fn stuck_rollers_take_more() {
    let mut desk = RunDesk::default();
    let loss = |desk: &mut RunDesk, stuck| {
        desk.state(&scenario(), &RunAsked { stuck, ..asked() }).expect("a drive").loss_fraction
    };
    assert!(loss(&mut desk, true) > loss(&mut desk, false));
}

#[test]
fn a_run_says_when_its_joints_are_loaded_as_in_a_straight_line() {
    let mut desk = RunDesk::default();
    assert!(!desk.state(&scenario(), &asked()).expect("it has a drive").as_straight);
    // Plates that cannot pass each other stop even springy joints.
    let far = scenario().with("drive.offset_mm", 190.0.into()).expect("a drive");
    assert!(desk.state(&far, &asked()).expect("it has a drive").as_straight);
}
