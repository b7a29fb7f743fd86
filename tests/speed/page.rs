//! The table as Markdown, and what is wrong with one that was written earlier.

use super::{RENEW, Row, locked, rows};
use std::fmt::Write;

/// What the rows were timed on.
#[derive(Debug, Clone)]
pub struct Machine {
    /// Processor, cores, load, compiler and day in one sentence.
    pub said: String,
    /// The commit of the sources.
    pub commit: String,
}

/// A row and what it took.
#[derive(Debug, Clone)]
pub struct Timed {
    /// The row.
    pub row: Row,
    /// The rival with its version.
    pub rival: String,
    /// A turn of the rival and of ours, ns; none where the rival is not there.
    pub ns: Option<[f64; 2]>,
    /// What else there is to say of the rival's answer.
    pub note: String,
}

const TITLE: &str = "\
# Speed beside general-purpose libraries

Written by `cargo speed`. Both sides do the same work on the same data in one run; their answers are
compared before they are timed, and the number to look at is the ratio of the two times, since times
themselves drift from machine to machine. Where the rival does less than we do, its row says what it
does. numpy and scipy take part where `python3`, or the python that `PYTHON` names, has them.
`cargo compare` times the rows whose rival is a library of Rust, more slowly and with their spread.
";
const FOOT: &str = "
The list of rows is `tests/bench/rows.json`. `cargo verify` times nothing: it fails when this table has
other rows, goals or versions than the list and the lock file have.
";
const RULE: &str = "|---|---|---|---|---|---|---|";
const HEAD: &str = "| work | beside | its time | ours | times as fast | goal | reached |";

/// The whole page.
pub fn page(machine: &Machine, timed: &[Timed]) -> String {
    let mut page = format!("{TITLE}\n{}\n{}.\n\n{HEAD}\n{RULE}\n", machine.said, machine.commit);
    for each in timed {
        let _ = writeln!(page, "{}", line(each));
    }
    page + FOOT
}

fn line(Timed { row, rival, ns, note }: &Timed) -> String {
    let Row { work, goal, short, .. } = row;
    let Some([theirs, ours]) = *ns else {
        return format!("| {work} | {rival} | not measured | | | {goal} | |");
    };
    let ratio = theirs / ours;
    let reached = match (ratio >= *goal, short.is_empty()) {
        (true, _) => "yes".to_owned(),
        (false, false) => format!("no: {short}"),
        (false, true) => "no".to_owned(),
    };
    let note = if note.is_empty() { String::new() } else { format!("; {note}") };
    let (theirs, ours) = (written(theirs), written(ours));
    let ratio = if ratio < 10.0 { format!("{ratio:.2}") } else { format!("{ratio:.0}") };
    format!("| {work} | {rival}{note} | {theirs} | {ours} | {ratio} | {goal} | {reached} |")
}

/// A time in the unit in which it has one to three digits before the point.
fn written(ns: f64) -> String {
    let (value, unit) = match ns {
        ..1e3 => (ns, "ns"),
        ..1e6 => (ns / 1e3, "µs"),
        _ => (ns / 1e6, "ms"),
    };
    if value < 10.0 { format!("{value:.2} {unit}") } else { format!("{value:.1} {unit}") }
}

/// What is wrong with a page beside the list of rows, a sentence each.
pub fn faults(page: &str) -> Vec<String> {
    let told = page.lines().skip_while(|line| *line != HEAD).skip(2);
    let told: Vec<Vec<&str>> = told
        .take_while(|line| line.starts_with('|'))
        .map(|line| line.trim_matches('|').split('|').map(str::trim).collect())
        .collect();
    let rows = rows();
    let works: Vec<&str> = told.iter().map(|cells| cells[0]).collect();
    let wanted: Vec<&str> = rows.iter().map(|row| row.work.as_str()).collect();
    if works != wanted {
        let lost = wanted.iter().filter(|work| !works.contains(work));
        let old = works.iter().filter(|work| !wanted.contains(work));
        let named: Vec<_> = lost.chain(old).collect();
        return vec![format!("other rows than tests/bench/rows.json: {named:?}; {RENEW}")];
    }
    rows.iter().zip(&told).filter_map(|(row, cells)| fault(row, cells)).collect()
}

fn fault(row: &Row, cells: &[&str]) -> Option<String> {
    let [work, beside, .., ratio, goal, reached] = cells else {
        return Some(format!("{}: not seven cells; {RENEW}", row.work));
    };
    let rival = row.rival_at(locked);
    if row.is_locked() && !beside.starts_with(&rival) {
        return Some(format!("{work}: beside {beside}, now {rival}; {RENEW}"));
    }
    if goal.parse() != Ok(row.goal) {
        return Some(format!("{work}: goal {goal}, now {}; {RENEW}", row.goal));
    }
    let good = ratio.parse::<f64>().is_ok_and(|ratio| ratio >= row.goal);
    let rounded = ratio.parse::<f64>().is_ok_and(|ratio| (ratio / row.goal - 1.0).abs() < 0.01);
    if !ratio.is_empty() && good != (*reached == "yes") && !rounded {
        return Some(format!("{work}: {ratio} of {goal} is told as {reached}; {RENEW}"));
    }
    None
}
