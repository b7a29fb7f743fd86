//! What the project is built from: where every package comes from, under what licence, what runs while
//! it is built, what the page ships, and what the advisory databases know of it where they answer.

mod advice;
mod crates;
mod licence;
mod packages;

use super::tally::Tally;
use crate::place;
use crate::trouble::Trouble;
use crates::Crates;
use std::path::Path;

/// What was found against a rule, one line each.
type Findings = Vec<String>;

/// Holds every rule; names each finding.
pub fn check(_: &Path) -> Result<Tally, Trouble> {
    let crates = Crates::read()?;
    let packages = json(&text("tests/page/package-lock.json")?)?;
    let table = text("DEVELOPERS.md")?;
    let rules = [
        ("a crate comes from the registry and the lock file has its checksum", {
            crates.of_unknown_origin(&text("Cargo.lock")?)
        }),
        ("a crate's licence is one of the list", crates.of_other_licence()),
        ("a library that is asked for stands in the table of libraries", crates.untold(&table)),
        ("the page ships no library in two versions", crates.twice_in_the_page()),
        ("only known crates run code while page and tool are built", crates.run_unasked()),
        ("a package of the tests has its hash and comes from the registry", {
            packages::of_unknown_origin(&packages)
        }),
        ("a package's licence is one of the list", packages::of_other_licence(&packages)),
        ("no package runs code when it is installed", packages::run_unasked(&packages)),
    ];
    let mut sum = Tally::default();
    for (rule, findings) in rules {
        sum += told(rule, &findings);
    }
    sum += advice::asked()?;
    Ok(sum)
}

/// Prints what is against a rule.
fn told(rule: &str, findings: &[String]) -> Tally {
    for finding in findings {
        println!("  | {rule}: {finding}");
    }
    Tally::of_one(findings.is_empty())
}

fn text(name: &str) -> Result<String, Trouble> {
    let path = place::root().join(name);
    std::fs::read_to_string(&path).map_err(Trouble::file(&path))
}

fn json(text: &str) -> Result<serde_json::Value, Trouble> {
    serde_json::from_str(text).map_err(|error| Trouble::program("audit", &error))
}
