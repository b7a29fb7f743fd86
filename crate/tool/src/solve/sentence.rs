//! A fault as a sentence: the page's own words, with the field's path where the page has its name.

use super::words::{Language, filled};
use lightgap::error::{Error, Given, Term};

/// Texts from a file are shown up to this many characters.
const SHOWN_CHARACTERS: usize = 60;

/// The sentence for a fault.
pub fn of_fault(fault: &Error, language: Language) -> String {
    let words = language.words();
    let whole = fault.field.is_empty();
    let field = if whole { language.word("tool.file") } else { &fault.field };
    let mut places = vec![("field", field.to_string()), ("value", given(fault, language))];
    for (name, term) in fault.rule.terms() {
        places.push((name, written(name, &term, field, language)));
    }
    let id = format!("fault.{}", fault.rule.id());
    let sentence = words.get(&id).or_else(|| words.get("fault.other"));
    let said = filled(sentence.map_or("{field}: {value}", String::as_str), &places);
    if whole { capital(&said) } else { said }
}

/// What the field held.
fn given(fault: &Error, language: Language) -> String {
    match &fault.value {
        Given::Nothing => word("value", "nothing", language),
        Given::Number(number) => number_of(&fault.field, *number, language),
        Given::Text(text) => word("value", &plain(text), language),
    }
}

/// What fills a place of the rule.
fn written(place: &str, term: &Term, field: &str, language: Language) -> String {
    match term {
        Term::Number(number) => number_of(field, *number, language),
        Term::Word(id) => word(place, id, language),
        Term::Text(text) => plain(text),
    }
}

/// A number in the unit that the field's name ends in.
fn number_of(field: &str, number: f64, language: Language) -> String {
    let number = language.number(number);
    if field.ends_with("_mm") { format!("{number} mm") } else { number }
}

/// The word of an id in its place, or the id itself where there is none.
fn word(place: &str, id: &str, language: Language) -> String {
    let found = language.words().get(&format!("{place}.{id}"));
    found.map_or(language.word(id), String::as_str).to_string()
}

/// A text of a file on one line, without control characters and not too long.
fn plain(text: &str) -> String {
    let mut shown: String = text.escape_debug().take(SHOWN_CHARACTERS).collect();
    if text.escape_debug().nth(SHOWN_CHARACTERS).is_some() {
        shown.push('…');
    }
    shown
}

/// The sentence with its first letter large.
fn capital(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
}

#[cfg(test)]
mod tests {
    use super::Language::{De, En};
    use lightgap::error::{Error, Rule};

    fn of_fault(fault: &Error) -> String {
        super::of_fault(fault, En)
    }

    #[test]
    fn a_fault_names_its_field_its_value_and_its_rule() {
        let rule = Rule::BelowSize { limit: 3.63, of: "bore" };
        let said = of_fault(&Error::number("chain.pin_diameter_mm", 4.0, rule));
        for part in ["chain.pin_diameter_mm", "4 mm", "the bore", "3.63 mm"] {
            assert!(said.contains(part), "{part} in {said}");
        }
        let rule = Rule::BelowSize { limit: 3.63, of: "bore" };
        let said = super::of_fault(&Error::number("chain.pin_diameter_mm", 4.0, rule), De);
        for part in ["chain.pin_diameter_mm", "4 mm", "Bohrung", "3,63 mm"] {
            assert!(said.contains(part), "{part} in {said}");
        }
    }

    /// What the number of a field can break.
    const OF_A_NUMBER: [Rule; 11] = [
        Rule::Finite,
        Rule::Positive,
        Rule::NotNegative,
        Rule::AtMost { limit: 1.0 },
        Rule::AtLeast { limit: 1.0 },
        Rule::BelowSize { limit: 1.0, of: "bore" },
        Rule::Whole,
        Rule::Missing,
        Rule::NotEmpty,
        Rule::AtMostItems { limit: 1.0 },
        Rule::AtMostCharacters { limit: 1.0 },
    ];

    /// A field's name may stand for one thing or for many: no sentence may lean on which.
    #[test]
    fn a_sentence_agrees_with_a_name_of_many_things() {
        for (language, verbs) in [(En, [" is", " has"]), (De, [" ist", " hat"])] {
            for rule in OF_A_NUMBER {
                let said = super::of_fault(&Error::number("Teeth", 4.0, rule), language);
                let after = said.strip_prefix("Teeth").expect("the name leads");
                assert!(!verbs.iter().any(|verb| after.starts_with(verb)), "{said}");
                assert!(after.starts_with(':'), "{said}");
            }
        }
        let said = of_fault(&Error::number("Teeth, front wheels", 0.0, Rule::Missing));
        assert_eq!(said, "Teeth, front wheels: nothing is given here.");
    }

    #[test]
    fn every_rule_has_a_whole_sentence() {
        let others = [
            Rule::AtMostSize { limit: 1.0, of: "bore" },
            Rule::AboveSize { limit: 1.0, of: "bore" },
            Rule::AtLeastSize { limit: 1.0, of: "bore" },
            Rule::UnknownKey,
            Rule::WrongKind { expected: "number" },
            Rule::OneOf { choices: &["a", "b"] },
            Rule::ExactlyOne { choices: &["a", "b"] },
            Rule::AtLeastOne { choices: &["a", "b"] },
            Rule::Repeated,
            Rule::KnownDimension,
            Rule::KnownQuantity,
            Rule::KnownContact,
            Rule::Syntax { line: 2, column: 3 },
        ];
        for rule in OF_A_NUMBER.into_iter().chain(others) {
            let id = rule.id();
            assert!(En.words().contains_key(&format!("fault.{id}")), "no sentence for {id}");
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
