//! What the first page names beforehand, so that a slow connection asks for everything at once: the
//! modules of the first screen in their one file, its program and its menu. Its words are of a language
//! that only a browser knows.

use super::gather::FIRST;
use super::version::with_version;

/// Where the names go: before the style sheet, which the browser meets first.
const BEFORE: &str = "<link rel=\"stylesheet\"";
/// What the modules fetch before anything shows.
const FETCHED: [&str; 2] = ["lightgap_stage_bg.wasm", "scenarios/index.json"];

/// The first page with its version and the names of what it will need.
pub fn named(page: &str) -> String {
    let fetched = |name: &&str| {
        format!("<link rel=\"preload\" href=\"{name}\" as=\"fetch\" crossorigin>\n  ")
    };
    let links: String = FETCHED.iter().map(fetched).collect();
    let module = format!("<link rel=\"modulepreload\" href=\"{FIRST}\">\n  ");
    with_version(page).replacen(BEFORE, &format!("{links}{module}{BEFORE}"), 1)
}

/// The same on bytes; what is no text stays as it is.
pub fn in_bytes(page: Vec<u8>) -> Vec<u8> {
    match String::from_utf8(page) {
        Ok(text) => named(&text).into_bytes(),
        Err(kept) => kept.into_bytes(),
    }
}

#[cfg(test)]
mod tests {
    use super::named;

    #[test]
    fn a_page_names_the_one_file_of_modules_and_what_they_fetch_before_its_style() {
        let page = named("<link rel=\"stylesheet\" href=\"style.css\">");
        let names: Vec<_> =
            page.lines().filter_map(|line| line.split_once("href=\"")?.1.split_once('"')).collect();
        let names: Vec<_> = names.into_iter().map(|(name, _)| name).collect();
        assert_eq!(
            names,
            ["lightgap_stage_bg.wasm", "scenarios/index.json", "first.js", "style.css"]
        );
    }
}
