//! Every scenario of the menu reads, reports and comes back as it was; each has a twin that is
//! refused.

use lightgap::chain::{Construction, Dimension};
use lightgap::quantity::Quantity;
use lightgap::report::Report;
use lightgap::scenario::{Scenario, Value};
use lightgap::table::Published;
use lightgap_tests::{at, listed, numbers, read_scenario, scenarios, words};

#[test]
fn the_list_names_every_file_of_the_folder_once() {
    let mut named: Vec<_> = listed().into_iter().map(|listed| listed.file).collect();
    named.extend([
        "index.json".to_owned(),
        "README.md".to_owned(),
        "lessons".to_owned(),
        "schema.json".to_owned(),
        "de".to_owned(),
    ]);
    named.sort();
    let folder = std::fs::read_dir(at("scenarios")).expect("the folder");
    let mut there: Vec<_> = folder
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    there.sort();
    assert_eq!(named, there);
}

#[test]
fn the_words_hold_every_title() {
    let words = words();
    for listed in listed() {
        assert!(words[&listed.title].as_str().is_some_and(|title| !title.is_empty()), "{listed:?}");
        assert_eq!(listed.file, format!("{}.json", listed.id));
    }
}

#[test]
fn every_scenario_says_what_it_is_about_and_where_its_sizes_come_from() {
    for (id, scenario) in scenarios() {
        assert!(!scenario.about.is_empty(), "{id}");
        assert!(scenario.source.contains("chosen"), "{id}");
    }
}

#[test]
fn a_scenario_that_is_written_reads_as_it_was() {
    for (id, scenario) in scenarios() {
        let text = serde_json::to_string(&scenario.write()).expect("plain data");
        assert_eq!(read_scenario(&text).expect(&id), scenario);
    }
}

/// For each scenario a change that is refused: path, value, the fault's path and rule.
const TWINS: &[(&str, &str, f64, &str, &str)] = &[
    ("ferry-winch", "chain.pin_diameter_mm", 7.0, "chain.bore_mm", "at_least_size"),
    ("ferry-trike", "chain.bearing_length_mm", 2.3, "chain.bearing_length_mm", "at_most_size"),
    ("tired-trike", "chain.mouth_radius_mm", 0.85, "chain.mouth_radius_mm", "below_size"),
    ("wide-gap", "chain.pin_length_mm", 6.9, "chain.pin_length_mm", "at_least_size"),
    ("too-tight", "chain.barrel_mm", 3.6, "chain.barrel_mm", "above_size"),
    ("stiff-link", "chain.bore_mm", 3.0, "chain.bore_mm", "at_least_size"),
    ("oiled-winch", "reach.viscosity_pa_s", 0.0, "reach.viscosity_pa_s", "positive"),
    ("dusty-trike", "surface.particle_um", 0.0, "surface.particle_um", "positive"),
    ("ferry-thousand", "matching.classes", 1.0, "matching.classes", "at_least"),
];

#[test]
fn every_scenario_has_a_twin_that_is_refused() {
    for (id, scenario) in scenarios() {
        let twin = TWINS.iter().find(|(twin, ..)| *twin == id);
        let (_, path, value, field, rule) = twin.unwrap_or_else(|| panic!("{id} has no twin"));
        let faults = scenario.with(path, Value::from(*value)).expect_err(&id);
        let named = faults.iter().any(|fault| fault.field == *field && fault.rule.id() == *rule);
        assert!(named, "{id}: {faults:?}");
    }
}

#[test]
fn no_number_of_a_report_is_nan_infinite_or_negative_zero() {
    for (id, scenario) in scenarios() {
        let numbers = numbers(&Report::of(&scenario));
        assert!(numbers.len() >= 8, "{id}: {numbers:?}");
        for (path, number) in numbers {
            assert!(number.is_finite(), "{id} {path}");
            assert!(number != 0.0 || number.is_sign_positive(), "{id} {path} is negative zero");
        }
    }
}

#[test]
fn a_report_holds_every_quantity_of_the_catalogue() {
    for (id, scenario) in scenarios() {
        let numbers = numbers(&Report::of(&scenario));
        let chain = scenario.chain.chain();
        let solved = Quantity::PLAY.iter().filter(|_| chain.goes_together());
        let geometry = Quantity::GEOMETRY.iter().map(|quantity| ("geometry", quantity));
        for (section, quantity) in geometry.chain(solved.map(|quantity| ("play", quantity))) {
            let path = format!("{section}.{}", quantity.key());
            let found = numbers.iter().find(|(named, _)| *named == path);
            let (_, number) = found.unwrap_or_else(|| panic!("{id} has no {path}"));
            assert_eq!(number.to_bits(), quantity.of(chain).to_bits(), "{id} {path}");
        }
    }
}

/// One of the scenarios.
fn scenario(id: &str) -> Scenario {
    scenarios().into_iter().find(|(found, _)| found == id).expect(id).1
}

#[test]
fn the_winch_has_the_published_chain() {
    let filled = Published::of_number("60").expect("it is in the table").fill(Construction::Bushed);
    let winch = scenario("ferry-winch");
    assert_eq!(winch.chain.stated().len(), filled.stated.len());
    for &dimension in Dimension::ALL {
        let (got, filled) = (dimension.of(winch.chain.chain()), dimension.of(&filled.sizes()));
        assert!((got - filled).abs() < 1e-12, "{}: {got} {filled}", dimension.key());
    }
}

#[test]
fn the_pin_stops_the_new_trike_and_the_plates_the_tired_one() {
    let play = |id| Report::of(&scenario(id)).play.expect("it goes together");
    assert_eq!(play("ferry-trike").yaw_limited_by, "pin");
    assert_eq!(play("tired-trike").yaw_limited_by, "face");
    assert!(play("tired-trike").turn_limit_rad > play("ferry-trike").turn_limit_rad);
}

#[test]
fn a_wider_side_gap_slides_further_and_turns_no_further() {
    let play = |id| Report::of(&scenario(id)).play.expect("it goes together");
    let (narrow, wide) = (play("ferry-trike"), play("wide-gap"));
    assert_eq!(narrow.turn_limit_rad.to_bits(), wide.turn_limit_rad.to_bits());
    assert!((wide.offset_limit_mm - narrow.offset_limit_mm - 0.25).abs() < 1e-12);
}

#[test]
fn a_chain_without_pin_clearance_slides_and_does_not_turn() {
    let play = Report::of(&scenario("too-tight")).play.expect("it goes together");
    assert_eq!(play.turn_limit_rad.to_bits(), 0.0_f64.to_bits());
    assert!((play.offset_limit_mm - 0.1).abs() < 1e-12);
}

#[test]
fn a_stiff_link_reports_its_overlap_and_no_play() {
    let report = Report::of(&scenario("stiff-link"));
    let overlaps = report.interference.expect("it does not go together");
    assert_eq!(overlaps.len(), 1);
    assert_eq!(overlaps[0].between, "pin_bore");
    assert!((overlaps[0].too_little_mm - 0.02).abs() < 1e-12);
    assert_eq!((report.play, report.range), (None, None));
}

#[test]
fn the_limits_give_a_range_on_both_sides_of_the_middle() {
    let report = Report::of(&scenario("ferry-trike"));
    let range = report.range.expect("it has limits");
    let turn =
        |extreme: Option<lightgap::report::PlaySection>| extreme.expect("solved").turn_limit_rad;
    assert!(turn(range.tightest.play) < turn(report.play));
    assert!(turn(report.play) < turn(range.loosest.play));
}
