//! What crosses between the kernel and JavaScript: plain objects both ways.

use js_sys::{Array, Object, Reflect};
use lightgap::error::{Error, Given, Rule, Term};
use lightgap::paint::Theme;
use lightgap::picture::At;
use lightgap::plane::Point;
use lightgap::scenario::Value;
use wasm_bindgen::{JsCast, JsValue};

/// A tree of plain values from whatever JavaScript holds. Every own member is seen, known or not;
/// what is deeper than a scenario can be is taken as nothing, as it is natively; what is no plain
/// value at all (a function, a symbol) is a fault.
pub fn taken(value: &JsValue) -> Result<Value, Vec<Error>> {
    let refused = |kind| vec![Error::text("", kind, Rule::WrongKind { expected: "object" })];
    value_in(value, Value::DEEPEST).map_err(refused)
}

/// The value, with so many levels of lists and objects left; what it is instead, where it is none.
fn value_in(value: &JsValue, levels: usize) -> Result<Value, &'static str> {
    if value.is_null() || value.is_undefined() {
        return Ok(Value::Null);
    }
    if let Some(number) = value.as_f64() {
        return Ok(Value::from(number));
    }
    if let Some(bool) = value.as_bool() {
        return Ok(Value::Bool(bool));
    }
    if let Some(text) = value.as_string() {
        return Ok(Value::Text(text));
    }
    let Some(below) = levels.checked_sub(1) else { return Ok(Value::Null) };
    if Array::is_array(value) {
        let items = Array::from(value).into_iter().map(|item| value_in(&item, below));
        return items.collect::<Result<_, _>>().map(Value::List);
    }
    let Some(object) = value.dyn_ref::<Object>().filter(|_| !value.is_function()) else {
        return Err("other");
    };
    let members = Object::entries(object).into_iter().map(|pair| {
        let pair = Array::from(&pair);
        let key = pair.get(0).as_string().unwrap_or_default();
        value_in(&pair.get(1), below).map(|value| (key, value))
    });
    members.collect::<Result<_, _>>().map(Value::Object)
}

/// The faults as a list of plain objects `{path, value, rule, numbers}`.
pub fn faults(faults: &[Error]) -> JsValue {
    faults.iter().map(fault).collect::<Array>().into()
}

fn fault(error: &Error) -> JsValue {
    let value = match &error.value {
        Given::Nothing => JsValue::NULL,
        Given::Number(number) => (*number).into(),
        Given::Text(text) => text.into(),
    };
    let numbers = error.rule.terms().into_iter().map(|(name, term)| {
        let term = match term {
            Term::Number(number) => number.into(),
            Term::Word(word) => word.into(),
            Term::Text(text) => text.into(),
        };
        (name, term)
    });
    let numbers = object(numbers);
    let rule = error.rule.id().into();
    let path = error.field.as_str().into();
    object([("path", path), ("value", value), ("rule", rule), ("numbers", numbers)])
}

/// A plain object of these members.
pub fn object<'a>(members: impl IntoIterator<Item = (&'a str, JsValue)>) -> JsValue {
    let object = Object::new();
    for (key, value) in members {
        // Fails only for an object that refuses members, and this one is new and plain.
        let _ = Reflect::set(&object, &key.into(), &value);
    }
    object.into()
}

/// A member of an object; `undefined` where there is none or where this is no object.
pub fn member(of: &JsValue, key: &str) -> JsValue {
    Reflect::get(of, &key.into()).unwrap_or(JsValue::UNDEFINED)
}

/// The texts of a list; what is no text is left out.
pub fn texts(list: &JsValue) -> Vec<String> {
    if !Array::is_array(list) {
        return Vec::new();
    }
    Array::from(list).iter().filter_map(|item| item.as_string()).collect()
}

/// Pairs of name and text from an object whose members are texts.
pub fn words(object: &JsValue) -> Vec<(String, String)> {
    let Some(object) = object.dyn_ref::<Object>() else { return Vec::new() };
    let pair = |pair: JsValue| {
        let pair = Array::from(&pair);
        Some((pair.get(0).as_string()?, pair.get(1).as_string()?))
    };
    Object::entries(object).iter().filter_map(pair).collect()
}

/// What a magnifier is held at: the id of a contact, or a spot of a section.
pub fn place(at: &JsValue) -> Option<At> {
    if let Some(id) = at.as_string() {
        return Some(At::Contact(id));
    }
    let (x_mm, y_mm) = (member(at, "x_mm").as_f64()?, member(at, "y_mm").as_f64()?);
    Some(At::Spot(member(at, "view").as_string()?, Point::new(x_mm, y_mm)))
}

/// A theme from an object of colours by the names of inks; an ink that it lacks stays as it is in
/// print.
pub fn theme(colours: &JsValue) -> Theme {
    let print = Theme::light();
    Theme::from_rule(|ink| {
        let colour = member(colours, ink.key()).as_string();
        colour.unwrap_or_else(|| print.colour(ink).to_owned())
    })
}
