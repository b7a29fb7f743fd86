//! The page's words, read from the same files.

use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A language that the page has words in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Language {
    /// English
    En,
    /// German
    De,
}

type Texts = BTreeMap<String, String>;
static ENGLISH: LazyLock<Texts> = LazyLock::new(|| of_files(EN));
static GERMAN: LazyLock<Texts> = LazyLock::new(|| of_files(DE));

impl Language {
    /// Every sentence and label, by id.
    pub fn words(self) -> &'static Texts {
        match self {
            Self::En => &ENGLISH,
            Self::De => &GERMAN,
        }
    }

    /// The text of an id; the id itself where there is none.
    pub fn word(self, id: &str) -> &str {
        self.words().get(id).map_or(id, String::as_str)
    }

    /// A number with all its figures, as the language writes it.
    pub fn number(self, number: f64) -> String {
        number.to_string().replace('.', self.word("language.decimal"))
    }
}

macro_rules! files {
    ($language:literal: $($name:literal)*) => {
        &[$(($name, include_str!(concat!("../../../../www/words/", $language, "/", $name, ".json")))),*]
    };
    ($language:literal) => {
        files!($language: "first" "rest" "working" "tool" "fault" "alone" "keep" "sheet" "notice" "compare"
            "lesson" "making" "fit" "surface" "reach" "line" "wear" "width" "glossary" "notes")
    };
}

/// The files of each language: the first screen's, and one for each later part of the page.
type Files = [(&'static str, &'static str)];
const EN: &Files = files!("en");
const DE: &Files = files!("de");

fn of_files(files: &Files) -> Texts {
    files.iter().flat_map(|(_, text)| of_file(text)).collect()
}

fn of_file(text: &str) -> Texts {
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
    use super::{DE, EN, filled, of_file, of_files};
    use std::collections::BTreeSet;
    use std::path::PathBuf;

    fn folder(name: &str) -> PathBuf {
        crate::place::root().join("www/words").join(name)
    }

    fn names(folder: PathBuf) -> BTreeSet<String> {
        let entries = std::fs::read_dir(folder).expect("a folder").flatten();
        entries.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect()
    }

    /// The `{places}` of a sentence; the same one may stand twice.
    fn places(text: &str) -> BTreeSet<&str> {
        text.split('{').skip(1).filter_map(|part| Some(part.split_once('}')?.0)).collect()
    }

    #[test]
    fn every_file_of_the_words_is_here_and_no_two_hold_the_same_id() {
        assert_eq!(names(folder("")), ["de", "en"].map(String::from).into());
        for (language, files) in [("en", EN), ("de", DE)] {
            let known = files.iter().map(|(name, _)| format!("{name}.json")).collect();
            assert_eq!(names(folder(language)), known);
            let ids: usize = files.iter().map(|(_, text)| of_file(text).len()).sum();
            assert_eq!(ids, of_files(files).len());
        }
    }

    #[test]
    fn every_language_says_everything_with_the_same_places() {
        for ((name, english), (_, other)) in EN.iter().zip(DE) {
            let (english, other) = (of_file(english), of_file(other));
            assert!(english.keys().eq(other.keys()), "{name}: {:?}", differing(&english, &other));
            for (id, text) in &english {
                assert_eq!(places(text), places(&other[id]), "{id}: {text} {}", other[id]);
                assert_eq!(text.is_empty(), other[id].trim().is_empty(), "{id} is empty");
            }
        }
    }

    fn differing<'a>(a: &'a super::Texts, b: &'a super::Texts) -> Vec<&'a String> {
        let only = |one: &'a super::Texts, other: &'a super::Texts| {
            one.keys().filter(|id| !other.contains_key(*id)).collect::<Vec<_>>()
        };
        [only(a, b), only(b, a)].concat()
    }

    #[test]
    fn what_fills_a_place_is_not_filled_again() {
        assert_eq!(filled("{value}!", &[("value", "{field}".into())]), "{field}!");
        assert_eq!(filled("{a} and {b}", &[("a", "1".into())]), "1 and ?");
    }
}
