//! The script that keeps the page for use without a network: a service worker that knows every file
//! of one version by its mark.

use super::packed::digest;
use std::collections::BTreeMap;

/// How the script is called in the site.
pub const NAME: &str = "keeper.js";
/// What it does, behind the version and the list.
const SCRIPT: &str = include_str!("keeper.js");
/// Letters of a digest that tell files and versions apart.
const LETTERS: usize = 16;

/// The files of one version, each with a mark of what it holds.
#[derive(Default)]
pub struct Kept(BTreeMap<String, String>);

impl Kept {
    /// Adds a file as it is handed out.
    pub fn add(&mut self, name: &str, bytes: &[u8]) {
        self.0.insert(name.to_owned(), mark(bytes));
    }

    /// The script: another version wherever a file is another, and only there.
    pub fn script(&self) -> Vec<u8> {
        let list = serde_json::Value::from_iter(self.0.clone()).to_string();
        let version = mark(format!("{list}{SCRIPT}").as_bytes());
        let bare = super::bare::bare(NAME, SCRIPT.into());
        let head = format!("const VERSION = \"{version}\";\nconst FILES = {list};\n");
        [head.into_bytes(), bare].concat()
    }
}

/// The first bytes of what SHA-256 makes of a file.
fn mark(bytes: &[u8]) -> String {
    let mut mark = digest(bytes);
    mark.truncate(LETTERS);
    mark
}

#[cfg(test)]
mod tests {
    use super::{Kept, mark};

    #[test]
    fn a_mark_is_the_beginning_of_the_published_digest() {
        // FIPS 180-2, appendix B.1: SHA-256 of "abc".
        assert_eq!(mark(b"abc"), "ba7816bf8f01cfea");
    }

    #[test]
    fn another_file_makes_another_version() {
        let of = |text: &[u8]| {
            let mut kept = Kept::default();
            kept.add("index.html", text);
            String::from_utf8(kept.script()).expect("a script")
        };
        let version = |script: &str| script.lines().next().map(str::to_owned);
        assert_eq!(version(&of(b"one")), version(&of(b"one")));
        assert_ne!(version(&of(b"one")), version(&of(b"two")));
        assert!(of(b"one").contains("const FILES = {\"index.html\":\""));
    }
}
