//! The description of the scenario format (`scenarios/README.md`) against the reader: every member
//! is described, and the defaults are those that are taken.

use lightgap::chain::Dimension;
use lightgap::scenario::{Scenario, Value};
use lightgap_tests::text_of;

/// The cells of every row of every table.
fn rows() -> Vec<Vec<String>> {
    let cells = |line: &str| -> Vec<String> {
        line.trim_matches('|').split(" | ").map(|cell| cell.trim().to_owned()).collect()
    };
    let text = text_of("scenarios/README.md");
    text.lines().filter(|line| line.starts_with('|')).map(cells).collect()
}

/// Whether a cell names a member.
fn names(cell: &str, key: &str) -> bool {
    cell.contains(&format!("`{key}`"))
}

/// A scenario with every section that can be empty, empty.
fn bare() -> Scenario {
    let mut value = Value::object([
        ("format", Value::from(1.0)),
        ("title", Value::text("A chain")),
        ("chain", Value::object([])),
    ]);
    for (key, mm) in
        [("pitch", 12.7), ("roller_diameter", 7.75), ("inner_width", 6.35), ("pin_diameter", 3.58)]
    {
        value.put(&format!("chain.{key}_mm"), Value::from(mm));
    }
    for section in ["load", "motion", "sampling", "reach", "surface"] {
        value.put(section, Value::object([]));
    }
    let wheels = ["driver_teeth", "driven_teeth", "centre_distance_mm"];
    wheels.iter().for_each(|key| value.put(&format!("drive.{key}"), Value::from(99.0)));
    value.put("drive.centre_distance_mm", Value::from(999.0));
    value.put("matching.dimension_a", Value::text("inner_plate_mm"));
    value.put("matching.dimension_b", Value::text("outer_spacing_mm"));
    Scenario::read(&value).unwrap_or_else(|faults| panic!("{faults:?}"))
}

#[test]
fn every_default_of_a_section_is_the_one_that_is_taken() {
    let rows = rows();
    let Value::Object(sections) = bare().write() else { panic!("no object") };
    let mut checked = 0;
    for (section, members) in &sections {
        let Value::Object(members) = members else { continue };
        for (key, taken) in members.iter().filter(|_| section != "chain") {
            let taken = match taken {
                Value::Number(number) => number.to_string(),
                Value::Text(text) => format!("`{text}`"),
                other => panic!("{section}.{key}: {other:?}"),
            };
            if ["99", "999"].contains(&taken.as_str())
                || key.starts_with("dimension")
                || key == "tight_n"
            {
                continue;
            }
            let described = rows.iter().any(|cells| {
                cells.iter().take(2).any(|cell| names(cell, key)) && cells.last() == Some(&taken)
            });
            assert!(described, "{section}.{key} takes {taken}");
            checked += 1;
        }
    }
    assert!(checked >= 24, "{checked} defaults");
}

#[test]
fn every_member_that_can_be_given_is_described() {
    let text = text_of("scenarios/README.md");
    let whole: Value =
        serde_json::from_str(&text_of("tests/hostile/whole.json")).expect("a plain value");
    let mut keys = Vec::new();
    collect(&whole, &mut keys);
    keys.extend(Dimension::ALL.iter().map(|dimension| dimension.key().to_owned()));
    for key in keys.iter().filter(|key| !key.contains('.') && *key != "inch") {
        assert!(names(&text, key), "{key} is not described");
    }
}

/// The names of all members at every depth.
fn collect(value: &Value, keys: &mut Vec<String>) {
    match value {
        Value::Object(members) => members.iter().for_each(|(key, value)| {
            keys.push(key.clone());
            collect(value, keys);
        }),
        Value::List(items) => items.iter().for_each(|item| collect(item, keys)),
        _ => {}
    }
}
