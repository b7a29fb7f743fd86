//! The kernel as WebAssembly with the JavaScript that loads it.

use crate::place;
use crate::trouble::Trouble;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use wasm_bindgen_cli_support::Bindgen;

/// The target the page is compiled for.
pub const TARGET: &str = "wasm32-unknown-unknown";
/// Flags of the page's kernel. They replace a user's own, which could drop the vectors.
const FLAGS: &str = "-Ctarget-feature=+simd128";
/// What the generated files are called.
const STEM: &str = "lightgap_wasm";

/// Compiles the kernel for the page and generates its glue; gives the folder that holds both.
pub fn generate() -> Result<PathBuf, Trouble> {
    let folder = place::target().join("site");
    add_target()?;
    let module = compile()?;
    let bytes = std::fs::read(&module).map_err(Trouble::file(&module))?;
    let mut bindgen = Bindgen::new();
    bindgen.input_bytes(STEM, bytes).typescript(true).remove_producers_section(true);
    bindgen.omit_default_module_path(false).remove_name_section(true);
    bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(&folder))
        .map_err(|error| Trouble::program("wasm-bindgen", &format!("{error:#}")))?;
    Ok(folder)
}

/// Adds the WebAssembly target by rustup where the compiler lacks it, and says so.
pub fn add_target() -> Result<(), Trouble> {
    if has_target()? {
        return Ok(());
    }
    eprintln!("adding the compilation target {TARGET} (once)");
    let added = place::in_root("rustup").args(["target", "add", TARGET]).status();
    match added {
        Ok(status) if status.success() => Ok(()),
        _ => Err(Trouble::Said(format!(
            "the compiler lacks the target {TARGET}: run `rustup target add {TARGET}`"
        ))),
    }
}

fn has_target() -> Result<bool, Trouble> {
    let mut rustc = place::in_root("rustc");
    let shown = output(rustc.args(["--print", "target-libdir", "--target", TARGET]))?;
    Ok(Path::new(shown.trim()).is_dir())
}

/// Runs cargo for the page's kernel; gives the compiled module.
fn compile() -> Result<PathBuf, Trouble> {
    let mut cargo = place::cargo();
    cargo
        .args(["build", "--quiet", "--package", "lightgap-wasm", "--profile", "page"])
        .args(["--target", TARGET, "--message-format", "json-render-diagnostics"])
        .env("CARGO_ENCODED_RUSTFLAGS", FLAGS);
    let messages = output(&mut cargo)?;
    let mut modules = messages.lines().filter_map(module_in);
    modules
        .next_back()
        .ok_or_else(|| Trouble::program("cargo build", &"it named no compiled module"))
}

/// The `.wasm` file that a line of cargo's messages names.
fn module_in(line: &str) -> Option<PathBuf> {
    let message: serde_json::Value = serde_json::from_str(line).ok()?;
    let mut files = message.get("filenames")?.as_array()?.iter().filter_map(|name| name.as_str());
    files.find(|name| name.ends_with(".wasm")).map(PathBuf::from)
}

/// What a program printed; its faults go to the terminal.
fn output(command: &mut Command) -> Result<String, Trouble> {
    let program = command.get_program().to_string_lossy().into_owned();
    let done = command
        .stderr(Stdio::inherit())
        .stdin(Stdio::null())
        .output()
        .map_err(|error| Trouble::program(&program, &error))?;
    if !done.status.success() {
        return Err(Trouble::program(&program, &done.status));
    }
    Ok(String::from_utf8_lossy(&done.stdout).into_owned())
}

#[cfg(test)]
mod tests {
    use super::module_in;
    use std::path::PathBuf;

    #[test]
    fn the_module_is_read_from_the_messages_of_cargo() {
        let line = r#"{"reason":"compiler-artifact","filenames":["/t/a.d","/t/a.wasm"]}"#;
        assert_eq!(module_in(line), Some(PathBuf::from("/t/a.wasm")));
        assert_eq!(module_in(r#"{"reason":"build-finished","success":true}"#), None);
        assert_eq!(module_in("not json"), None);
    }
}
