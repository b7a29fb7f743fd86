//! A lesson: steps that change a scenario and say something about it.

use super::fields::{Fields, given, text_at};
use super::range::Range;
use super::value::Value;
use crate::contact::Contact;
use crate::error::{Given, Rule};

/// Where a step can make people look: a view of the drawing, or a picture of a question.
const LOOKS: &[&str] =
    &["section", "side", "end", "share", "chance", "sorted", "joint", "wheel", "pitches", "dust"];
/// The questions a step can turn to.
const QUESTIONS: &[&str] = &["give", "touch", "line", "fit", "wear", "reach", "surface", "width"];
/// The movements a step can show.
const WAYS: &[&str] = &["turn", "aside", "lean", "twist", "bend", "load"];
/// A question has so many choices at most.
const MOST_CHOICES: f64 = 9.0;

/// One step.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The sentence to say.
    pub say: String,
    /// What changes: paths such as `chain.outer_spacing_mm` and their new values.
    pub set: Vec<(String, Value)>,
    /// Where to look: a section of the drawing (`section`, `side`, `end`) or a picture of a question (`dust`).
    pub look: Option<&'static str>,
    /// The question to turn to.
    pub question: Option<&'static str>,
    /// The movement to show.
    pub way: Option<&'static str>,
    /// How far along it, -1 to 1.
    pub at: Option<f64>,
    /// The contact to light.
    pub light: Option<Contact>,
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
            question: fields.word("question", QUESTIONS),
            way: fields.word("way", WAYS),
            at: fields.number_if_given("at", Range::between(-1.0, 1.0)),
            light: contact(fields),
            ask: fields.section("ask", Ask::read),
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("say", &self.say);
        if !self.set.is_empty() {
            whole.put("set", Value::Object(self.set.clone()));
        }
        let words = [("look", self.look), ("question", self.question), ("way", self.way)];
        for (key, word) in words {
            if let Some(word) = word {
                whole.put_text(key, word);
            }
        }
        whole.put_if_given("at", self.at);
        if let Some(contact) = self.light {
            whole.put_text("light", &contact.id());
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

/// The contact that a step lights, by its id.
fn contact(fields: &mut Fields) -> Option<Contact> {
    let id = fields.text_if_given("light")?;
    let found = Contact::of_id(id);
    if found.is_none() {
        fields.fault("light", Given::Text(id.to_owned()), Rule::KnownContact);
    }
    found
}

impl Ask {
    fn read(fields: &mut Fields) -> Self {
        let text = fields.required_text("text");
        let items = fields.items("choices");
        if items.len() < 2 && !fields.has_fault("choices") {
            let count = Given::Number(items.len() as f64);
            fields.fault("choices", count, Rule::AtLeast { limit: 2.0 });
        }
        let read = |(item, path): &(&Value, String)| {
            let text = text_at(item, path, fields.faults())?;
            if text.trim().is_empty() {
                fields.faults().note(path, given(item), Rule::NotEmpty);
            }
            Some(text.to_owned())
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
        let mut whole = Value::Null;
        whole.put_text("text", &self.text);
        let choices = self.choices.iter().map(|choice| Value::text(choice)).collect();
        whole.put("choices", Value::List(choices));
        whole.put_number("answer", self.answer.into());
        whole.put_text("because", &self.because);
        whole
    }
}
