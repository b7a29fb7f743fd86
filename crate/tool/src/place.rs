//! Where things are: the project's folder, and the programs that built this one.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The project's folder: cargo names it at run time, so that it may be moved.
pub fn root() -> PathBuf {
    let tool = std::env::var_os("CARGO_MANIFEST_DIR").unwrap_or(env!("CARGO_MANIFEST_DIR").into());
    Path::new(&tool).ancestors().nth(2).map_or_else(|| PathBuf::from("."), Path::to_path_buf)
}

/// The folder for generated files, `target/` unless cargo was told otherwise.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// The same cargo that started this program, in the project's folder.
pub fn cargo() -> Command {
    in_root(std::env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo")))
}

/// A program started in the project's folder.
pub fn in_root(program: impl AsRef<std::ffi::OsStr>) -> Command {
    let mut command = Command::new(program);
    command.current_dir(root());
    command
}
