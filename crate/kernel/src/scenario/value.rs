//! One tree of plain values: what a scenario file holds before anybody has read it.
//!
//! Either side fills it through serde: natively from the text of a file, in a page from the object
//! that the browser has parsed. What is deeper than [`Value::DEEPEST`] levels is taken as nothing;
//! the reader refuses such a file anyway at a level above.

use serde::de::{self, DeserializeSeed, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::mem::take;

/// A value of a scenario file. Members of an object keep their order; of two members of one name
/// the last counts.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum Value {
    /// Nothing: stands for the default.
    #[default]
    Null,
    /// True or false.
    Bool(bool),
    /// A number; never negative zero.
    Number(f64),
    /// A text.
    Text(String),
    /// A list.
    List(Vec<Value>),
    /// Named members.
    Object(Vec<(String, Value)>),
}

impl Value {
    /// How many lists and objects may stand inside one another: twice what a scenario needs.
    pub const DEEPEST: usize = 12;

    /// An object of these members.
    pub fn object<const N: usize>(mut members: [(&str, Value); N]) -> Self {
        Self::of_members(&mut members)
    }

    /// The same from a list, whose values are taken out: one function for every length.
    #[inline(never)]
    fn of_members(members: &mut [(&str, Value)]) -> Self {
        let taken = members.iter_mut().map(|(key, value)| ((*key).to_owned(), take(value)));
        Self::Object(taken.collect())
    }

    /// A text.
    #[inline(never)]
    pub fn text(text: &str) -> Self {
        Self::Text(text.to_owned())
    }

    /// The member of a name; none also where this is no object.
    pub fn member(&self, key: &str) -> Option<&Value> {
        match self {
            Self::Object(members) => {
                members.iter().rfind(|(name, _)| name == key).map(|(_, value)| value)
            }
            _ => None,
        }
    }

    /// What a path such as `chain.pitch_mm` leads to.
    pub fn at(&self, path: &str) -> Option<&Value> {
        path.split('.').try_fold(self, |value, key| value.member(key))
    }

    /// Puts a value at a path of member names, making objects on the way.
    #[inline(never)]
    pub fn put(&mut self, path: &str, value: Value) {
        let (key, rest) =
            path.split_once('.').map_or((path, None), |(key, rest)| (key, Some(rest)));
        let place = self.place(key);
        match rest {
            Some(rest) => place.put(rest, value),
            None => *place = value,
        }
    }

    /// Puts a number under a name.
    #[inline(never)]
    pub(super) fn put_number(&mut self, key: &str, number: f64) {
        *self.place(key) = Self::from(number);
    }

    /// Puts a number under a name, if there is one.
    #[inline(never)]
    pub(super) fn put_if_given(&mut self, key: &str, number: Option<f64>) {
        if let Some(number) = number {
            self.put_number(key, number);
        }
    }

    /// Puts a text under a name.
    #[inline(never)]
    pub(super) fn put_text(&mut self, key: &str, text: &str) {
        *self.place(key) = Self::text(text);
    }

    /// Puts every member of another object in its place here.
    pub fn extend(&mut self, other: Value) {
        if let Self::Object(members) = other {
            for (key, value) in members {
                *self.place(&key) = value;
            }
        }
    }

    /// The place of a member, made if it is not there; what is no object becomes one.
    fn place(&mut self, key: &str) -> &mut Value {
        if !matches!(self, Self::Object(_)) {
            *self = Self::Object(Vec::new());
        }
        match self {
            Self::Object(members) => place_among(members, key),
            other => other,
        }
    }

    /// The kind of value, as a fault calls it.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Null => "nothing",
            Self::Bool(_) => "bool",
            Self::Number(_) => "number",
            Self::Text(_) => "text",
            Self::List(_) => "list",
            Self::Object(_) => "object",
        }
    }
}

/// The place of a member among others, made at their end if it is not there.
fn place_among<'a>(members: &'a mut Vec<(String, Value)>, key: &str) -> &'a mut Value {
    let index = members.iter().rposition(|(name, _)| name == key).unwrap_or_else(|| {
        members.push((key.to_owned(), Value::Null));
        members.len() - 1
    });
    &mut members[index].1
}

impl From<f64> for Value {
    /// Takes a number; adding zero turns negative zero into zero.
    fn from(number: f64) -> Self {
        Self::Number(number + 0.0)
    }
}

impl<'de> Deserialize<'de> for Value {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Level(Self::DEEPEST).deserialize(deserializer)
    }
}

/// Fills a value that may hold so many levels of lists and objects.
struct Level(usize);

impl<'de> DeserializeSeed<'de> for Level {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        if self.0 == 0 {
            return IgnoredAny::deserialize(deserializer).map(|_| Value::Null);
        }
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Level {
    type Value = Value;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a plain value")
    }

    fn visit_unit<E: de::Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_none<E: de::Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: de::Error>(self, bool: bool) -> Result<Value, E> {
        Ok(Value::Bool(bool))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Value, E> {
        Ok(Value::from(number as f64))
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Value, E> {
        Ok(Value::from(number as f64))
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<Value, E> {
        Ok(Value::from(number))
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Value, E> {
        Ok(Value::text(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(Level(self.0 - 1))? {
            list.push(item);
        }
        Ok(Value::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Value, A::Error> {
        let mut object = Vec::new();
        while let Some(key) = members.next_key::<String>()? {
            object.push((key, members.next_value_seed(Level(self.0 - 1))?));
        }
        Ok(Value::Object(object))
    }
}

impl Serialize for Value {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => serializer.serialize_unit(),
            Self::Bool(bool) => serializer.serialize_bool(*bool),
            Self::Number(number) => serializer.serialize_f64(*number),
            Self::Text(text) => serializer.serialize_str(text),
            Self::List(list) => serializer.collect_seq(list),
            Self::Object(members) => {
                serializer.collect_map(members.iter().map(|(key, value)| (key, value)))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_makes_the_objects_that_it_needs() {
        let mut value = Value::Null;
        value.put("chain.pitch_mm", Value::from(12.7));
        value.put("chain.pitch_mm", Value::from(9.525));
        assert_eq!(value.at("chain.pitch_mm"), Some(&Value::Number(9.525)));
        assert_eq!(value.at("chain.pitch_mm.more"), None);
    }

    #[test]
    fn negative_zero_is_zero() {
        let Value::Number(number) = Value::from(-0.0) else { panic!("no number") };
        assert_eq!(number.to_bits(), 0.0_f64.to_bits());
    }
}
