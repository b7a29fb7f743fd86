//! What must hold of every worn chain. Published figures of wear are in `checked/wear.rs`.

use lightgap::answer;
use lightgap::chain::WornBore;
use lightgap::drive::Tired;
use lightgap::report::{Report, WearSection};
use lightgap::scenario::{Scenario, Value};
use lightgap::wear::Grind;
use lightgap_tests::{scenarios, unsaid, words};
use std::collections::BTreeSet;

fn scenario(id: &str) -> Scenario {
    scenarios().into_iter().find(|(found, _)| found == id).expect(id).1
}

fn worn(scenario: &Scenario, joint_wear_mm: f64) -> WearSection {
    let path = "wear.joint_wear_mm";
    let scenario = scenario.with(path, Value::from(joint_wear_mm)).expect("it is not worn through");
    WearSection::at_once(&Tired::of(&scenario).expect("it goes together"))
}

#[test]
fn more_wear_never_shortens_never_sinks_and_never_stiffens() {
    for (id, scenario) in scenarios().into_iter().filter(|(_, s)| s.chain.chain().goes_together()) {
        let mut before = worn(&scenario, 0.0);
        assert!(before.elongation_fraction == 0.0 && before.sprocket_rise_mm < 1e-9, "{id}");
        for i in 1..=12 {
            let now = worn(&scenario, 0.02 * f64::from(i));
            assert!(now.elongation_fraction > before.elongation_fraction, "{id}");
            assert!(now.rule_reading_fraction > before.rule_reading_fraction, "{id}");
            assert!(now.gauge_reading_fraction >= now.rule_reading_fraction, "{id}");
            assert!(now.sprocket_rise_mm > before.sprocket_rise_mm, "{id}");
            assert!(now.high_rise_mm >= before.high_rise_mm, "{id}");
            assert!(now.high_rise_mm >= now.low_rise_mm, "{id}");
            assert!(now.turn_limit_worn_rad >= before.turn_limit_worn_rad, "{id}");
            // Wear is along the load; a twist tilts the pin across it.
            assert_eq!(now.twist_limit_rad.to_bits(), before.twist_limit_rad.to_bits(), "{id}");
            before = now;
        }
    }
}

#[test]
fn a_bush_and_a_pin_are_worn_alike_whichever_law_says_so() {
    let trike = scenario("tired-trike");
    let measured = Tired::of(&trike).expect("it is worn");
    let grind = Grind { hardness_mpa: 6000.0, wear_coefficient: 1e-5 };
    let passes = measured.passes(&grind, measured.length.elongation_fraction());
    let law = Value::object([
        ("hardness_mpa", Value::from(6000.0)),
        ("wear_coefficient", Value::from(1e-5)),
        ("engagements", Value::from(passes)),
    ]);
    let worked = Tired::of(&trike.with("wear", law).expect("a law")).expect("it is worn");
    assert!((worked.worn.depth_mm() - measured.worn.depth_mm()).abs() < 1e-12);
}

#[test]
fn a_joint_that_the_law_wears_through_says_so_and_stops_there() {
    let law = Value::object([
        ("hardness_mpa", Value::from(100.0)),
        ("wear_coefficient", Value::from(1e-2)),
        ("engagements", Value::from(1e12)),
    ]);
    let through = scenario("tired-trike").with("wear", law).expect("a law");
    let tired = Tired::of(&through).expect("it goes together");
    assert!(tired.worn_through);
    assert!((tired.worn.depth_mm() - (5.0 - 3.705)).abs() < 1e-12);
    assert_eq!(answer::wear(&tired)[0].id, "wear.through");
}

#[test]
fn a_report_has_the_section_only_where_wear_is_asked_for() {
    for id in ["too-tight", "stiff-link"] {
        assert_eq!(Report::of(&scenario(id)).wear, None, "{id}");
        let asked = scenario(id).with("wear.joint_wear_mm", Value::from(0.05)).expect("wear");
        let solved = asked.chain.chain().goes_together();
        assert_eq!(Report::of(&asked).wear.is_some(), solved, "{id}");
    }
    let report = Report::of(&scenario("tired-trike")).wear.expect("the tired trike is worn");
    let more = report.friction_multiple_worn.expect("it has a drive");
    assert!(more >= 1.0 && more <= report.friction_multiple_new.expect("it has a drive"));
}

#[test]
fn everything_that_is_said_of_wear_has_its_sentence_and_its_numbers() {
    let words = words();
    let mut ids = BTreeSet::new();
    for (_, scenario) in scenarios().into_iter().filter(|(_, s)| s.chain.chain().goes_together()) {
        let tired = Tired::shown(&scenario).expect("it goes together");
        let deepest_mm = WornBore::deepest_mm(&tired.sizes);
        for share in [0.0, 0.02, 0.06, 0.15, 0.3, 0.95] {
            let worn = Value::from(share * deepest_mm);
            let scenario = scenario.with("wear.joint_wear_mm", worn).expect("there is metal left");
            for answer in answer::wear(&Tired::of(&scenario).expect("it is worn")) {
                assert_eq!(unsaid(&words, &answer), [""; 0]);
                ids.insert(answer.id);
            }
        }
    }
    let friction = answer::wear_friction(&Tired::of(&scenario("tired-trike")).expect("worn"));
    assert_eq!(unsaid(&words, &friction.expect("it has a drive")), [""; 0]);
    for id in ["wear.none", "wear.within", "wear.over", "wear.past", "wear.wheel.odd"] {
        assert!(ids.contains(id), "{id} was never said: {ids:?}");
    }
}
