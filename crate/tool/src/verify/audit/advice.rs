//! What is known against the packages: asked of the two registries' advisory databases. Where a database
//! cannot be asked that is said, and counts as no check; what it knows fails the part.

use super::super::tally::Tally;
use crate::place;
use crate::trouble::Trouble;
use serde_json::Value;
use std::process::Command;

/// Grades of npm's advisories that fail; milder ones are printed.
const GRAVE: [&str; 2] = ["high", "critical"];

/// What is known: its name, and whether it fails the part.
type Advisory = (String, bool);

/// Asks both databases.
pub fn asked() -> Result<Tally, Trouble> {
    let mut cargo = place::cargo();
    cargo.args(["audit", "--json"]);
    let mut npm = Command::new("npm");
    npm.args(["audit", "--json", "--package-lock-only"])
        .current_dir(place::root().join("tests/page"));
    let mut sum = judged("crates", "cargo audit", &output(&mut cargo)?, in_crates);
    sum += judged("packages", "npm audit", &output(&mut npm)?, in_packages);
    Ok(sum)
}

/// What a program printed, whatever it ended with; nothing where it is not there.
fn output(command: &mut Command) -> Result<String, Trouble> {
    match command.output() {
        Ok(done) => Ok(String::from_utf8_lossy(&done.stdout).into_owned()),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(String::new()),
        Err(error) => Err(Trouble::program("audit", &error)),
    }
}

/// Tells what a database answered.
fn judged(of: &str, by: &str, said: &str, known: fn(&Value) -> Option<Vec<Advisory>>) -> Tally {
    let Some(known) = serde_json::from_str(said).ok().as_ref().and_then(known) else {
        println!("  | advisories on {of} were not asked: `{by}` is not there or has no answer");
        return Tally::default();
    };
    for (name, fails) in &known {
        println!("  | advisory on {name}{}", if *fails { "" } else { ", too mild to fail" });
    }
    Tally::of_one(!known.iter().any(|(_, fails)| *fails))
}

/// `{"vulnerabilities": {"list": [{"advisory": {"id"}, "package": {"name"}}]}}`
fn in_crates(answer: &Value) -> Option<Vec<Advisory>> {
    let list = answer["vulnerabilities"]["list"].as_array()?;
    let name = |each: &Value| format!("{} {}", each["package"]["name"], each["advisory"]["id"]);
    Some(list.iter().map(|each| (name(each), true)).collect())
}

/// `{"vulnerabilities": {"NAME": {"severity": "high"}}}`
fn in_packages(answer: &Value) -> Option<Vec<Advisory>> {
    let each = answer["vulnerabilities"].as_object()?.iter();
    let grade = |of: &Value| of["severity"].as_str().unwrap_or_default().to_string();
    Some(
        each.map(|(name, of)| (format!("{name}, {}", grade(of)), GRAVE.contains(&&*grade(of))))
            .collect(),
    )
}

#[cfg(test)]
mod tests {
    use super::{in_crates, in_packages, judged};
    use crate::verify::tally::Tally;

    const NONE: Tally = Tally { passed: 0, failed: 0 };

    #[test]
    fn an_advisory_fails_a_mild_one_does_not_and_silence_is_no_check() {
        let crates = |said| judged("crates", "cargo audit", said, in_crates);
        let known =
            r#"{"vulnerabilities":{"list":[{"advisory":{"id":"A-1"},"package":{"name":"x"}}]}}"#;
        assert_eq!(crates(known), Tally::of_one(false));
        assert_eq!(crates(r#"{"vulnerabilities":{"list":[]}}"#), Tally::of_one(true));
        assert_eq!(crates(""), NONE);
        let packages = |said| judged("packages", "npm audit", said, in_packages);
        assert_eq!(
            packages(r#"{"vulnerabilities":{"x":{"severity":"high"}}}"#),
            Tally::of_one(false)
        );
        assert_eq!(
            packages(r#"{"vulnerabilities":{"x":{"severity":"low"}}}"#),
            Tally::of_one(true)
        );
        assert_eq!(packages(r#"{"message":"no answer","error":{}}"#), NONE);
    }
}
