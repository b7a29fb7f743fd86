//! The kernel as WebAssembly with the JavaScript that loads it.

use super::bind::{STAGE, WORKER, bound};
use crate::place;
use crate::trouble::Trouble;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The target the page is compiled for.
pub const TARGET: &str = "wasm32-unknown-unknown";
/// Flags of the page's kernel. They replace a user's own, which could drop the vectors.
const FLAGS: &str = "-Ctarget-feature=+simd128";
/// What the first screen adds, which is downloaded before anything shows: sums written once for any
/// length, where the worker has them written out for the lengths that occur; and nothing rearranged for
/// a processor's sake, which takes bytes here and which the browser does anyway as it compiles.
const SMALL: [&str; 6] = [
    "--cfg=lightgap_small",
    "-Cllvm-args=-disable-lsr",
    "-Cllvm-args=-disable-machine-cse",
    "-Cllvm-args=-disable-machine-licm",
    "-Cllvm-args=-disable-machine-sink",
    "-Cllvm-args=-enable-load-pre=false",
];
/// Between two flags.
const NEXT: &str = "\x1f";

/// Compiles the kernel for the page and generates its glue; gives the folder that holds both.
pub fn generate() -> Result<PathBuf, Trouble> {
    let folder = place::target().join("site");
    add_target()?;
    let flags = [FLAGS.to_owned()].into_iter().chain(nameless()).collect::<Vec<_>>().join(NEXT);
    let small = format!("{flags}{NEXT}{}", SMALL.join(NEXT));
    let (stage, worker) = std::thread::scope(|both| {
        let stage = both.spawn(|| compile(STAGE, "first", &small));
        let worker = compile(WORKER, "page", &flags);
        (stage.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)), worker)
    });
    bound(&stage?, &worker?, &folder)?;
    Ok(folder)
}

/// Flags that keep the folders of this machine out of the programs: where a library would name its source
/// in a fault, the name begins at the library. So the same sources give the same programs everywhere.
fn nameless() -> Vec<String> {
    let own = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = own.or_else(|| std::env::home_dir().map(|home| home.join(".cargo")));
    let sources = home.and_then(|home| std::fs::read_dir(home.join("registry/src")).ok());
    let folders = sources.into_iter().flatten().flatten();
    folders.map(|folder| format!("--remap-path-prefix={}/=", folder.path().display())).collect()
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

/// Runs cargo for one program of the page's kernel, by a profile of `Cargo.toml`; gives the compiled
/// module. Each has a folder of its own: where a flag renames folders, cargo takes programs of other
/// flags for the same, and would compile either anew in the place of the other.
fn compile(name: &str, profile: &str, flags: &str) -> Result<PathBuf, Trouble> {
    let mut cargo = place::cargo();
    cargo
        .args(["build", "--quiet", "--package", "lightgap-wasm", "--bin", name])
        .args(["--profile", profile])
        .args(["--target", TARGET, "--message-format", "json-render-diagnostics"])
        .arg("--target-dir")
        .arg(place::target().join(name))
        .env("CARGO_ENCODED_RUSTFLAGS", flags);
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
