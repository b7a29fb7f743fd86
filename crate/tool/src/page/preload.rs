//! What the first page names beforehand, so that a slow connection asks for everything at once: the
//! modules that `main.js` imports, its program and its words.

use super::site::Site;
use super::version::with_version;
use std::collections::BTreeSet;

/// Where the names go: before the style sheet, which the browser meets first.
const BEFORE: &str = "<link rel=\"stylesheet\"";
/// The module that everything begins with.
const ENTRY: &str = "main.js";
/// What the modules fetch before anything shows.
const FETCHED: [&str; 3] =
    ["lightgap_stage_bg.wasm", "words/en/first.json", "scenarios/index.json"];

/// The first page with its version and the names of what it will need.
pub fn named(site: &Site, page: &str) -> String {
    let modules = modules(site);
    let module = |name: &String| format!("<link rel=\"modulepreload\" href=\"{name}\">\n  ");
    let fetched = |name: &&str| {
        format!("<link rel=\"preload\" href=\"{name}\" as=\"fetch\" crossorigin>\n  ")
    };
    let links: String = FETCHED.iter().map(fetched).chain(modules.iter().map(module)).collect();
    with_version(page).replacen(BEFORE, &format!("{links}{BEFORE}"), 1)
}

/// The same on bytes; what is no text stays as it is.
pub fn in_bytes(site: &Site, page: Vec<u8>) -> Vec<u8> {
    match String::from_utf8(page) {
        Ok(text) => named(site, &text).into_bytes(),
        Err(kept) => kept.into_bytes(),
    }
}

/// The modules that the entry imports, and those that they import, without the entry.
fn modules(site: &Site) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut open = vec![ENTRY.to_owned()];
    while let Some(name) = open.pop() {
        let text = site.read(&name).map(|bytes| String::from_utf8_lossy(&bytes).into_owned());
        for import in imports(text.as_deref().unwrap_or_default()) {
            if found.insert(import.to_owned()) {
                open.push(import.to_owned());
            }
        }
    }
    found
}

/// The modules of the same folder that a module imports before it runs.
fn imports(text: &str) -> impl Iterator<Item = &str> {
    let lines = text.lines().filter(|line| line.starts_with("import "));
    lines.filter_map(|line| line.split_once("from \"./")?.1.strip_suffix("\";"))
}

#[cfg(test)]
mod tests {
    use super::imports;

    #[test]
    fn what_a_module_imports_at_once_is_found_and_what_it_opens_later_is_not() {
        let text = "import { a } from \"./dom.js\";\nimport x, { y } from \"./stage.js\";\n\
                    const open = () => import(\"./line/line.js\");\n";
        assert_eq!(imports(text).collect::<Vec<_>>(), ["dom.js", "stage.js"]);
    }
}
