//! `cargo solve` as a person runs it: what it prints, what it says, how it ends.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

fn project(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

/// Every scenario of the menu.
fn scenarios() -> Vec<PathBuf> {
    let index = std::fs::read_to_string(project("scenarios/index.json")).expect("the menu");
    let index: serde_json::Value = serde_json::from_str(&index).expect("a list");
    let files = index.as_array().expect("a list").iter();
    files.map(|each| project("scenarios").join(each["file"].as_str().expect("a name"))).collect()
}

fn solve(words: &[&str], files: &[PathBuf], input: &str) -> Output {
    let mut solve = Command::new(env!("CARGO_BIN_EXE_lightgap-tool"))
        .arg("solve")
        .args(words)
        .args(files)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the tool starts");
    solve.stdin.take().expect("a pipe").write_all(input.as_bytes()).expect("it reads its input");
    solve.wait_with_output().expect("it ends")
}

fn lines(bytes: &[u8]) -> Vec<String> {
    String::from_utf8_lossy(bytes).lines().map(String::from).collect()
}

#[test]
fn every_scenario_of_the_menu_has_one_report_on_one_line() {
    let files = scenarios();
    let done = solve(&[], &files, "");
    assert_eq!(done.status.code(), Some(0), "{:?}", lines(&done.stderr));
    let reports = lines(&done.stdout);
    assert_eq!(reports.len(), files.len());
    for report in reports {
        let report: serde_json::Value = serde_json::from_str(&report).expect("an object");
        assert!(report["geometry"]["side_gap_mm"].is_number(), "{report}");
        assert_ne!(report.get("play").is_some(), report.get("interference").is_some(), "{report}");
    }
    assert!(done.stderr.is_empty());
}

#[test]
fn the_good_are_printed_beside_the_bad_and_every_fault_is_a_sentence() {
    let bad = r#"{"format": 1, "title": "", "chain": {"pitch_mm": -1, "bogus": 1}}"#;
    let done = solve(&["-"], &scenarios()[..1], bad);
    assert_eq!(done.status.code(), Some(2));
    assert_eq!(lines(&done.stdout).len(), 1);
    let faults = lines(&done.stderr);
    assert!(faults.len() > 3, "{faults:?}");
    for fault in &faults {
        assert!(fault.starts_with("standard input: ") && fault.ends_with('.'), "{fault}");
    }
    for part in ["chain.pitch_mm: -1 mm", "chain.bogus"] {
        assert!(faults.iter().any(|fault| fault.contains(part)), "{part} in {faults:?}");
    }
}

#[test]
fn standard_input_gives_the_same_report_as_the_file() {
    let files = &scenarios()[..1];
    let text = std::fs::read_to_string(&files[0]).expect("a scenario");
    let (by_name, by_input) = (solve(&[], files, ""), solve(&["-"], &[], &text));
    assert_eq!(by_name.stdout, by_input.stdout);
    assert_eq!(by_input.status.code(), Some(0));
}

#[test]
fn rows_and_tables_hold_the_numbers_of_the_reports() {
    let files = scenarios();
    let report = &lines(&solve(&[], &files[..1], "").stdout)[0];
    let report: serde_json::Value = serde_json::from_str(report).expect("an object");
    let limit = report["play"]["yaw_limit_rad"].to_string();
    let rows = lines(&solve(&["--format", "csv"], &files, "").stdout);
    assert_eq!(rows.len(), files.len() + 1);
    let column = rows[0].split(',').position(|name| name == "play.yaw_limit_rad").expect("there");
    assert_eq!(rows[1].split(',').nth(column), Some(limit.as_str()));
    let table = lines(&solve(&["--format", "table"], &files[..1], "").stdout);
    let line = table.iter().find(|line| line.starts_with("play.yaw_limit_rad ")).expect("there");
    assert!(line.ends_with(&format!(" {limit}")), "{line}");
}

#[test]
fn a_file_that_is_not_there_is_refused_in_one_sentence() {
    let done = solve(&["no/such/file.json"], &[], "");
    assert_eq!(done.status.code(), Some(2));
    assert!(done.stdout.is_empty());
    assert_eq!(lines(&done.stderr).len(), 1);
}

#[test]
fn a_drawing_is_written_beside_the_report_for_one_scenario_alone() {
    let file = std::env::temp_dir().join(format!("lightgap-{}.svg", std::process::id()));
    let name = file.to_string_lossy().into_owned();
    let files = scenarios();
    let done = solve(&["--svg", &name], &files[..1], "");
    assert_eq!((done.status.code(), lines(&done.stdout).len()), (Some(0), 1));
    let drawing = std::fs::read_to_string(&file).expect("it was written");
    assert!(drawing.starts_with("<svg "));
    std::fs::remove_file(&file).expect("it was there");
    let done = solve(&["--svg", &name], &files, "");
    assert_eq!(done.status.code(), Some(1));
    assert!(lines(&done.stderr)[0].contains("--svg") && !file.exists());
}
