//! `cargo solve`: reports of scenarios, without a browser.

mod picture;
mod print;
mod read;
mod sentence;
mod words;

pub use words::Language;

use crate::trouble::Trouble;
use lightgap::report::Report;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// How a run ends that refused a scenario.
const REFUSED: u8 = 2;

/// What `cargo solve` may be told.
#[derive(clap::Args)]
pub struct Options {
    /// Scenario files; `-` reads standard input
    #[arg(required = true, value_name = "SCENARIO.json")]
    scenarios: Vec<String>,
    /// How reports are printed
    #[arg(long, value_enum, default_value = "json")]
    format: Format,
    /// Draw the scenario at its stop into a file; takes one scenario
    #[arg(long, value_name = "FILE")]
    svg: Option<PathBuf>,
    /// The language of faults and of the drawing; reports have none
    #[arg(long, value_enum, default_value = "en")]
    language: Language,
}

/// Forms of a report.
#[derive(Clone, Copy, clap::ValueEnum)]
pub enum Format {
    /// One object a line
    Json,
    /// Names and values for reading
    Table,
    /// One row a scenario under a row of names
    Csv,
}

/// Solves every scenario: prints the reports of the good ones, says the faults of the others.
pub fn run(options: &Options) -> Result<ExitCode, Trouble> {
    if options.svg.is_some() && options.scenarios.len() > 1 {
        return Err(Trouble::Said("--svg draws one scenario: name one alone".into()));
    }
    let mut reports = Vec::new();
    let mut refused = false;
    for name in &options.scenarios {
        match read::scenario(name, options.language) {
            Ok(scenario) => {
                reports.push(Report::of(&scenario));
                if let Some(file) = &options.svg {
                    let picture = picture::svg(scenario, options.language);
                    std::fs::write(file, picture).map_err(Trouble::file(file))?;
                }
            }
            Err(faults) => {
                refused = true;
                let name = read::shown(name, options.language);
                faults.iter().for_each(|fault| eprintln!("{name}: {fault}"));
            }
        }
    }
    let text = print::reports(&reports, options.format)?;
    let printed = std::io::stdout().write_all(text.as_bytes());
    printed.map_err(|error| Trouble::program("standard output", &error))?;
    Ok(if refused { ExitCode::from(REFUSED) } else { ExitCode::SUCCESS })
}
