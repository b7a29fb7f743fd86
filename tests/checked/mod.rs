//! Every check against the outside in one list: the source, what it says, what the kernel gives.
//!
//! The same list is asserted by the tests and written as a table (`docs/checks.md`).

mod closing;
mod joints;
pub mod laws;
mod sizes;
mod strands;
mod sums;
mod wear;
mod wheels;
mod width;

use crate::{Row, rows};
use std::fmt::Write;

/// One check.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// Where the expected value comes from.
    pub source: String,
    /// What is checked, and of which thing.
    pub what: String,
    /// What the source says.
    pub expected: f64,
    /// What the kernel gives; NaN where it has no answer.
    pub got: f64,
    /// How far the two may be apart, in the same unit.
    pub tolerance: f64,
    /// The unit.
    pub unit: String,
}

impl Check {
    /// Whether the kernel agrees with the source; no answer does not.
    pub fn holds(&self) -> bool {
        (self.got - self.expected).abs() <= self.tolerance
    }
}

/// A check whose parts are at hand.
pub fn check(source: &str, what: &str, of: (f64, f64), tolerance: f64, unit: &str) -> Check {
    let (expected, got) = of;
    let (source, what, unit) = (source.to_owned(), what.to_owned(), unit.to_owned());
    Check { source, what, expected, got, tolerance, unit }
}

/// Checks of one subject.
#[derive(Debug)]
pub struct Sheet {
    /// Of what.
    pub title: &'static str,
    /// The checks, in the order of their source.
    pub checks: Vec<Check>,
}

impl Sheet {
    /// The rows of a file of published figures beside what the kernel says of them.
    pub fn of_rows(title: &'static str, path: &str, got: impl Fn(&Row) -> Option<f64>) -> Self {
        let beside = |row: Row| Check {
            got: got(&row).unwrap_or(f64::NAN),
            what: format!("{}, {}", row.what.replace('_', " "), row.of),
            source: row.source,
            expected: row.value,
            tolerance: row.tolerance,
            unit: row.unit,
        };
        Self { title, checks: rows(path).into_iter().map(beside).collect() }
    }

    /// Prints every check and holds all of them.
    ///
    /// # Panics
    /// When one does not hold, after all have been printed, or when there is none.
    pub fn hold(&self) {
        let mut wrong = 0;
        for check in &self.checks {
            let Check { source, what, expected, got, tolerance, unit } = check;
            let mark = if check.holds() { "" } else { "  <-- WRONG" };
            wrong += usize::from(!check.holds());
            println!(
                "{what}: expected {expected} +- {tolerance} {unit}, got {got}; {source}{mark}"
            );
        }
        assert!(wrong == 0 && !self.checks.is_empty(), "{}: {wrong} wrong", self.title);
    }
}

/// Every sheet.
pub fn sheets() -> Vec<Sheet> {
    vec![
        sizes::sheet(),
        joints::sheet(),
        strands::sheet(),
        wheels::sheet(),
        sums::sheet(),
        laws::sheet(),
        wear::sheet(),
        width::sheet(),
        closing::sheet(),
    ]
}

/// All checks as a page of tables.
pub fn page(sheets: &[Sheet]) -> String {
    let all = || sheets.iter().flat_map(|sheet| &sheet.checks);
    let (count, held) = (all().count(), all().filter(|check| check.holds()).count());
    let mut page = format!(
        "# Checks against the outside\n\n\
         {held} of {count} hold. Written by `cargo renew`; `cargo verify` writes the same page anew under\n\
         `target/verify/checks.md` and fails when this one is out of date. What the words in the column of\n\
         sources mean, and what else is checked, stands in [method.md](method.md).\n"
    );
    for sheet in sheets {
        let _ = write!(page, "\n## {}\n\n", sheet.title);
        page.push_str("| what | expected | got | tolerance | unit | holds | source |\n|---|---|---|---|---|---|---|\n");
        for check in &sheet.checks {
            let Check { source, what, expected, tolerance, unit, .. } = check;
            let (got, holds) = (figures(check.got), if check.holds() { "yes" } else { "NO" });
            let _ = writeln!(
                page,
                "| {what} | {expected} | {got} | {tolerance:e} | {unit} | {holds} | {source} |"
            );
        }
    }
    page
}

/// Seven figures of a number, which is more than any source prints.
fn figures(value: f64) -> String {
    const FIGURES: f64 = 6.0;
    if value == 0.0 || !value.is_finite() {
        return value.to_string();
    }
    let digits = (FIGURES - value.abs().log10().floor()).clamp(0.0, 15.0);
    let text = format!("{value:.*}", digits as usize);
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
