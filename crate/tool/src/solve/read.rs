//! A scenario from a file or from standard input.

use super::sentence;
use super::words::{Language, filled};
use lightgap::error::Error;
use lightgap::scenario::{Scenario, Value};
use std::io::{self, Read};

/// The name that stands for standard input.
const INPUT: &str = "-";

/// Reads a scenario, or gives one sentence for each of its faults.
pub fn scenario(name: &str, language: Language) -> Result<Scenario, Vec<String>> {
    let bytes = bytes(name).map_err(|error| {
        vec![filled(language.word("tool.unread"), &[("error", error.to_string())])]
    })?;
    let said = |fault: &Error| sentence::of_fault(fault, language);
    of_bytes(&bytes).map_err(|faults| faults.iter().map(said).collect())
}

/// Reads a scenario from the bytes of its file.
fn of_bytes(bytes: &[u8]) -> Result<Scenario, Vec<Error>> {
    let value: Value = serde_json::from_slice(&held(bytes))
        .map_err(|fault| vec![Error::syntax("", fault.line(), fault.column())])?;
    Scenario::read(&value)
}

/// The file with every number that no number can hold, as `1e999`, put between quotes: so that a fault can
/// tell it as it is written, beside its field.
fn held(bytes: &[u8]) -> Vec<u8> {
    let number = |byte: u8| byte.is_ascii_alphanumeric() || b"+-.".contains(&byte);
    let (mut held, mut rest) = (Vec::with_capacity(bytes.len()), bytes);
    while let Some(&first) = rest.first() {
        let length = match first {
            b'"' => text_length(rest),
            _ => rest.iter().take_while(|&&byte| number(byte)).count().max(1),
        };
        let (token, after) = rest.split_at(length);
        let quotes: &[u8] = if is_too_large(token) { b"\"" } else { b"" };
        for part in [quotes, token, quotes] {
            held.extend_from_slice(part);
        }
        rest = after;
    }
    held
}

/// How long the text is that begins here, its quotes included.
fn text_length(bytes: &[u8]) -> usize {
    let mut at = 1;
    while at < bytes.len() && bytes[at] != b'"' {
        at += if bytes[at] == b'\\' { 2 } else { 1 };
    }
    (at + 1).min(bytes.len())
}

/// Whether a token of a file is a number beyond all numbers.
fn is_too_large(token: &[u8]) -> bool {
    let digits = token.last().is_some_and(u8::is_ascii_digit);
    let number = core::str::from_utf8(token).ok().and_then(|text| text.parse().ok());
    digits && number.is_some_and(f64::is_infinite)
}

fn bytes(name: &str) -> io::Result<Vec<u8>> {
    if name != INPUT {
        return std::fs::read(name);
    }
    let mut bytes = Vec::new();
    io::stdin().read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// The name as faults tell it.
pub fn shown(name: &str, language: Language) -> &str {
    if name == INPUT { language.word("tool.input") } else { name }
}

#[cfg(test)]
mod tests {
    use super::{Language, held, of_bytes, scenario, sentence};

    #[test]
    fn what_is_no_text_is_refused_where_it_stops_being_one() {
        let fault = of_bytes(b"{\n\"title\": \"\xff\"}").expect_err("no UTF-8").remove(0);
        assert_eq!(fault.rule.id(), "syntax");
        assert!(of_bytes(b"").is_err() && of_bytes(&[b'['; 100_000]).is_err());
    }

    #[test]
    fn a_number_beyond_all_numbers_is_told_as_it_is_written() {
        let file = br#"{"format": 1, "title": "1e999 \" 2e999", "chain": {"pitch_mm": -1e999}}"#;
        let faults = of_bytes(file).expect_err("too large");
        let told = |language| sentence::of_fault(&faults[0], language);
        assert_eq!(
            (faults[0].field.as_str(), faults[0].rule.id()),
            ("chain.pitch_mm", "wrong_kind")
        );
        let (en, de) = (told(Language::En), told(Language::De));
        for said in [&en, &de] {
            assert!(said.starts_with("chain.pitch_mm") && said.ends_with(" -1e999."), "{said}");
        }
        assert!(held(file).windows(8).any(|part| part == br#""1e999 \"#), "a text stays a text");
    }

    #[test]
    fn a_file_that_is_not_there_is_said_so() {
        let said = scenario("no/such/scenario.json", Language::En).expect_err("none");
        assert_eq!(said.len(), 1);
        assert!(said[0].starts_with("it cannot be read: "), "{said:?}");
    }
}
