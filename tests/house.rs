//! The house: which room of the kernel may use which, and the walk of one size from file to pixel.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The rooms of the kernel, each using only rooms before it.
const ROOMS: &[&str] = &[
    "error", "decimal", "plane", "solve", "chain", "contact", "quantity", "posing", "sprocket",
    "strand", "friction", "fit", "wear", "reach", "surface", "width", "motion", "scenario",
    "lesson", "table", "drive", "report", "answer", "scene", "stage", "paint", "picture",
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

fn kernel() -> PathBuf {
    root().join("crate/kernel/src")
}

/// Every source file below a folder.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
    found
}

/// The room that a file of the kernel lies in.
fn room_of(path: &Path) -> String {
    let inside = path.strip_prefix(kernel()).unwrap();
    let first = inside.components().next().unwrap();
    Path::new(first.as_os_str()).with_extension("").to_string_lossy().into_owned()
}

/// The rooms that a text of a kernel file uses, by every path that starts at the crate.
fn used_rooms(text: &str) -> BTreeSet<String> {
    let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    let mut used = BTreeSet::new();
    for line in code {
        for (at, _) in line.match_indices("crate::") {
            let whole_word = !line[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
            let rest = &line[at + "crate::".len()..];
            let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
            if whole_word && end > 0 {
                used.insert(rest[..end].to_owned());
            }
        }
    }
    used
}

#[test]
fn every_room_uses_only_rooms_before_it() {
    let order = |room: &str| ROOMS.iter().position(|known| *known == room);
    let mut seen = 0;
    for path in files(&kernel()) {
        let room = room_of(&path);
        if room == "lib" {
            continue;
        }
        let own = order(&room).unwrap_or_else(|| panic!("{room} has no place in the order"));
        // A room's tests may look at the rooms above it: what is tested needs something to stand in.
        let tests = path.file_stem().is_some_and(|stem| stem == "tests");
        let text = fs::read_to_string(&path).unwrap();
        let code = text.split("#[cfg(test)]").next().unwrap();
        for used in used_rooms(code).into_iter().filter(|_| !tests) {
            let other = order(&used).unwrap_or_else(|| panic!("{used} in {}", path.display()));
            assert!(other <= own, "{room} uses {used}, which comes after it: {}", path.display());
            seen += 1;
        }
    }
    assert!(seen > 50, "the reader of arrows is blind: it saw {seen}");
}

#[test]
fn the_reader_of_arrows_sees_one() {
    let text = "// use crate::paint;\nuse crate::chain::Sizes;\nlet a = crate::solve::root(x);\n";
    let expected: BTreeSet<_> = ["chain", "solve"].map(str::to_owned).into();
    assert_eq!(used_rooms(text), expected);
}
