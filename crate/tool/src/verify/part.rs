//! A part of the verification: a name and the steps it takes.

use super::tally::Tally;
use crate::place;
use crate::trouble::Trouble;
use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// How many lines of a failed step are shown; the file holds the rest.
const SHOWN_LINES: usize = 400;

/// One named part.
pub struct Part {
    /// What it is called on the command line.
    pub name: String,
    /// What it checks.
    pub about: &'static str,
    steps: Vec<Step>,
}

/// One step of a part.
pub enum Step {
    /// A cargo command that is good or not.
    Check(Vec<String>),
    /// A cargo command that counts its tests.
    Tests(Vec<String>),
    /// Work of our own; it is given the file to write to.
    Own(fn(&Path) -> Result<Tally, Trouble>),
}

impl Step {
    /// A cargo command judged by how it ends.
    pub fn check<'a>(words: impl IntoIterator<Item = &'a str>) -> Self {
        Self::Check(words.into_iter().map(String::from).collect())
    }

    /// A cargo command that runs tests.
    pub fn tests<'a>(words: impl IntoIterator<Item = &'a str>) -> Self {
        Self::Tests(words.into_iter().map(String::from).collect())
    }

    fn run(&self, log: &Path) -> Result<Tally, Trouble> {
        match self {
            Self::Own(work) => work(log),
            Self::Check(words) => {
                let good = logged(place::cargo().args(words), log)?.good;
                Ok(Tally::of_one(good))
            }
            Self::Tests(words) => {
                let done = logged(place::cargo().args(words).arg("--no-fail-fast"), log)?;
                Ok(Tally::in_output(&done.output, done.good))
            }
        }
    }
}

impl Part {
    /// A part without steps yet.
    pub fn new(name: &str, about: &'static str) -> Self {
        Self { name: name.to_string(), about, steps: Vec::new() }
    }

    /// The part with one more step.
    #[must_use]
    pub fn step(mut self, step: Step) -> Self {
        self.steps.push(step);
        self
    }

    /// Runs all steps, also after one has failed, and adds up.
    pub fn run(&self) -> Result<Tally, Trouble> {
        let mut sum = Tally::default();
        for (index, step) in self.steps.iter().enumerate() {
            sum += step.run(&log_file(&format!("{}-{index}", self.name))?)?;
        }
        Ok(sum)
    }
}

fn log_file(stem: &str) -> Result<PathBuf, Trouble> {
    let folder = place::target().join("verify");
    std::fs::create_dir_all(&folder).map_err(Trouble::file(&folder))?;
    Ok(folder.join(format!("{stem}.log")))
}

/// How a program ended and what it printed.
pub struct Done {
    /// It ended without a fault.
    pub good: bool,
    /// Everything it printed, in order.
    pub output: String,
}

/// Runs a program with its output in a file; shows the end of it where it failed.
pub fn logged(command: &mut Command, log: &Path) -> Result<Done, Trouble> {
    let file = File::create(log).map_err(Trouble::file(log))?;
    let errors = file.try_clone().map_err(Trouble::file(log))?;
    let program = command.get_program().to_string_lossy().into_owned();
    let status = command
        .stdin(Stdio::null())
        .stdout(file)
        .stderr(errors)
        .status()
        .map_err(|error| Trouble::program(&program, &error))?;
    let bytes = std::fs::read(log).map_err(Trouble::file(log))?;
    let output = String::from_utf8_lossy(&bytes).into_owned();
    if !status.success() {
        show(&output, log);
    }
    Ok(Done { good: status.success(), output })
}

fn show(output: &str, log: &Path) {
    let lines: Vec<&str> = output.lines().collect();
    let from = lines.len().saturating_sub(SHOWN_LINES);
    for line in &lines[from..] {
        println!("  | {line}");
    }
    println!("  | (all of it: {})", log.display());
}
