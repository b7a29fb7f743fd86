//! Which version of the page this is: its number, and the commit it was built from.

use crate::place;
use std::sync::LazyLock;

/// As many letters of a commit as tell it from others.
const LETTERS: &str = "--short=10";
/// What stands behind it in the first page.
const BEFORE: &str = "<meta name=\"viewport\"";

/// `0.1.0 1a2b3c4d5e`, with a `+` where files differ from the commit; the number alone where there is
/// no repository.
pub static VERSION: LazyLock<String> = LazyLock::new(|| {
    let number = env!("CARGO_PKG_VERSION");
    let Some(commit) = git(&["rev-parse", LETTERS, "HEAD"]) else { return number.to_owned() };
    let altered = git(&["status", "--porcelain"]).is_none_or(|files| !files.is_empty());
    format!("{number} {commit}{}", if altered { "+" } else { "" })
});

/// What git says in the project's folder; nothing where it has nothing to say.
fn git(words: &[&str]) -> Option<String> {
    let done = place::in_root("git").args(words).output().ok().filter(|done| done.status.success());
    done.map(|done| String::from_utf8_lossy(&done.stdout).trim().to_owned())
}

/// The first page with its version in its head.
pub fn with_version(page: &str) -> String {
    let meta = format!("<meta name=\"version\" content=\"{}\">\n  {BEFORE}", *VERSION);
    page.replacen(BEFORE, &meta, 1)
}

#[cfg(test)]
mod tests {
    use super::{VERSION, with_version};

    #[test]
    fn a_page_says_its_version() {
        let file = crate::place::root().join("www/index.html");
        let page = with_version(&std::fs::read_to_string(file).expect("the first page"));
        assert!(page.contains(&format!("<meta name=\"version\" content=\"{}\">", *VERSION)));
    }

    #[test]
    fn a_version_is_a_number_and_perhaps_a_commit() {
        let (number, commit) = VERSION.split_once(' ').unwrap_or((&VERSION, ""));
        assert_eq!(number, env!("CARGO_PKG_VERSION"));
        assert!(commit.trim_end_matches('+').chars().all(|c| c.is_ascii_hexdigit()), "{commit}");
    }
}
