//! The page's words, read from the same files.

use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Every sentence and label, by id.
pub static WORDS: LazyLock<BTreeMap<String, String>> =
    LazyLock::new(|| FILES.iter().flat_map(|(_, text)| of_file(text)).collect());

/// The files of one language: the first screen's, and one for each later question.
const FILES: &[(&str, &str)] = &[
    ("first.json", include_str!("../../../../www/words/en/first.json")),
    ("working.json", include_str!("../../../../www/words/en/working.json")),
    ("fault.json", include_str!("../../../../www/words/en/fault.json")),
    ("alone.json", include_str!("../../../../www/words/en/alone.json")),
    ("keep.json", include_str!("../../../../www/words/en/keep.json")),
    ("sheet.json", include_str!("../../../../www/words/en/sheet.json")),
    ("notice.json", include_str!("../../../../www/words/en/notice.json")),
    ("compare.json", include_str!("../../../../www/words/en/compare.json")),
    ("lesson.json", include_str!("../../../../www/words/en/lesson.json")),
    ("making.json", include_str!("../../../../www/words/en/making.json")),
    ("fit.json", include_str!("../../../../www/words/en/fit.json")),
    ("surface.json", include_str!("../../../../www/words/en/surface.json")),
    ("reach.json", include_str!("../../../../www/words/en/reach.json")),
    ("line.json", include_str!("../../../../www/words/en/line.json")),
    ("wear.json", include_str!("../../../../www/words/en/wear.json")),
    ("width.json", include_str!("../../../../www/words/en/width.json")),
];

fn of_file(text: &str) -> BTreeMap<String, String> {
    serde_json::from_str(text).expect("the words are one flat object of texts")
}

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
    use super::{FILES, WORDS, filled, of_file};
    use std::collections::BTreeSet;

    #[test]
    fn every_file_of_the_words_is_here_and_no_two_hold_the_same_id() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../www/words/en");
        let names = std::fs::read_dir(folder).expect("the words").flatten();
        let names: BTreeSet<_> = names.map(|entry| entry.file_name()).collect();
        assert_eq!(names, FILES.iter().map(|(name, _)| (*name).into()).collect());
        let ids: usize = FILES.iter().map(|(_, text)| of_file(text).len()).sum();
        assert_eq!(ids, WORDS.len());
    }

    #[test]
    fn what_fills_a_place_is_not_filled_again() {
        assert_eq!(filled("{value}!", &[("value", "{field}".into())]), "{field}!");
        assert_eq!(filled("{a} and {b}", &[("a", "1".into())]), "1 and ?");
    }
}
