//! What must hold of every chain's width. Press fits and stresses reckoned elsewhere are in
//! `checked/width.rs`.

use lightgap::answer;
use lightgap::contact::Play;
use lightgap::drive::Slim;
use lightgap::report::{Report, WidthSection};
use lightgap::scenario::{Scenario, Value};
use lightgap::width::{MATERIALS, STEEL};
use lightgap_tests::{scenarios, unsaid, words};
use std::collections::BTreeSet;

fn scenario(id: &str) -> Scenario {
    scenarios().into_iter().find(|(found, _)| found == id).expect(id).1
}

/// A scenario's chain narrower by so much, mm.
fn narrower(scenario: &Scenario, by_mm: f64, keep: &str) -> Slim {
    let kept = scenario.with("width.keep", Value::text(keep)).expect("a word");
    let slim = kept.with("width.narrower_mm", Value::from(by_mm)).expect("it can be built");
    Slim::of(&slim).expect("it goes together as it is")
}

#[test]
fn a_chain_narrower_by_two_tenths_keeps_its_gaps_on_thinner_plates() {
    // Common practice, no source: each further gear behind makes the chain some tenths of a
    // millimetre narrower; its side gap stays about 0.2 mm, so its plates have to give.
    let trike = scenario("ferry-trike");
    let gap_mm = trike.chain.chain().side_gap_mm();
    let before = WidthSection::of(&narrower(&trike, 0.0, "gaps"));
    let after = WidthSection::of(&narrower(&trike, 0.3, "gaps"));
    assert!((before.width_over_pins_mm - after.width_over_pins_mm - 0.3).abs() < 1e-12);
    assert!((after.side_gap_mm - gap_mm).abs() < 1e-12);
    assert!((after.free_offset_mm - before.free_offset_mm).abs() < 1e-9);
    let thinner = after.inner_plates_mm / before.inner_plates_mm;
    assert!((thinner - (1.0 - 0.3 / 4.0)).abs() < 1e-12, "{thinner}");
    let stress = after.plate_stress_mpa / before.plate_stress_mpa;
    assert!((stress * thinner - 1.0).abs() < 1e-12);
}

#[test]
fn plates_that_are_kept_eat_the_side_gap_and_the_free_offset_with_it() {
    let trike = scenario("ferry-trike");
    let gap_mm = trike.chain.chain().side_gap_mm();
    for share in [0.25, 0.5, 1.0] {
        let slim = narrower(&trike, share * gap_mm, "plates");
        let [before_mm, now_mm] = slim.free_offsets_mm();
        assert!((now_mm - (1.0 - share) * before_mm).abs() < 1e-9, "{share}");
        let [before_mpa, now_mpa] = slim.plates_mpa();
        assert_eq!(before_mpa.map(f64::to_bits), now_mpa.map(f64::to_bits), "{share}");
        assert!(Play::of(&slim.slim).offset_mm <= Play::of(&slim.wide).offset_mm);
    }
    let slim = narrower(&trike, gap_mm + 0.1, "plates");
    let overlap = slim.interference();
    assert!((overlap[0].too_little_mm - 0.1).abs() < 1e-9 && overlap.len() == 1);
    assert_eq!(answer::width(&slim)[0].id, "width.apart");
}

#[test]
fn narrower_is_never_less_stressed_and_hollow_never_harder_pressed() {
    for (id, scenario) in scenarios().into_iter().filter(|(_, s)| s.chain.chain().goes_together()) {
        let most_mm = narrower(&scenario, 0.0, "gaps").most_mm;
        let mut before = 0.0;
        for i in 0..=20 {
            let section =
                WidthSection::of(&narrower(&scenario, most_mm * f64::from(i) / 20.0, "gaps"));
            assert!(section.plate_stress_mpa >= before, "{id} {i}");
            let layers_mm = section.roller_mm
                + section.roller_gap_mm
                + section.inner_plates_mm
                + section.side_gap_mm
                + section.outer_plates_mm
                + section.heads_mm;
            assert!((layers_mm - section.width_over_pins_mm).abs() < 1e-9, "{id} {i}");
            before = section.plate_stress_mpa;
        }
    }
}

#[test]
fn every_material_is_worked_out_and_a_softer_plate_is_pressed_less() {
    let slim = narrower(&scenario("ferry-trike"), 0.0, "gaps");
    for material in MATERIALS {
        let [pull, hoop] = slim.shares(material);
        assert!(pull > 0.0 && hoop > 0.0 && pull.is_finite() && hoop.is_finite());
        let pressure =
            |material: &lightgap::width::Material| slim.press(material.elastic()).pressure_mpa();
        assert!(
            material.modulus_mpa > STEEL.modulus_mpa - 1.0 || pressure(material) < pressure(&STEEL)
        );
    }
}

#[test]
fn a_report_has_the_section_only_where_width_is_asked_for() {
    assert_eq!(Report::of(&scenario("too-tight")).width, None);
    let tight = scenario("too-tight").with("width.press_mm", Value::from(0.01)).expect("a width");
    assert!(Report::of(&tight).width.is_some());
    assert!(scenario("ferry-trike").width.is_some(), "one narrow chain asks for it");
}

#[test]
fn everything_that_is_said_of_width_has_its_sentence_and_its_numbers() {
    let words = words();
    let mut ids = BTreeSet::new();
    for (_, scenario) in scenarios().into_iter().filter(|(_, s)| s.chain.chain().goes_together()) {
        let gap_mm = scenario.chain.chain().side_gap_mm();
        let swollen = scenario.with("width.swelling_mm", Value::from(0.2)).expect("a width");
        let slims = [
            narrower(&scenario, 0.0, "gaps"),
            narrower(&scenario, 0.1, "gaps"),
            narrower(&scenario, 0.5 * gap_mm, "plates"),
            narrower(&scenario, gap_mm, "plates"),
            narrower(&scenario, gap_mm + 0.1, "plates"),
            Slim::of(&swollen).expect("it goes together"),
        ];
        for answer in slims.iter().flat_map(answer::width) {
            assert_eq!(unsaid(&words, &answer), [""; 0]);
            ids.insert(answer.id);
        }
    }
    for id in
        ["width.budget", "width.plates", "width.gap", "width.stuck", "width.apart", "width.jammed"]
    {
        assert!(ids.contains(id), "{id} was never said: {ids:?}");
    }
}
