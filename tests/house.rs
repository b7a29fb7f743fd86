//! The house: which room of the kernel may use which, and the walk of one size from file to pixel.

use lightgap::paint::{SvgOptions, Theme};
use lightgap::picture::Picture;
use lightgap::scenario::{Scenario, Value};
use lightgap::scene::Lexicon;
use lightgap::stage::Stage;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The rooms of the kernel, each using only rooms before it.
const ROOMS: &[&str] = &[
    "error", "decimal", "plane", "solve", "chain", "contact", "bow", "quantity", "posing",
    "sprocket", "strand", "friction", "seating", "fit", "wear", "reach", "surface", "width",
    "motion", "scenario", "caliper", "lesson", "table", "drive", "run", "lot", "report", "compare",
    "answer", "scene", "stage", "paint", "picture",
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

/// The rows of both walks in the newcomers' page: what happens, where, and the words to look for.
fn walk() -> Vec<[String; 3]> {
    let page = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let table = |title| page.split(title).nth(1).unwrap().split("\n## ").next().unwrap();
    let tables = ["## The walk of one size", "## The walk of a question"].map(table).concat();
    let row = |line: &str| {
        let cells: Vec<_> = line.trim_matches('|').split(" | ").map(str::trim).collect();
        let bare = |cell: &str| cell.trim_matches('`').to_owned();
        (cells.len() == 3).then(|| [cells[0].to_owned(), bare(cells[1]), bare(cells[2])])
    };
    tables.lines().filter(|line| line.contains('`')).filter_map(row).collect()
}

#[test]
fn every_step_of_the_walk_is_where_the_page_says() {
    let steps = walk();
    assert!(steps.len() >= 18, "the walk is not read: {steps:?}");
    for [step, file, words] in steps {
        let text = fs::read_to_string(root().join(&file)).unwrap_or_else(|e| panic!("{file}: {e}"));
        assert!(text.contains(&words), "{step}: `{words}` is not in {file}");
    }
}

#[test]
fn a_changed_outer_spacing_reaches_the_report_and_the_picture() {
    let text = fs::read_to_string(root().join("scenarios/ferry-winch.json")).unwrap();
    let file: Value = serde_json::from_str(&text).unwrap();
    let scenario = Scenario::read(&file).unwrap();
    let wider = scenario
        .with(
            "chain.outer_spacing_mm",
            Value::Number(scenario.chain.chain().outer_spacing_mm + 0.1),
        )
        .unwrap();
    let shown = |scenario: &Scenario| {
        let mut stage = Stage::new(scenario.clone());
        stage.scrub(1.0);
        let mut picture = Picture::new(Lexicon::new([]));
        picture.lay(1200.0, 900.0, 15.0, false);
        let (title, unit) = ("", picture.unit_px());
        let options = SvgOptions {
            title,
            description: title,
            caption: &[],
            unit,
            width_px: None,
            hidden: &[],
        };
        let picture = picture.svg(&stage, &Theme::light(), &options);
        (stage.report(), picture)
    };
    let (before, after) = (shown(&scenario), shown(&wider));
    let gap_mm = |report: &lightgap::report::Report| report.geometry.side_gap_mm;
    assert!((gap_mm(&after.0) - gap_mm(&before.0) - 0.1).abs() < 1e-12);
    let offset_mm = |report: &lightgap::report::Report| report.play.unwrap().offset_limit_mm;
    assert!(offset_mm(&after.0) > offset_mm(&before.0) + 0.04);
    assert_ne!(before.1, after.1);
}
