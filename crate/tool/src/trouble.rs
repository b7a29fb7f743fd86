//! What can go wrong in a command, said in one sentence.

use std::io;
use std::path::{Path, PathBuf};

/// A reason why a command stopped.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// A file could not be read or written.
    #[error("{}: {source}", path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A program could not be started, or ended badly.
    #[error("{program}: {reason}")]
    Program {
        /// Its name.
        program: String,
        /// What it came to.
        reason: String,
    },
    /// Anything else, as a whole sentence.
    #[error("{0}")]
    Said(String),
}

impl Trouble {
    /// For `map_err` on a file operation.
    pub fn file(path: &Path) -> impl FnOnce(io::Error) -> Self {
        |source| Self::File { path: path.to_path_buf(), source }
    }

    /// For a program that could not do its work.
    pub fn program(program: &str, reason: &dyn std::fmt::Display) -> Self {
        Self::Program { program: program.to_string(), reason: reason.to_string() }
    }
}
