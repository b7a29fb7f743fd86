//! Reading the members of one object: every fault is gathered with its full path, and what nobody
//! asked for is refused by name.
//!
//! A getter whose member is wrong notes the fault and returns a placeholder; a scenario with any
//! fault is never built, so no placeholder leaves the reader.

use super::range::Range;
use super::value::Value;
use crate::decimal;
use crate::error::{Error, Given, Rule};
use crate::quantity::MM_PER_INCH;
use std::cell::RefCell;

/// So many faults are told of one file.
const MOST_FAULTS: usize = 100;
/// So many items may stand in a list.
const MOST_ITEMS: f64 = 200.0;
/// So many characters may stand in a text.
const MOST_CHARACTERS: f64 = 2000.0;

/// The faults found so far.
#[derive(Debug, Default)]
pub(super) struct Faults(RefCell<Vec<Error>>);

impl Faults {
    /// Notes a fault; past the first hundred they are no longer told one by one.
    #[inline(never)]
    pub(super) fn note(&self, path: &str, value: Given, rule: Rule) {
        let mut all = self.0.borrow_mut();
        if all.len() < MOST_FAULTS {
            all.push(Error { field: path.to_owned(), value, rule });
        }
    }

    /// Whether a fault stands at this path or inside it.
    pub(super) fn any_at(&self, path: &str) -> bool {
        let inside = |field: &str| {
            field
                .strip_prefix(path)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
        };
        self.0.borrow().iter().any(|fault| inside(&fault.field))
    }

    /// All of them, in the order of reading.
    pub(super) fn into_all(self) -> Vec<Error> {
        self.0.into_inner()
    }
}

/// What a value is, for a fault about its kind.
pub(super) fn given(value: &Value) -> Given {
    match value {
        Value::Number(number) => Given::Number(*number),
        Value::Text(text) => Given::Text(text.clone()),
        other => Given::Text(other.kind().to_owned()),
    }
}

/// A number of a section: its name, where it must lie, what stands for it when nobody states it.
pub(super) struct Member {
    pub(super) key: &'static str,
    pub(super) range: Range,
    pub(super) default: Option<f64>,
}

/// The section of a file with these numbers.
#[inline(never)]
pub(super) fn written(members: &[Member], numbers: &[f64]) -> Value {
    let pairs = members.iter().zip(numbers);
    Value::Object(pairs.map(|(member, &number)| (member.key.into(), number.into())).collect())
}

/// The members of one object, while they are read.
pub(super) struct Fields<'a> {
    path: String,
    members: &'a Value,
    known: Vec<&'static str>,
    faults: &'a Faults,
}

impl<'a> Fields<'a> {
    /// Reads an object with `read`, then refuses every member that was not asked for. None when the
    /// value is no object.
    pub(super) fn of<T>(
        value: &'a Value,
        path: &str,
        faults: &'a Faults,
        read: impl FnOnce(&mut Self) -> T,
    ) -> Option<T> {
        Some(Self::open(value, path.to_owned(), faults)?.whole(read))
    }

    /// What is read of the object, and a refusal of every member that was not asked for.
    #[inline(always)]
    fn whole<T>(mut self, read: impl FnOnce(&mut Self) -> T) -> T {
        let whole = read(&mut self);
        self.close();
        whole
    }

    /// An object, of which nothing has been asked yet.
    #[inline(never)]
    fn open(value: &'a Value, path: String, faults: &'a Faults) -> Option<Self> {
        if !matches!(value, Value::Object(_)) {
            faults.note(&path, given(value), Rule::WrongKind { expected: "object" });
            return None;
        }
        Some(Self { path, members: value, known: Vec::new(), faults })
    }

    /// Refuses every member that was not asked for.
    #[inline(never)]
    fn close(self) {
        let Value::Object(members) = self.members else { return };
        for (key, value) in members {
            if !self.known.contains(&key.as_str()) {
                self.faults.note(&self.path_of(key), given(value), Rule::UnknownKey);
            }
        }
    }

    /// The full path of a member.
    #[inline(never)]
    pub(super) fn path_of(&self, key: &str) -> String {
        if self.path.is_empty() { key.to_owned() } else { [&self.path, ".", key].concat() }
    }

    /// Where faults go.
    pub(super) fn faults(&self) -> &'a Faults {
        self.faults
    }

    /// Notes a fault about a member.
    #[inline(never)]
    pub(super) fn fault(&self, key: &str, value: Given, rule: Rule) {
        self.faults.note(&self.path_of(key), value, rule);
    }

    /// Whether a member is there and is not null, without asking for it.
    pub(super) fn is_given(&self, key: &str) -> bool {
        self.members.member(key).is_some_and(|value| !matches!(value, Value::Null))
    }

    /// Whether a member has a fault.
    pub(super) fn has_fault(&self, key: &str) -> bool {
        self.faults.any_at(&self.path_of(key))
    }

    /// Whether this object or anything in it has a fault.
    pub(super) fn any_fault(&self) -> bool {
        self.faults.any_at(&self.path)
    }

    /// Notes that a member must be there.
    #[inline(never)]
    pub(super) fn missing(&self, key: &str) {
        self.fault(key, Given::Nothing, Rule::Missing);
    }

    /// Notes a fault about the object itself.
    #[inline(never)]
    pub(super) fn fault_of_all(&self, rule: Rule) {
        self.faults.note(&self.path, Given::Nothing, rule);
    }

    /// A member, if it is there and is not null; from now on its name is known.
    pub(super) fn given(&mut self, key: &'static str) -> Option<&'a Value> {
        self.known.push(key);
        self.members.member(key).filter(|value| !matches!(value, Value::Null))
    }

    /// A member that must be there.
    #[inline(never)]
    pub(super) fn required(&mut self, key: &'static str) -> Option<&'a Value> {
        let value = self.given(key);
        if value.is_none() {
            self.missing(key);
        }
        value
    }

    /// A number within a range, if it is there.
    #[inline(never)]
    pub(super) fn number_if_given(&mut self, key: &'static str, range: Range) -> Option<f64> {
        let value = self.given(key)?;
        let path = self.path_of(key);
        Some(number_at(value, &path, range.of_key(key), self.faults).unwrap_or(0.0))
    }

    /// A number within a range: the default when it is not there, a fault when it has none.
    #[inline(never)]
    pub(super) fn number(&mut self, key: &'static str, range: Range, default: Option<f64>) -> f64 {
        if let Some(number) = self.number_if_given(key, range) {
            return number;
        }
        if default.is_none() {
            self.missing(key);
        }
        default.unwrap_or(0.0)
    }

    /// The numbers of a whole section, one behind the other.
    #[inline(never)]
    pub(super) fn numbers(&mut self, members: &[Member], into: &mut [f64]) {
        for (member, number) in members.iter().zip(into) {
            *number = self.number(member.key, member.range, member.default);
        }
    }

    /// A text, if it is there.
    #[inline(never)]
    pub(super) fn text_if_given(&mut self, key: &'static str) -> Option<&'a str> {
        let value = self.given(key)?;
        let path = self.path_of(key);
        text_at(value, &path, self.faults)
    }

    /// A text that may be left out.
    #[inline(never)]
    pub(super) fn text(&mut self, key: &'static str) -> String {
        self.text_if_given(key).unwrap_or_default().to_owned()
    }

    /// A text that must be there and say something.
    pub(super) fn required_text(&mut self, key: &'static str) -> String {
        let Some(value) = self.required(key) else { return String::new() };
        let text = text_at(value, &self.path_of(key), self.faults);
        if text.is_some_and(|text| text.trim().is_empty()) {
            self.fault(key, given(value), Rule::NotEmpty);
        }
        text.unwrap_or_default().to_owned()
    }

    /// A name that must be there; none when it is not, or is no text.
    pub(super) fn required_name(&mut self, key: &'static str) -> Option<&'a str> {
        let value = self.required(key)?;
        text_at(value, &self.path_of(key), self.faults)
    }

    /// One of a few words, if it is there.
    #[inline(never)]
    pub(super) fn word(
        &mut self,
        key: &'static str,
        choices: &'static [&'static str],
    ) -> Option<&'static str> {
        let text = self.text_if_given(key)?;
        let found = choices.iter().find(|choice| **choice == text).copied();
        if found.is_none() {
            self.fault(key, Given::Text(text.to_owned()), Rule::OneOf { choices });
        }
        found
    }

    /// An object inside this one, if it is there.
    pub(super) fn section<T>(
        &mut self,
        key: &'static str,
        read: impl FnOnce(&mut Fields<'a>) -> T,
    ) -> Option<T> {
        Some(self.open_section(key)?.whole(read))
    }

    #[inline(never)]
    fn open_section(&mut self, key: &'static str) -> Option<Fields<'a>> {
        let value = self.given(key)?;
        Fields::open(value, self.path_of(key), self.faults)
    }

    /// A list inside this object with the path of each item; empty when it is not there.
    #[inline(never)]
    pub(super) fn items(&mut self, key: &'static str) -> Vec<(&'a Value, String)> {
        let Some(value) = self.given(key) else { return Vec::new() };
        let Value::List(list) = value else {
            self.fault(key, given(value), Rule::WrongKind { expected: "list" });
            return Vec::new();
        };
        if list.len() as f64 > MOST_ITEMS {
            let rule = Rule::AtMostItems { limit: MOST_ITEMS };
            self.fault(key, Given::Number(list.len() as f64), rule);
            return Vec::new();
        }
        let path = self.path_of(key);
        list.iter().enumerate().map(|(i, item)| (item, item_path(&path, i))).collect()
    }

    /// A list of objects inside this one; empty when it is not there.
    pub(super) fn each<T>(
        &mut self,
        key: &'static str,
        mut read: impl FnMut(&mut Fields<'a>) -> T,
    ) -> Vec<T> {
        let mut all = Vec::new();
        for (item, path) in self.items(key) {
            let Some(item) = Fields::open(item, path, self.faults) else { continue };
            all.push(item.whole(&mut read));
        }
        all
    }
}

/// A number, or for a length its inches as `{"inch": x}`, within a range.
#[inline(never)]
pub(super) fn number_at(value: &Value, path: &str, range: Range, faults: &Faults) -> Option<f64> {
    let number = match value {
        Value::Number(number) => *number,
        Value::Object(_) if range.is_length => {
            let any = Range::any();
            let inches = Fields::of(value, path, faults, |inch| inch.number("inch", any, None))?;
            inches * MM_PER_INCH
        }
        _ => {
            let expected = if range.is_length { "length" } else { "number" };
            faults.note(path, given(value), Rule::WrongKind { expected });
            return None;
        }
    };
    if faults.any_at(path) {
        return None;
    }
    let broken = range.broken_by(number);
    if let Some(rule) = broken {
        faults.note(path, Given::Number(number), rule);
        return None;
    }
    Some(number)
}

/// A text of a bearable length.
#[inline(never)]
pub(super) fn text_at<'a>(value: &'a Value, path: &str, faults: &Faults) -> Option<&'a str> {
    let Value::Text(text) = value else {
        faults.note(path, given(value), Rule::WrongKind { expected: "text" });
        return None;
    };
    let characters = text.chars().count() as f64;
    if characters > MOST_CHARACTERS {
        let rule = Rule::AtMostCharacters { limit: MOST_CHARACTERS };
        faults.note(path, Given::Number(characters), rule);
        return None;
    }
    Some(text)
}

/// The path of an item of a list, without the formatter of the standard library, which would be part of
/// what the first screen loads.
pub(super) fn item_path(list: &str, index: usize) -> String {
    let mut path = [list, "["].concat();
    decimal::write(&mut path, index as f64, 0, '.');
    path.push(']');
    path
}
