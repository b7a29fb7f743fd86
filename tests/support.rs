//! What the tests share: the project's scenarios, read as the commands read them, and the numbers
//! of a report.

pub mod checked;
pub mod kept;
pub mod speed;
pub mod trials;

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

/// Every sentence of the page by its id, of the first screen and of every question.
///
/// # Panics
/// When a file of them cannot be read.
pub fn words() -> serde_json::Value {
    let mut all = serde_json::Map::new();
    for entry in std::fs::read_dir(at("www/words/en")).expect("the words").flatten() {
        let text = std::fs::read_to_string(entry.path()).expect("a file of words");
        let words: serde_json::Map<_, _> = serde_json::from_str(&text).expect("a flat object");
        all.extend(words);
    }
    all.into()
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

/// Every lesson by its id, in the order of their list.
///
/// # Panics
/// When the list cannot be read.
pub fn lesson_ids() -> Vec<String> {
    let list: Vec<serde_json::Value> =
        serde_json::from_str(&text_of("scenarios/lessons/index.json")).expect("the list");
    list.iter().map(|one| one["id"].as_str().expect("an id").to_owned()).collect()
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

/// One published figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What is checked.
    pub what: String,
    /// Of which thing.
    pub of: String,
    /// The published value.
    pub value: f64,
    /// How far the kernel may be from it, in the same unit.
    pub tolerance: f64,
    /// The unit.
    pub unit: String,
    /// Where it is published.
    pub source: String,
}

/// The rows of a file of published figures; the source is the last column and may hold commas.
///
/// # Panics
/// When the file cannot be read or a number in it is none.
pub fn rows(path: &str) -> Vec<Row> {
    let number = |text: &str| text.parse::<f64>().unwrap_or_else(|_| panic!("{path}: {text}"));
    let row = |line: &str| {
        let columns: Vec<_> = line.splitn(6, ',').collect();
        Row {
            what: columns[0].to_owned(),
            of: columns[1].to_owned(),
            value: number(columns[2]),
            tolerance: number(columns[3]),
            unit: columns[4].to_owned(),
            source: columns[5].to_owned(),
        }
    };
    text_of(path).lines().skip(1).map(row).collect()
}

/// What is wrong with the sentence of an answer and with what nobody expects of it: no sentence at
/// all, a place without a number, or a number that is none.
pub fn unsaid(words: &serde_json::Value, answer: &lightgap::answer::Answer) -> Vec<String> {
    let id = answer.id;
    let mut wrong = Vec::new();
    if !words[format!("answer.{id}")].is_string() {
        wrong.push(format!("{id} has no sentence"));
    }
    for kind in ["answer", "surprise"] {
        let sentence = words[format!("{kind}.{id}")].as_str().unwrap_or_default();
        for place in sentence.split('{').skip(1).filter_map(|rest| rest.split('}').next()) {
            let number = answer.numbers.iter().find(|(name, _)| *name == place);
            if !number.is_some_and(|(_, number)| number.is_finite() && *number >= 0.0) {
                wrong.push(format!("{kind}.{id}: {place} is {number:?}"));
            }
        }
    }
    wrong
}
