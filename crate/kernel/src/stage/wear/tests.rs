//! The pictures of a worn chain against what they stand for.

use super::*;
use crate::scenario::Value;

const FILE: [(&str, f64); 6] = [
    ("chain.pitch_mm", 12.7),
    ("chain.roller_diameter_mm", 7.75),
    ("chain.inner_width_mm", 2.4),
    ("chain.pin_diameter_mm", 3.6),
    ("chain.bore_mm", 3.625),
    ("load.tension_n", 300.0),
];

fn scenario(joint_wear_mm: f64, teeth: f64) -> Scenario {
    let mut file = Value::object([("format", Value::from(1.0)), ("title", Value::text("Worn"))]);
    let drive = [
        ("drive.driver_teeth", teeth),
        ("drive.driven_teeth", 11.0),
        ("drive.centre_distance_mm", 900.0),
        ("wear.joint_wear_mm", joint_wear_mm),
    ];
    for (path, number) in FILE.into_iter().chain(drive) {
        file.put(path, Value::from(number));
    }
    Scenario::read(&file).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn state(joint_wear_mm: f64, teeth: f64) -> WearState {
    WearState::of(&scenario(joint_wear_mm, teeth)).expect("it goes together")
}

#[test]
fn drawn_rollers_stand_as_far_apart_as_the_drawn_wear_says() {
    for teeth in [16.0, 17.0, 44.0, 104.0] {
        let view = state(0.05, teeth).wheel;
        assert!(view.times >= 1 && !view.past_tip);
        let outer_mm = 12.7 + 2.0 * f64::from(view.times) * 0.05;
        for (i, two) in view.rollers.windows(2).enumerate() {
            let apart_mm = libm::hypot(two[1].x_mm - two[0].x_mm, two[1].y_mm - two[0].y_mm);
            let inner = (i % 2 == 0) == view.inner_first;
            let expected_mm = if inner { 12.7 } else { outer_mm };
            assert!((apart_mm - expected_mm).abs() < 1e-6, "{teeth} {i} {apart_mm}");
        }
    }
}

#[test]
fn the_drawn_gap_along_is_the_true_one_so_many_times() {
    for wear_mm in [0.0, 0.02, 0.2] {
        let view = state(wear_mm, 44.0).joint;
        for section in [&view.new, &view.worn] {
            let [from, to] = section.along_drawn_mm;
            let drawn_mm = f64::from(view.times) * section.along_mm;
            assert!((to - from - drawn_mm).abs() < 1e-9, "{wear_mm}");
        }
        assert!((view.worn.along_mm - view.new.along_mm - wear_mm).abs() < 1e-12);
        assert!((view.worn.across_mm - view.new.across_mm).abs() < 1e-12);
    }
}

#[test]
fn rule_and_gauge_differ_on_the_strip_by_the_rollers_play() {
    let strip = state(0.05, 44.0).strip;
    let play_mm = strip.gauge_over_mm - strip.rule_over_mm;
    let [first, last] = strip.rollers_mm;
    let pins_mm = strip.pins_mm[strip.pins_mm.len() - 1];
    assert!((last - first - pins_mm - play_mm).abs() < 1e-9);
    let marks_mm = strip.marks_mm[strip.marks_mm.len() - 1];
    assert!((pins_mm - marks_mm - strip.rule_over_mm).abs() < 1e-9);
    assert!((strip.gauge_mm[1] - strip.nominal_mm - strip.gauge_over_mm).abs() < 1e-9);
}

#[test]
fn heights_run_from_the_seat_to_the_tip_and_meet_the_climb() {
    let state = state(0.05, 44.0);
    let (first, last) = (state.heights[0], state.heights[state.heights.len() - 1]);
    assert!(first.wear_mm < 1e-6 && first.high_mm < 1e-9);
    assert!((last.wear_mm - state.limits.pass_mm).abs() < 1e-9);
    assert!(state.heights.windows(2).all(|two| two[1].wear_mm > two[0].wear_mm));
    assert!(state.limits.to_mm > state.limits.pass_mm);
}

#[test]
fn a_chain_that_says_nothing_of_wear_is_shown_worn_by_half_a_percent() {
    let mut file = scenario(0.05, 44.0).write();
    file.put("wear", Value::Null);
    let bare = Scenario::read(&file).expect("wear may be left out");
    let state = WearState::of(&bare).expect("it goes together");
    assert!((state.section.elongation_fraction - 0.005).abs() < 1e-12);
    assert!(WearState::friction(&bare).is_some());
}

#[test]
fn the_room_grows_in_turn_and_not_aside() {
    let state = state(0.1, 44.0);
    let most = |room: &[Corner], of: fn(&Corner) -> f64| room.iter().map(of).fold(0.0, f64::max);
    let [new, worn] = &state.rooms;
    assert!(most(worn, |c| c.yaw_rad) > 1.5 * most(new, |c| c.yaw_rad));
    assert!((most(worn, |c| c.offset_mm) - most(new, |c| c.offset_mm)).abs() < 1e-9);
}
