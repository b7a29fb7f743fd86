//! The rows of `docs/speed.md`: what is timed beside what, and the goal. The list (`bench/rows.json`) is
//! what the benchmarks run and what the table is held to, so that neither can forget the other.

mod page;

pub use page::{Machine, Timed, faults, page};

use crate::text_of;

/// The file that the table is written to.
pub const PAGE: &str = "docs/speed.md";
/// How to write it anew.
pub const RENEW: &str = "run `cargo speed` on a quiet machine and commit docs/speed.md";
/// Rivals that cargo does not bring: what they are tells their version.
const ELSEWHERE: [&str; 3] = ["numpy", "scipy", "rustc"];

/// A work that somebody else does as well.
#[derive(Debug, Clone, PartialEq, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Row {
    /// What is done.
    pub work: String,
    /// Who else does it, and how much of it.
    pub rival: String,
    /// The packages that the rival consists of.
    pub from: Vec<String>,
    /// Rival's time over ours that the design asks for.
    pub goal: f64,
    /// Why the goal is not reached, where that is so.
    #[serde(default)]
    pub short: String,
}

/// All rows, in the order of the table.
///
/// # Panics
/// When the list is no list of rows.
pub fn rows() -> Vec<Row> {
    serde_json::from_str(include_str!("../bench/rows.json")).expect("a list of rows")
}

/// The row of a work.
///
/// # Panics
/// When there is none.
pub fn row(work: &str) -> Row {
    let found = rows().into_iter().find(|row| row.work == work);
    found.unwrap_or_else(|| panic!("tests/bench/rows.json has no row {work}"))
}

impl Row {
    /// Whether cargo brings the rival, so that the lock file knows its version.
    pub fn is_locked(&self) -> bool {
        !self.from.iter().any(|name| ELSEWHERE.contains(&name.as_str()))
    }

    /// The rival with its versions.
    pub fn rival_at(&self, version: impl Fn(&str) -> Option<String>) -> String {
        self.from.iter().fold(self.rival.clone(), |rival, name| {
            let Some(version) = version(name) else { return rival };
            let called = called(name);
            rival.replacen(called, &format!("{called} {version}"), 1)
        })
    }
}

/// What a package is called in a sentence.
fn called(name: &str) -> &str {
    if name == "rustc" { "Rust" } else { name.trim_end_matches("2d-f64") }
}

/// The version of a package in the lock file.
pub fn locked(name: &str) -> Option<String> {
    let lock = text_of("Cargo.lock");
    let entry = lock.split_once(&format!("name = \"{name}\"\nversion = \""))?;
    Some(entry.1.split('"').next()?.to_owned())
}
