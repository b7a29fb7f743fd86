//! The kernel's libraries must be built alike for the tests and for the page: cargo joins the
//! features that all packages of one build ask for, and a joined feature can change the bits.

use super::tally::Tally;
use crate::trouble::Trouble;
use crate::{page, place};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// Libraries that carry numbers and compute none.
const CARRIERS: [&str; 2] = ["serde", "serde_core"];

/// Features of each package, by name and version.
type Features = BTreeMap<String, BTreeSet<String>>;

/// Compares the features of every library of the kernel; names each that differs.
pub fn check(_: &Path) -> Result<Tally, Trouble> {
    let own = tree(&["--package", "lightgap", "--edges", "normal,no-proc-macro"])?;
    let native =
        tree(&["--workspace", "--exclude", "lightgap-wasm", "--edges", "normal,build,dev"])?;
    let page =
        tree(&["--package", "lightgap-wasm", "--target", page::TARGET, "--edges", "normal"])?;
    let mut sum = Tally::default();
    for package in own.keys().filter(|name| !is_carrier(name)) {
        let (tested, shown) = (native.get(package), page.get(package));
        let same = tested.is_some() && tested == shown;
        if !same {
            println!("  | {package}: {tested:?} in the tests, {shown:?} in the page");
        }
        sum += Tally::of_one(same);
    }
    Ok(sum)
}

fn is_carrier(package: &str) -> bool {
    CARRIERS.contains(&package.split(' ').next().unwrap_or_default())
}

/// What cargo resolves for a choice of packages.
fn tree(choice: &[&str]) -> Result<Features, Trouble> {
    let mut cargo = place::cargo();
    cargo.args(["tree", "--prefix", "none", "--format", "{p}|{f}"]).args(choice);
    let done = cargo.output().map_err(|error| Trouble::program("cargo tree", &error))?;
    if !done.status.success() {
        return Err(Trouble::program("cargo tree", &String::from_utf8_lossy(&done.stderr)));
    }
    Ok(read(&String::from_utf8_lossy(&done.stdout)))
}

/// Reads lines such as `libm v0.2.16|arch,default (*)`.
fn read(lines: &str) -> Features {
    let mut found = Features::new();
    for (package, features) in lines.lines().filter_map(|line| line.split_once('|')) {
        let name = package.split(' ').take(2).collect::<Vec<_>>().join(" ");
        let features = features.trim_end_matches("(*)").trim();
        let each = features.split(',').filter(|feature| !feature.is_empty()).map(String::from);
        found.entry(name).or_default().extend(each);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::read;

    #[test]
    fn a_feature_more_in_one_build_is_seen() {
        let native = read("libm v0.2.16|arch,default\nlibm v0.2.16|arch,default (*)");
        assert_eq!(native, read("libm v0.2.16|default,arch"));
        assert_ne!(native, read("libm v0.2.16|arch,default,force-soft-floats"));
        assert_ne!(native, read("libm v0.2.17|arch,default"));
    }
}
