//! A fault as a sentence: the page's own words, with the field's path where the page has its name.

use super::words::{WORDS, filled};
use lightgap::error::{Error, Given, Term};

/// Texts from a file are shown up to this many characters.
const SHOWN_CHARACTERS: usize = 60;

/// The sentence for a fault.
pub fn of_fault(fault: &Error) -> String {
    let field = if fault.field.is_empty() { "the file" } else { &fault.field };
    let mut places = vec![("field", field.to_string()), ("value", given(fault))];
    for (name, term) in fault.rule.terms() {
        places.push((name, written(name, &term, field)));
    }
    let id = format!("fault.{}", fault.rule.id());
    let sentence = WORDS.get(&id).or_else(|| WORDS.get("fault.other"));
    capital(&filled(sentence.map_or("{field}: {value}", String::as_str), &places), field)
}

/// What the field held.
fn given(fault: &Error) -> String {
    match &fault.value {
        Given::Nothing => word("value", "nothing"),
        Given::Number(number) => number_of(&fault.field, *number),
        Given::Text(text) => word("value", &plain(text)),
    }
}

/// What fills a place of the rule.
fn written(place: &str, term: &Term, field: &str) -> String {
    match term {
        Term::Number(number) => number_of(field, *number),
        Term::Word(id) => word(place, id),
        Term::Text(text) => plain(text),
    }
}

/// A number in the unit that the field's name ends in.
fn number_of(field: &str, number: f64) -> String {
    if field.ends_with("_mm") { format!("{number} mm") } else { number.to_string() }
}

/// The word of an id in its place, or the id itself where there is none.
fn word(place: &str, id: &str) -> String {
    let found = WORDS.get(&format!("{place}.{id}")).or_else(|| WORDS.get(id));
    found.map_or_else(|| id.to_string(), String::clone)
}

/// A text of a file on one line, without control characters and not too long.
fn plain(text: &str) -> String {
    let mut shown: String = text.escape_debug().take(SHOWN_CHARACTERS).collect();
    if text.escape_debug().nth(SHOWN_CHARACTERS).is_some() {
        shown.push('…');
    }
    shown
}

/// A sentence begins large, unless it begins with the path of a field.
fn capital(sentence: &str, field: &str) -> String {
    let mut letters = sentence.chars();
    match letters.next() {
        Some(first) if field == "the file" => first.to_uppercase().chain(letters).collect(),
        _ => sentence.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::of_fault;
    use lightgap::error::{Error, Rule};

    #[test]
    fn a_fault_names_its_field_its_value_and_its_rule() {
        let rule = Rule::BelowSize { limit: 3.63, of: "bore" };
        let said = of_fault(&Error::number("chain.pin_diameter_mm", 4.0, rule));
        for part in ["chain.pin_diameter_mm", "4 mm", "the bore", "3.63 mm"] {
            assert!(said.contains(part), "{part} in {said}");
        }
    }

    #[test]
    fn every_rule_has_a_whole_sentence() {
        let rules = [
            Rule::Finite,
            Rule::Positive,
            Rule::NotNegative,
            Rule::AtMost { limit: 1.0 },
            Rule::AtLeast { limit: 1.0 },
            Rule::BelowSize { limit: 1.0, of: "bore" },
            Rule::AtMostSize { limit: 1.0, of: "bore" },
            Rule::AboveSize { limit: 1.0, of: "bore" },
            Rule::AtLeastSize { limit: 1.0, of: "bore" },
            Rule::Whole,
            Rule::Missing,
            Rule::UnknownKey,
            Rule::WrongKind { expected: "number" },
            Rule::OneOf { choices: &["a", "b"] },
            Rule::ExactlyOne { choices: &["a", "b"] },
            Rule::AtLeastOne { choices: &["a", "b"] },
            Rule::NotEmpty,
            Rule::AtMostCharacters { limit: 1.0 },
            Rule::AtMostItems { limit: 1.0 },
            Rule::Repeated,
            Rule::KnownDimension,
            Rule::KnownQuantity,
            Rule::KnownContact,
            Rule::Syntax { line: 2, column: 3 },
        ];
        for rule in rules {
            let id = rule.id();
            assert!(super::WORDS.contains_key(&format!("fault.{id}")), "no sentence for {id}");
            let said = of_fault(&Error::text("load", "x", rule));
            assert!(said.ends_with('.') && !said.contains(['{', '?']), "{id}: {said}");
        }
    }

    #[test]
    fn a_text_of_the_file_cannot_pose_as_more_lines() {
        let said = of_fault(&Error::text("motion.kind", "a\nb\u{1b}[31m", Rule::Missing));
        assert!(!said.contains(['\n', '\u{1b}']), "{said:?}");
    }
}
