//! `cargo speed`: times every row of `rows.json` and writes `docs/speed.md`.
//!
//! Samples of both sides take turns, so that what else the machine does falls on both; what is told is
//! the median of each. The rows beside numpy and scipy are what their scripts print, beside the least
//! time of ours, since that is what the scripts tell.

use lightgap_bench::{Work, closing, crowd, pitches, sets, solves};
use lightgap_tests::at;
use lightgap_tests::speed::{Machine, PAGE, RENEW, Row, Timed, locked, page, rows};
use std::collections::BTreeMap;
use std::process::Command;
use std::time::Instant;

const SAMPLES: usize = 11;
/// A sample of turns is at least so long, s.
const SAMPLE_S: f64 = 0.02;

fn main() -> std::io::Result<()> {
    let load = word_of("/proc/loadavg", 0);
    let machine = machine(&load);
    let mut found: BTreeMap<String, Timed> = BTreeMap::new();
    let works = solves().into_iter().chain(pitches()).chain(sets());
    for timed in works.map(beside).chain(of_python()) {
        let [theirs, ours] = timed.ns.unwrap_or([f64::NAN; 2]);
        println!("{}: {} {theirs:.0} ns, ours {ours:.0} ns", timed.row.work, timed.rival);
        found.insert(timed.row.work.clone(), timed);
    }
    let all: Vec<Timed> = rows().iter().filter_map(|row| found.remove(&row.work)).collect();
    if all.len() != rows().len() || !found.is_empty() {
        eprintln!("not every row was timed once: add its Work, or take it out of rows.json");
        std::process::exit(1);
    }
    std::fs::write(at(PAGE), page(&machine, &all))?;
    println!("{PAGE}: written; to write it again, {RENEW}");
    Ok(())
}

/// Both sides of a row in turn.
fn beside(mut work: Work) -> Timed {
    work.answers();
    let turns = [0, 1].map(|side| {
        let one_s = least_s(1, || work.turns(side, 1));
        (SAMPLE_S / one_s).clamp(1.0, 1e7) as u32
    });
    let mut samples = [Vec::new(), Vec::new()];
    for _ in 0..SAMPLES {
        for side in [0, 1] {
            let start = Instant::now();
            work.turns(side, turns[side]);
            let took_ns = start.elapsed().as_secs_f64() * 1e9;
            samples[side].push(took_ns / f64::from(turns[side]));
        }
    }
    let ns = samples.map(|mut each| {
        each.sort_by(f64::total_cmp);
        each[SAMPLES / 2]
    });
    let rival = work.row.rival_at(|name| if name == "rustc" { rustc() } else { locked(name) });
    Timed { rival, ns: Some(ns), note: work.note, row: work.row }
}

fn least_s(turns: u32, mut work: impl FnMut() -> f64) -> f64 {
    let timed = |_| {
        let start = Instant::now();
        std::hint::black_box(work());
        start.elapsed().as_secs_f64()
    };
    (0..turns).map(timed).fold(f64::MAX, f64::min)
}

/// A row whose rival is a script in python: its name there, and our way to do it.
type Ours = (&'static str, &'static str, fn(u32) -> f64);

/// The rows of a script: the work, what the script calls it, ours.
const CROWD: [Ours; 4] = [
    ("chance, a million chains of 12 normal sizes, numpy", "normal", crowd::normal),
    ("chance, a million chains of 12 truncated normal sizes, numpy", "truncated", crowd::truncated),
    ("matching, a million pairs in 4 classes, numpy", "classes", crowd::classes),
    ("matching, the order of 4 times a million parts, numpy", "ranks", crowd::ranks),
];
const CLOSING: Ours =
    ("closing, a disk of 200 over 4,001 points, scipy", "closing", closing::closing);

fn of_python() -> Vec<Timed> {
    let said = [printed_by("crowd.py"), printed_by("closing.py")];
    let mut timed: Vec<_> = CROWD.iter().map(|each| in_python(each, "numpy", &said[0])).collect();
    timed.push(in_python(&CLOSING, "scipy", &said[1]));
    timed
}

/// A row beside a script's line `NAME ANSWER MILLISECONDS`; its first line names the library's version.
fn in_python((work, name, ours): &Ours, library: &str, said: &str) -> Timed {
    let row: Row = lightgap_tests::speed::row(work);
    let mut lines = said.lines().map(|line| line.split_whitespace().collect::<Vec<_>>());
    let version = lines.next().and_then(|head| Some((*head.get(1)?).trim_matches(',').to_owned()));
    let line = lines.find(|line| line.first() == Some(name));
    let theirs_ms = line.and_then(|line| line.last()?.parse::<f64>().ok());
    let rival = row.rival_at(|of| if of == library { version.clone() } else { None });
    const TURNS: u32 = 9;
    let ns = theirs_ms.map(|ms| [1e6 * ms, 1e9 * least_s(TURNS, || ours(1))]);
    Timed { rival, ns, note: String::new(), row }
}

/// What a script of this folder prints by `PYTHON`; nothing, said aloud, where that has no such library.
fn printed_by(script: &str) -> String {
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".into());
    let said = output(&python, &[at("tests/bench").join(script).to_string_lossy().as_ref()]);
    if said.is_empty() {
        println!("{script}: {python} has not what it needs; PYTHON names another");
    }
    said
}

fn machine(load: &str) -> Machine {
    let cpu = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = cpu.lines().find_map(|line| line.strip_prefix("model name")?.split_once(": "));
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let model = model.map_or("an unknown processor", |(_, model)| model);
    let day = output("date", &["-u", "+%Y-%m-%d"]);
    let (os, rust) = (std::env::consts::OS, rustc().unwrap_or_default());
    let said = format!(
        "Machine: {model}, {cores} cores, {os}, load {load} at the start; rustc {rust}, one thread; {day}."
    );
    let clean = output("git", &["status", "--porcelain", "--untracked-files=no"]).is_empty();
    let commit = output("git", &["rev-parse", "--short=10", "HEAD"]);
    let later = if clean { "" } else { " and changes that were not committed" };
    Machine { said, commit: format!("Measured at commit {commit}{later}") }
}

fn rustc() -> Option<String> {
    output("rustc", &["-V"]).split(' ').nth(1).map(String::from)
}

/// A word of a file; nothing where there is no such file.
fn word_of(file: &str, index: usize) -> String {
    let text = std::fs::read_to_string(file).unwrap_or_default();
    text.split_whitespace().nth(index).unwrap_or("unknown").to_owned()
}

/// What a program prints when it ends well.
fn output(program: &str, words: &[&str]) -> String {
    let done = Command::new(program).args(words).current_dir(at(".")).output();
    let good = done.ok().filter(|done| done.status.success());
    good.map_or_else(String::new, |done| String::from_utf8_lossy(&done.stdout).trim().to_owned())
}
