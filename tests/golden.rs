//! Reports against those that are kept in `golden/`: no number changes unnoticed. What has changed on
//! purpose is renewed by `cargo renew`, and the commit shows by how much.

use lightgap_tests::at;
use lightgap_tests::kept::{Kept, of_lessons, of_scenarios};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

/// Every lesson, worked out once.
static LESSONS: LazyLock<Vec<Kept>> = LazyLock::new(of_lessons);

/// Fails with every change of every file.
fn hold(all: &[Kept]) {
    let mut said = Vec::new();
    for kept in all {
        let changes = kept.changes();
        if !changes.is_empty() {
            said.push(format!("{}:\n  {}", kept.name, changes.join("\n  ")));
        }
        assert!(kept.reports.values().all(|report| report["geometry"].is_object()));
    }
    let advice = "a change on purpose is renewed by `cargo renew`";
    assert!(said.is_empty(), "reports have changed; {advice}:\n{}", said.join("\n"));
}

#[test]
fn every_scenario_has_the_report_that_is_kept() {
    hold(&of_scenarios());
}

#[test]
fn every_lesson_has_the_reports_that_are_kept() {
    hold(&LESSONS);
}

/// Every file below a folder.
fn files(folder: &Path) -> BTreeSet<PathBuf> {
    let mut files = BTreeSet::new();
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() { files.extend(self::files(&path)) } else { files.extend([path]) }
    }
    files
}

#[test]
fn nothing_is_kept_of_what_is_gone_and_one_number_changed_is_named() {
    let mut all = LESSONS.clone();
    let named: BTreeSet<_> = all.iter().map(Kept::path).collect();
    assert_eq!(files(&at("tests/golden/lessons")), named);
    let scenarios = lightgap_tests::listed().into_iter().map(|listed| listed.file);
    let there = files(&at("tests/golden")).into_iter().filter(|path| !named.contains(path));
    let bare = |path: PathBuf| path.file_name().expect("a name").to_string_lossy().into_owned();
    assert_eq!(there.map(bare).collect::<BTreeSet<_>>(), scenarios.collect());
    let gap = all[0].reports["step 1"].pointer_mut("/geometry/side_gap_mm").expect("a gap");
    *gap = (gap.as_f64().expect("a number") * 1.01).into();
    let said = all[0].changes();
    assert!(
        said.len() == 1 && said[0].starts_with("step 1.geometry.side_gap_mm: was "),
        "{said:?}"
    );
    assert!(said[0].ends_with("(+1.000 %)"), "{said:?}");
}
