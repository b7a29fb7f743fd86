//! The commands of lightgap: `cargo page` serves the page, `cargo solve` prints
//! reports without a browser, `cargo verify` runs every check.

mod page;
mod place;
mod solve;
mod trouble;
mod verify;

use clap::{Parser, Subcommand};
use std::process::ExitCode;

/// What may stand on the command line.
#[derive(Parser)]
#[command(name = "lightgap", version, about = "The contact geometry of a roller chain")]
struct Line {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Build the page and serve it on this machine alone
    Page(page::Options),
    /// Print a report of each scenario
    Solve(solve::Options),
    /// Run every check of the project
    Verify(verify::Options),
}

fn main() -> ExitCode {
    let outcome = match Line::parse().command {
        Command::Page(options) => page::run(&options),
        Command::Solve(options) => solve::run(&options),
        Command::Verify(options) => verify::run(&options),
    };
    outcome.unwrap_or_else(|trouble| {
        eprintln!("{trouble}");
        ExitCode::FAILURE
    })
}
