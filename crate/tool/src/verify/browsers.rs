//! The parts that need node or a browser: what they stand on is installed where it can be,
//! and named in one line where it cannot.

use super::part::logged;
use super::tally::Tally;
use crate::place;
use crate::trouble::Trouble;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A program a part needs, the package of Debian that brings it.
struct Need {
    program: &'static str,
    package: &'static str,
}

const CHROMIUM: [Need; 3] = [Need { program: "chromium", package: "chromium" }, PRINTED, DRAWN];
const FIREFOX: [Need; 3] =
    [Need { program: "firefox-esr", package: "firefox-esr" }, PRINTED, DRAWN];
/// Reads and shows what a page has printed.
const PRINTED: Need = Need { program: "pdftoppm", package: "poppler-utils" };
/// Draws an SVG document without a browser.
const DRAWN: Need = Need { program: "rsvg-convert", package: "librsvg2-bin" };
const WEBKIT: [Need; 2] = [
    Need { program: "WebKitWebDriver", package: "webkit2gtk-driver" },
    Need { program: "Xvfb", package: "xvfb" },
];
/// Letters to draw with: a bare machine has none.
const LETTERS: &str = "fonts-dejavu-core";

/// Checks the types that the page's modules write in their comments.
pub fn types(log: &Path) -> Result<Tally, Trouble> {
    let tests = with_node()?;
    let compiler = tests.join("node_modules/.bin/tsc");
    let done =
        logged(place::in_root(compiler).args(["--project", "tests/page/tsconfig.json"]), log)?;
    Ok(Tally::of_one(done.good))
}

/// Compares the reports of the kernel in WebAssembly with the native ones.
pub fn same_bits(log: &Path) -> Result<Tally, Trouble> {
    crate::page::built()?;
    suite("bits", 1, log)
}

/// The whole suite in Chromium.
pub fn chromium(log: &Path) -> Result<Tally, Trouble> {
    provide(&CHROMIUM)?;
    suite("chromium", SIDE_BY_SIDE, log)
}

/// What two engines are held to, in Firefox.
pub fn firefox(log: &Path) -> Result<Tally, Trouble> {
    provide(&FIREFOX)?;
    suite("firefox", SIDE_BY_SIDE, log)
}

/// The shorter suite in WebKitGTK.
pub fn webkit(log: &Path) -> Result<Tally, Trouble> {
    provide(&WEBKIT)?;
    suite("webkit", 1, log)
}

/// So many test files at once, each with a browser and a server of its own: most of what they do is wait.
const SIDE_BY_SIDE: u32 = 2;

/// Runs the test files of `tests/page/NAME/`, so many at once.
fn suite(name: &str, at_once: u32, log: &Path) -> Result<Tally, Trouble> {
    let tests = with_node()?;
    let mut files: Vec<PathBuf> = std::fs::read_dir(tests.join(name))
        .map_err(Trouble::file(&tests.join(name)))?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.to_string_lossy().ends_with(".test.js"))
        .collect();
    files.sort();
    let mut node = Command::new("node");
    node.current_dir(&tests)
        .args(["--test", "--test-force-exit", "--test-timeout=900000", "--test-reporter=spec"])
        .arg(format!("--test-concurrency={at_once}"))
        .args(files);
    let done = logged(&mut node, log)?;
    Ok(Tally::in_output(&done.output, done.good))
}

/// The folder of the page's tests, its packages installed as the lock file says.
fn with_node() -> Result<PathBuf, Trouble> {
    let tests = place::root().join("tests/page");
    for program in ["node", "npm"] {
        if !is_there(program) {
            return Err(Trouble::Said(format!("{program} is missing: install node 20 and npm")));
        }
    }
    let installed = tests.join("node_modules/.package-lock.json");
    if is_older(&installed, &tests.join("package-lock.json")) {
        println!("  | npm ci in tests/page");
        let log = place::target().join("verify/npm.log");
        let done = logged(Command::new("npm").arg("ci").current_dir(&tests), &log)?;
        if !done.good {
            let said = "tests/page: `npm ci` failed; run it by hand where the registry is reached";
            return Err(Trouble::Said(said.into()));
        }
    }
    Ok(tests)
}

/// Whether a file is missing or was written before another.
fn is_older(file: &Path, than: &Path) -> bool {
    let time = |path: &Path| path.metadata().and_then(|data| data.modified()).ok();
    time(file).is_none_or(|written| time(than).is_none_or(|other| written < other))
}

/// Installs the missing programs by apt-get as root; says what to install where that fails.
fn provide(needs: &[Need]) -> Result<(), Trouble> {
    let packages = missing(needs);
    if packages.is_empty() {
        return Ok(());
    }
    println!("  | apt-get install {}", packages.join(" "));
    install(&packages)?;
    let left = missing(needs);
    if left.is_empty() {
        return Ok(());
    }
    Err(Trouble::Said(advice(&left)))
}

/// The packages of the programs that are not there.
fn missing(needs: &[Need]) -> Vec<&'static str> {
    needs.iter().filter(|need| !is_there(need.program)).map(|need| need.package).collect()
}

/// What a person can do about missing packages, in one line.
fn advice(packages: &[&str]) -> String {
    format!("missing: run `apt-get install {LETTERS} {}` as root", packages.join(" "))
}

/// Tries; the programs tell whether it helped.
fn install(packages: &[&str]) -> Result<(), Trouble> {
    if !is_there("apt-get") {
        return Ok(());
    }
    let apt = |words: &[&str], log: &str| {
        let mut command = Command::new("apt-get");
        command.args(words).env("DEBIAN_FRONTEND", "noninteractive");
        logged(&mut command, &place::target().join("verify").join(log))
    };
    apt(&["update"], "apt-update.log")?;
    let words = ["install", "--yes", "--no-install-recommends", LETTERS];
    apt(&[&words, packages].concat(), "apt-install.log")?;
    Ok(())
}

/// Whether a program is found on the path.
fn is_there(program: &str) -> bool {
    let path = std::env::var_os("PATH").unwrap_or_default();
    std::env::split_paths(&path).any(|folder| folder.join(program).is_file())
}

#[cfg(test)]
mod tests {
    use super::{Need, advice, is_older, missing};
    use std::path::Path;

    #[test]
    fn what_is_missing_is_named_by_its_package_in_one_line() {
        let needs = [
            Need { program: "cargo", package: "cargo" },
            Need { program: "no-such-program-at-all", package: "its-package" },
        ];
        assert_eq!(missing(&needs), ["its-package"]);
        let said = advice(&missing(&needs));
        assert!(said.contains("apt-get install") && said.contains("its-package"), "{said}");
        assert!(!said.contains('\n'));
    }

    #[test]
    fn packages_are_installed_anew_when_the_lock_file_is_newer_or_nothing_is_there() {
        let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        assert!(is_older(Path::new("no/such/file"), &here));
        assert!(!is_older(&here, &here));
    }
}
