//! What the tests share: the project's scenarios, read as the commands read them, and the numbers
//! of a report.

use lightgap::error::Error;
use lightgap::scenario::Scenario;
use serde::Serialize;
use std::path::{Path, PathBuf};

/// A file or folder of the project.
pub fn at(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(path)
}

/// The text of a file of the project.
///
/// # Panics
/// When it cannot be read: no test can go on without it.
pub fn text_of(path: &str) -> String {
    std::fs::read_to_string(at(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// One line of `scenarios/index.json`.
#[derive(Debug, Clone, PartialEq, Eq, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Listed {
    /// The name of the scenario in addresses and tests.
    pub id: String,
    /// Its file in `scenarios/`.
    pub file: String,
    /// The id of its title in the word lists.
    pub title: String,
}

/// Every scenario of the menu, in its order.
///
/// # Panics
/// When the list cannot be read.
pub fn listed() -> Vec<Listed> {
    serde_json::from_str(&text_of("scenarios/index.json")).expect("the list of scenarios")
}

/// Every scenario of the menu by its id.
///
/// # Panics
/// When one of them has a fault.
pub fn scenarios() -> Vec<(String, Scenario)> {
    let read = |listed: Listed| {
        let text = text_of(&format!("scenarios/{}", listed.file));
        let scenario =
            read_scenario(&text).unwrap_or_else(|faults| panic!("{}: {faults:?}", listed.id));
        (listed.id, scenario)
    };
    listed().into_iter().map(read).collect()
}

/// Reads a scenario from the text of its file.
///
/// # Errors
/// Every fault of the file.
pub fn read_scenario(text: &str) -> Result<Scenario, Vec<Error>> {
    let value = serde_json::from_str(text)
        .map_err(|fault| vec![Error::syntax("", fault.line(), fault.column())])?;
    Scenario::read(&value)
}

/// Every number of a report by its path, such as `play.yaw_limit_rad`, in the order of the report.
///
/// # Panics
/// When the report is no plain data.
pub fn numbers(report: &impl Serialize) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    collect("", &serde_json::to_value(report).expect("plain data"), &mut found);
    found
}

fn collect(path: &str, value: &serde_json::Value, found: &mut Vec<(String, f64)>) {
    let join = |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
    match value {
        serde_json::Value::Number(number) => {
            found.push((path.to_owned(), number.as_f64().unwrap_or(f64::NAN)));
        }
        serde_json::Value::Array(items) => {
            let each = items.iter().enumerate();
            each.for_each(|(i, item)| collect(&join(&i.to_string()), item, found));
        }
        serde_json::Value::Object(members) => {
            members.iter().for_each(|(key, item)| collect(&join(key), item, found));
        }
        _ => {}
    }
}
