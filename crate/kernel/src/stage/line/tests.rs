use super::*;
use crate::chain::sample::WORKED;
use crate::scenario::sample;

/// What rounding leaves of a few numbers below a hundred.
const ROUNDING: f64 = 1e-12;

/// A short drive of a half inch chain, its wheels so far aside.
fn scenario(offset_mm: f64) -> Scenario {
    let drive = [
        ("driver_teeth", 24.0),
        ("driven_teeth", 16.0),
        ("centre_distance_mm", 160.0),
        ("offset_mm", offset_mm),
    ];
    sample::with(&WORKED, &drive)
}

fn number(state: &LineState, id: &str, key: &str) -> Option<f64> {
    let answer = state.answers.iter().find(|answer| answer.id == id)?;
    answer.numbers.iter().find(|(name, _)| *name == key).map(|(_, value)| *value)
}

#[test]
fn a_scenario_without_a_drive_has_no_line() {
    let mut desk = LineDesk::default();
    let without = crate::stage::Stage::default().scenario().clone();
    assert_eq!(without.drive, None);
    assert_eq!(desk.state(&without), None);
    assert_eq!(desk.curve(&without, "rigid"), None);
}

#[test]
fn an_offset_within_the_free_one_is_told_as_free() {
    let state = LineDesk::default().state(&scenario(1.0)).expect("a drive");
    assert_eq!(state.answers[0].id, "line.free");
    let others = ["line.ends", "line.joints"];
    assert!(!state.answers.iter().any(|answer| others.contains(&answer.id)), "nothing turns");
    assert!(state.free_mm < state.reach_mm && state.reach_mm < state.to_mm);
    assert_eq!(state.view.expect("it settles").joints.len(), state.joints);
}

/// The near side is the far side in a mirror: every number across changes its sign, none along does.
#[test]
fn an_offset_to_the_near_side_is_the_mirror_image() {
    let mut desk = LineDesk::default();
    let far = desk.state(&scenario(3.0)).expect("a drive");
    let near = desk.state(&scenario(-3.0)).expect("a drive");
    let told = [far.offset_mm, near.offset_mm, far.aside_mm, -near.aside_mm];
    assert!(told.iter().all(|mm| (mm - 3.0).abs() < ROUNDING), "{told:?}");
    let (far_view, near_view) = (far.view.expect("it settles"), near.view.expect("it settles"));
    assert!(far_view.driven.y_mm > far_view.driver.y_mm);
    assert!(near_view.driven.y_mm < near_view.driver.y_mm);
    for (a, b) in far_view.joints.iter().zip(&near_view.joints) {
        let along = [a.x_mm - b.x_mm, a.pin_n - b.pin_n, a.face_n - b.face_n];
        let across =
            [a.y_mm + b.y_mm, a.turn_rad + b.turn_rad, a.eccentricity_mm + b.eccentricity_mm];
        let off = along.iter().chain(&across).fold(0.0_f64, |most, off| most.max(off.abs()));
        assert!(off < ROUNDING, "{off}");
    }
    assert_eq!(near_view.mirrored(), far_view);
}

#[test]
fn an_offset_beyond_rigid_links_is_told_with_what_is_too_much() {
    let mut desk = LineDesk::default();
    let reach_mm = desk.state(&scenario(0.0)).expect("a drive").reach_mm;
    let state = desk.state(&scenario(reach_mm + 0.5)).expect("a drive");
    assert_eq!(state.answers[0].id, "line.beyond");
    let short_mm = number(&state, "line.beyond", "shortfall_mm").expect("its number");
    assert!((short_mm - 0.5).abs() < 1e-9, "{short_mm}");
}

#[test]
fn a_curve_goes_by_the_key_of_its_variant_and_costs_no_less_further_out() {
    let (mut desk, scenario) = (LineDesk::default(), scenario(0.0));
    assert_eq!(desk.curve(&scenario, "no such"), None);
    for key in ["elastic", "rigid"] {
        let curve = desk.curve(&scenario, key).expect("it can be built");
        assert_eq!(curve.variant, key);
        let times: Vec<_> = curve.samples.iter().filter_map(|at| at.friction_multiple).collect();
        assert!(times.len() > 10 && times[0] <= 1.001, "{times:?}");
        assert!(times[times.len() - 1] > 1.1, "{times:?}");
    }
}

/// A hand that slides gets the answer and the picture; what is said under other assumptions follows.
#[test]
fn the_quick_answer_is_the_whole_one_without_other_assumptions() {
    let ends = LineDesk::default().quick_state(&scenario(0.0)).expect("a drive");
    let scenario = scenario(0.5 * (ends.free_mm + ends.reach_mm));
    let whole = LineDesk::default().state(&scenario).expect("a drive");
    let quick = LineDesk::default().quick_state(&scenario).expect("a drive");
    let others = ["line.ends", "line.joints"];
    assert!(others.iter().all(|id| whole.answers.iter().any(|answer| answer.id == *id)));
    let rest = whole.answers.iter().filter(|answer| !others.contains(&answer.id)).cloned();
    assert_eq!(quick, LineState { answers: rest.collect(), ..whole });
}
