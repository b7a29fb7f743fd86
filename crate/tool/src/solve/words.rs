//! The page's words, read from the same file.

use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Every sentence and label, by id.
pub static WORDS: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let text = include_str!("../../../../www/words/en.json");
    serde_json::from_str(text).expect("the words are one flat object of texts")
});

/// The sentence with its `{places}` filled, each once, whatever their texts hold.
pub fn filled(sentence: &str, places: &[(&str, String)]) -> String {
    let mut parts = sentence.split('{');
    let mut text = parts.next().unwrap_or_default().to_string();
    for part in parts {
        let (name, rest) = part.split_once('}').unwrap_or((part, ""));
        let value = places.iter().find(|(place, _)| *place == name);
        text.push_str(value.map_or("?", |(_, value)| value));
        text.push_str(rest);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::filled;

    #[test]
    fn what_fills_a_place_is_not_filled_again() {
        assert_eq!(filled("{value}!", &[("value", "{field}".into())]), "{field}!");
        assert_eq!(filled("{a} and {b}", &[("a", "1".into())]), "1 and ?");
    }
}
