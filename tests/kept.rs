//! Reports that are kept, a file for each scenario and each lesson in `golden/`: what was worked out
//! before, to be compared with what is worked out now. `cargo renew` writes them anew.

use crate::{at, lesson_ids, read_scenario, scenarios, text_of};
use lightgap::report::Report;
use lightgap::scenario::Scenario;
use serde_json::{Map, Value};
use std::path::PathBuf;

/// Two numbers that differ by less than this share differ by rounding alone.
const ROUNDING: f64 = 1e-9;
/// And so do two that are both this near to zero or to each other.
const NOTHING: f64 = 1e-12;
/// So many changes are written out one by one.
const SHOWN: usize = 40;

/// The reports of one file by their names: `report` of a scenario, `step 2` of a lesson.
#[derive(Clone, Debug)]
pub struct Kept {
    /// The name of the file, without its ending.
    pub name: String,
    /// What is worked out now.
    pub reports: Map<String, Value>,
}

impl Kept {
    /// The file that keeps it.
    pub fn path(&self) -> PathBuf {
        at(&format!("tests/golden/{}.json", self.name))
    }

    /// What was worked out when the file was written; nothing when there is none.
    pub fn before(&self) -> Value {
        let text = std::fs::read_to_string(self.path()).unwrap_or_default();
        serde_json::from_str(&text).unwrap_or_default()
    }

    /// Everything that has changed since, in words; nothing when every bit is the same.
    pub fn changes(&self) -> Vec<String> {
        let (mut found, mut rounding) = (Vec::new(), 0);
        compare("", &self.before(), &self.reports.clone().into(), &mut found, &mut rounding);
        let more = found.len().saturating_sub(SHOWN);
        found.truncate(SHOWN);
        if more > 0 {
            found.push(format!("and {more} more"));
        }
        if rounding > 0 {
            found.push(format!("{rounding} numbers differ by rounding alone"));
        }
        found
    }

    /// The text of its file: a member a line, a list of numbers on one.
    pub fn text(&self) -> String {
        let mut text = String::new();
        write(&mut text, &self.reports.clone().into(), 0);
        text.push('\n');
        text
    }
}

/// The report of every scenario of the menu.
pub fn of_scenarios() -> Vec<Kept> {
    let kept = |(name, scenario): (String, Scenario)| {
        let reports = Map::from_iter([("report".to_owned(), report(&scenario))]);
        Kept { name, reports }
    };
    scenarios().into_iter().map(kept).collect()
}

/// The reports of every lesson, one for each step that changes its scenario.
pub fn of_lessons() -> Vec<Kept> {
    lesson_ids().iter().map(|id| of_lesson(id)).collect()
}

fn of_lesson(id: &str) -> Kept {
    let read =
        |value: &_| Scenario::read(value).unwrap_or_else(|faults| panic!("{id}: {faults:?}"));
    let text = text_of(&format!("scenarios/lessons/{id}.json"));
    let mut scenario = read_scenario(&text).unwrap_or_else(|faults| panic!("{id}: {faults:?}"));
    let steps = std::mem::take(&mut scenario.lesson);
    let mut reports = Map::new();
    for (index, step) in steps.iter().enumerate() {
        let mut whole = scenario.write();
        step.set.iter().for_each(|(path, value)| whole.put(path, value.clone()));
        let next = read(&whole);
        if index == 0 || next != scenario {
            reports.insert(format!("step {}", index + 1), report(&next));
        }
        scenario = next;
    }
    Kept { name: format!("lessons/{id}"), reports }
}

fn report(scenario: &Scenario) -> Value {
    serde_json::to_value(Report::of(scenario)).expect("plain data")
}

/// Every place where two trees differ; numbers are alike only in all their bits.
fn compare(path: &str, was: &Value, is: &Value, found: &mut Vec<String>, rounding: &mut usize) {
    let inside = |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
    match (was, is) {
        (Value::Object(was), Value::Object(is)) => {
            let gone = was.keys().filter(|key| !is.contains_key(*key));
            for key in is.keys().chain(gone) {
                let side = |map: &Map<String, Value>| map.get(key).cloned().unwrap_or_default();
                compare(&inside(key), &side(was), &side(is), found, rounding);
            }
        }
        (Value::Array(was), Value::Array(is)) if was.len() == is.len() => {
            for (i, (was, is)) in was.iter().zip(is).enumerate() {
                compare(&inside(&i.to_string()), was, is, found, rounding);
            }
        }
        (Value::Number(a), Value::Number(b)) => match (a.as_f64(), b.as_f64()) {
            (Some(a), Some(b)) if a.to_bits() == b.to_bits() => {}
            (Some(a), Some(b)) if (a - b).abs() <= NOTHING.max(ROUNDING * a.abs().max(b.abs())) => {
                *rounding += 1;
            }
            (a, b) => found.push(numbers(path, a.unwrap_or(f64::NAN), b.unwrap_or(f64::NAN))),
        },
        (was, is) if was == is => {}
        (was, is) => found.push(format!("{path}: was {}, is {}", brief(was), brief(is))),
    }
}

fn numbers(path: &str, was: f64, is: f64) -> String {
    let share = 100.0 * (is / was - 1.0);
    let share = if share.is_finite() { format!(" ({share:+.3} %)") } else { String::new() };
    format!("{path}: was {was}, is {is}{share}")
}

fn brief(value: &Value) -> String {
    match value {
        Value::Null => "absent".to_owned(),
        Value::Array(items) => format!("a list of {}", items.len()),
        Value::Object(members) => format!("a section of {}", members.len()),
        plain => plain.to_string(),
    }
}

fn write(text: &mut String, value: &Value, depth: usize) {
    const INDENT: &str = "  ";
    let line = |text: &mut String, depth: usize| {
        text.push('\n');
        text.push_str(&INDENT.repeat(depth));
    };
    let nested = |item: &Value| item.is_object() || item.is_array();
    match value {
        Value::Object(members) if !members.is_empty() => {
            text.push('{');
            for (i, (key, item)) in members.iter().enumerate() {
                text.push_str(if i == 0 { "" } else { "," });
                line(text, depth + 1);
                text.push_str(&format!("{}: ", Value::from(key.as_str())));
                write(text, item, depth + 1);
            }
            line(text, depth);
            text.push('}');
        }
        Value::Array(items) if items.iter().any(nested) => {
            text.push('[');
            for (i, item) in items.iter().enumerate() {
                text.push_str(if i == 0 { "" } else { "," });
                line(text, depth + 1);
                write(text, item, depth + 1);
            }
            line(text, depth);
            text.push(']');
        }
        Value::Array(items) => {
            let each: Vec<_> = items.iter().map(Value::to_string).collect();
            text.push_str(&format!("[{}]", each.join(", ")));
        }
        plain => text.push_str(&plain.to_string()),
    }
}
