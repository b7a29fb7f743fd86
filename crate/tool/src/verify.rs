//! `cargo verify`: every check of the project, in parts that can be run alone.

mod audit;
mod browsers;
mod features;
mod part;
mod tally;

use crate::trouble::Trouble;
use crate::{page, place};
use part::{Part, Step};
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;
use tally::Tally;

/// What `cargo verify` may be told.
#[derive(clap::Args)]
pub struct Options {
    /// Only this part (may be repeated): a name from the list, or a room of the kernel
    #[arg(long, value_name = "NAME")]
    only: Vec<String>,
    /// Name the parts and stop
    #[arg(long)]
    list: bool,
}

/// Runs the parts and closes with their sum on a line of its own.
pub fn run(options: &Options) -> Result<ExitCode, Trouble> {
    if options.list {
        for part in parts() {
            println!("{:10} {}", part.name, part.about);
        }
        return Ok(ExitCode::SUCCESS);
    }
    let mut sum = Tally::default();
    for part in chosen(&options.only)? {
        sum += reported(&part);
    }
    println!("{} passed, {} failed", sum.passed, sum.failed);
    Ok(if sum.is_good() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Runs one part and says how it went; a part that could not run, or ran nothing, has failed.
fn reported(part: &Part) -> Tally {
    println!("{:10} {} ...", part.name, part.about);
    let start = Instant::now();
    let tally = match part.run() {
        Ok(tally) if tally == Tally::default() => {
            println!("{:10} ran no check", part.name);
            Tally { passed: 0, failed: 1 }
        }
        Ok(tally) => tally,
        Err(trouble) => {
            println!("{:10} {trouble}", part.name);
            Tally { passed: 0, failed: 1 }
        }
    };
    let word = if tally.is_good() { "good" } else { "BAD" };
    let took = start.elapsed().as_secs_f64();
    println!("{:10} {word}: {} of {} in {took:.1} s", part.name, tally.passed, tally.of());
    tally
}

fn chosen(names: &[String]) -> Result<Vec<Part>, Trouble> {
    if names.is_empty() {
        return Ok(parts());
    }
    names.iter().map(|name| part_named(name)).collect()
}

/// A part by its name, or the kernel's tests of one room.
fn part_named(name: &str) -> Result<Part, Trouble> {
    if let Some(part) = parts().into_iter().find(|part| part.name == name) {
        return Ok(part);
    }
    if name == "solve" {
        let tests = Step::tests(["test", "--package", "lightgap-solve"]);
        return Ok(Part::new(name, "the solver's tests and examples").step(tests));
    }
    let rooms = place::root().join("crate/kernel/src");
    if rooms.join(name).is_dir() || rooms.join(format!("{name}.rs")).is_file() {
        let filter = format!("{name}::");
        return Ok(Part::new(name, "the kernel's tests of this room").step(Step::tests([
            "test",
            "--package",
            "lightgap",
            "--lib",
            filter.as_str(),
        ])));
    }
    let known = parts().iter().map(|part| part.name.clone()).collect::<Vec<_>>().join(", ");
    Err(Trouble::Said(format!("there is no part {name}: {known}, or a room of the kernel")))
}

/// All parts, the quick ones first.
fn parts() -> Vec<Part> {
    vec![
        Part::new("format", "every Rust file is laid out alike")
            .step(Step::check(["fmt", "--all", "--check"])),
        Part::new("features", "tests and page build the kernel's libraries alike")
            .step(Step::Own(features::check)),
        Part::new("audit", "what the project is built from").step(Step::Own(audit::check)),
        lint(),
        Part::new("kernel", "the kernel's own tests and examples").step(Step::tests([
            "test",
            "--package",
            "lightgap-solve",
            "--package",
            "lightgap",
        ])),
        Part::new("tests", "published figures, independent solvers, properties")
            .step(Step::tests(["test", "--package", "lightgap-tests"])),
        Part::new("checks", "the table of all checks against the outside")
            .step(Step::Own(table_of_checks)),
        Part::new("docs", "the documentation has no broken link").step(Step::Own(documentation)),
        Part::new("tool", "the server and the commands").step(Step::tests([
            "test",
            "--package",
            "lightgap-tool",
        ])),
        Part::new("types", "the page's modules by the TypeScript compiler")
            .step(Step::Own(browsers::types)),
        Part::new("wasm", "reports from WebAssembly and native, bit for bit")
            .step(Step::Own(browsers::same_bits)),
        Part::new("chromium", "the page, whole suite").step(Step::Own(browsers::chromium)),
        Part::new("firefox", "the page, shorter suite").step(Step::Own(browsers::firefox)),
        Part::new("webkit", "the page, shorter suite").step(Step::Own(browsers::webkit)),
    ]
}

/// Writes the table of checks anew and says where; the one in `docs/` is to be the same.
fn table_of_checks(log: &Path) -> Result<Tally, Trouble> {
    let table = place::target().join("verify/checks.md");
    let mut cargo = place::cargo();
    cargo.args(["run", "--quiet", "--package", "lightgap-tests", "--bin", "renew", "--", "table"]);
    let done = part::logged(cargo.arg(&table), log)?;
    let read = |path: &Path| std::fs::read_to_string(path).map_err(Trouble::file(path));
    let same = done.good && read(&table)? == read(&place::root().join("docs/checks.md"))?;
    println!("  | {}{}", table.display(), if same { "" } else { ": docs/checks.md differs" });
    Ok(Tally::of_one(same))
}

/// Builds the kernel's documentation; a warning is a fault.
fn documentation(log: &Path) -> Result<Tally, Trouble> {
    let mut cargo = place::cargo();
    cargo
        .args(["doc", "--package", "lightgap-solve", "--package", "lightgap", "--no-deps"])
        .env("RUSTDOCFLAGS", "-Dwarnings");
    part::logged(&mut cargo, log).map(|done| Tally::of_one(done.good))
}

/// Lints as the native programs and as the page are compiled; a warning is a fault.
fn lint() -> Part {
    let native = ["clippy", "--workspace", "--exclude", "lightgap-wasm", "--all-targets"];
    let wasm = ["clippy", "--package", "lightgap-wasm", "--target", page::TARGET];
    Part::new("lint", "lints, native and WebAssembly, warnings denied")
        .step(Step::check(native.into_iter().chain(["--", "-D", "warnings"])))
        .step(Step::Own(|_| page::add_target().map(|()| Tally::default())))
        .step(Step::check(wasm.into_iter().chain(["--", "-D", "warnings"])))
}
