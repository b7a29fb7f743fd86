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
    let value: Value = serde_json::from_slice(bytes)
        .map_err(|fault| vec![Error::syntax("", fault.line(), fault.column())])?;
    Scenario::read(&value)
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
    use super::{Language, of_bytes, scenario};

    #[test]
    fn what_is_no_text_is_refused_where_it_stops_being_one() {
        let fault = of_bytes(b"{\n\"title\": \"\xff\"}").expect_err("no UTF-8").remove(0);
        assert_eq!(fault.rule.id(), "syntax");
        assert!(of_bytes(b"").is_err() && of_bytes(&[b'['; 100_000]).is_err());
    }

    #[test]
    fn a_file_that_is_not_there_is_said_so() {
        let said = scenario("no/such/scenario.json", Language::En).expect_err("none");
        assert_eq!(said.len(), 1);
        assert!(said[0].starts_with("it cannot be read: "), "{said:?}");
    }
}
