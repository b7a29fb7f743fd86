//! A lesson: steps that change a scenario and say something about it.

use super::fields::{Fields, given, text_at};
use super::range::Range;
use super::value::Value;
use crate::error::Rule;

/// Where a step can make people look.
const LOOKS: &[&str] = &["section", "side", "end"];
/// A question has so many choices at most.
const MOST_CHOICES: f64 = 9.0;

/// One step.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The sentence to say.
    pub say: String,
    /// What changes: paths such as `chain.outer_spacing_mm` and their new values.
    pub set: Vec<(String, Value)>,
    /// Where to look: `section`, `side` or `end`.
    pub look: Option<&'static str>,
    /// A guess before the answer.
    pub ask: Option<Ask>,
}

/// A question with choices.
#[derive(Debug, Clone, PartialEq)]
pub struct Ask {
    /// The question.
    pub text: String,
    /// What can be answered.
    pub choices: Vec<String>,
    /// The right one, counted from 1.
    pub answer: u32,
    /// Why.
    pub because: String,
}

impl Step {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            say: fields.required_text("say"),
            set: changes(fields),
            look: fields.word("look", LOOKS),
            ask: fields.section("ask", Ask::read),
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::object([("say", Value::text(&self.say))]);
        if !self.set.is_empty() {
            whole.put("set", Value::Object(self.set.clone()));
        }
        if let Some(look) = self.look {
            whole.put("look", Value::text(look));
        }
        if let Some(ask) = &self.ask {
            whole.put("ask", ask.write());
        }
        whole
    }
}

/// The changes of a step, as they stand: what they lead to is read with the scenario itself.
fn changes(fields: &mut Fields) -> Vec<(String, Value)> {
    match fields.given("set") {
        None => Vec::new(),
        Some(Value::Object(members)) => members.clone(),
        Some(other) => {
            fields.fault("set", given(other), Rule::WrongKind { expected: "object" });
            Vec::new()
        }
    }
}

impl Ask {
    fn read(fields: &mut Fields) -> Self {
        let text = fields.required_text("text");
        let items = fields.items("choices");
        if items.len() < 2 && !fields.has_fault("choices") {
            let count = crate::error::Given::Number(items.len() as f64);
            fields.fault("choices", count, Rule::AtLeast { limit: 2.0 });
        }
        let read = |(item, path): &(&Value, String)| {
            text_at(item, path, fields.faults()).map(str::to_owned)
        };
        let choices: Vec<String> = items.iter().filter_map(read).collect();
        let last = (items.len() as f64).clamp(1.0, MOST_CHOICES);
        Self {
            text,
            choices,
            answer: fields.number("answer", Range::whole(1.0, last), None) as u32,
            because: fields.text("because"),
        }
    }

    fn write(&self) -> Value {
        Value::object([
            ("text", Value::text(&self.text)),
            (
                "choices",
                Value::List(self.choices.iter().map(|choice| Value::text(choice)).collect()),
            ),
            ("answer", Value::from(f64::from(self.answer))),
            ("because", Value::text(&self.because)),
        ])
    }
}
