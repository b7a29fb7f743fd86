//! The published JSON Schema of a scenario admits what the reader admits and refuses what it can:
//! names, kinds and ranges. How sizes relate to each other is the reader's alone.

use jsonschema::Validator;
use lightgap::chain::Dimension;
use lightgap::quantity::Quantity;
use lightgap_tests::{listed, text_of};
use serde_json::Value;

/// Rules about several members at once, or about what a list names twice: beyond a schema of ours.
const OF_THE_READER: &[&str] = &[
    "at_least_size",
    "at_most_size",
    "above_size",
    "below_size",
    "exactly_one",
    "at_least_one",
    "repeated",
];
/// Cases whose fault is not in the file's form: a change of a step, a choice past the last one.
const OF_THE_STEPS: &[&str] = &[
    "a step that changes what is not there",
    "a step that cannot be built",
    "an answer that is no choice",
];

fn json(path: &str) -> Value {
    serde_json::from_str(&text_of(path)).unwrap_or_else(|fault| panic!("{path}: {fault}"))
}

fn schema() -> Validator {
    jsonschema::validator_for(&json("scenarios/schema.json")).expect("a schema")
}

#[test]
fn every_scenario_and_every_lesson_is_admitted() {
    let schema = schema();
    let menu = listed().into_iter().map(|listed| format!("scenarios/{}", listed.file));
    let lessons = json("scenarios/lessons/index.json");
    let lessons = lessons.as_array().expect("a list").iter();
    let lessons =
        lessons.map(|one| format!("scenarios/lessons/{}", one["file"].as_str().expect("a file")));
    // The second is saved by the page's own hands in tests/page/support/making.js.
    let whole = ["tests/hostile/whole.json", "tests/page/made-lesson.json"];
    let whole = whole.map(str::to_owned);
    for path in menu.chain(lessons).chain(whole) {
        let faults: Vec<_> = schema.iter_errors(&json(&path)).map(|e| e.to_string()).collect();
        assert!(faults.is_empty(), "{path}: {faults:?}");
    }
}

#[test]
fn what_the_reader_refuses_by_name_kind_or_range_the_schema_refuses() {
    let (schema, whole) = (schema(), json("tests/hostile/whole.json"));
    let mut seen = 0;
    for case in json("tests/hostile/cases.json").as_array().expect("a list") {
        let Some(changes) = case["change"].as_object() else { continue };
        let mut file: lightgap::scenario::Value =
            serde_json::from_value(whole.clone()).expect("a plain value");
        for (path, value) in changes {
            file.put(path, serde_json::from_value(value.clone()).expect("a plain value"));
        }
        let faults = case["faults"].as_array().expect("a list");
        let why = case["why"].as_str().expect("a text");
        let formal =
            faults.iter().any(|f| !OF_THE_READER.contains(&f[1].as_str().expect("a rule")));
        let file = serde_json::to_value(&file).expect("plain data");
        if formal && !OF_THE_STEPS.contains(&why) {
            assert!(!schema.is_valid(&file), "{why}");
            seen += 1;
        }
    }
    assert!(seen > 30, "only {seen} cases were tried");
}

#[test]
fn the_schema_names_every_dimension_and_every_quantity() {
    let schema = json("scenarios/schema.json");
    let mut sizes: Vec<&str> = Dimension::ALL.iter().map(|size| size.key()).collect();
    sizes.push("construction");
    sizes.sort_unstable();
    let chain = schema["properties"]["chain"]["properties"].as_object().expect("an object");
    let mut named: Vec<&str> = chain.keys().map(String::as_str).collect();
    named.sort_unstable();
    assert_eq!(named, sizes);
    let demanded = &schema["properties"]["demands"]["items"]["properties"]["quantity"]["enum"];
    let demanded: Vec<&str> =
        demanded.as_array().expect("a list").iter().filter_map(Value::as_str).collect();
    let known = Quantity::ALL.iter().map(|quantity| quantity.key());
    let known: Vec<&str> = known.chain(["free_offset_mm", "pitch_under_load_mm"]).collect();
    assert_eq!(demanded, known);
}
