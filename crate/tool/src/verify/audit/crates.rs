//! The crates, as `cargo metadata` resolves them from the lock file.

use super::{Findings, json, licence};
use crate::place;
use crate::trouble::Trouble;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Where a crate may come from.
const REGISTRY: &str = "registry+";
/// What the page ships and what builds and serves it.
const SHIPPED: [&str; 2] = ["lightgap-wasm", "lightgap-tool"];
/// Crates of those that run a script or a macro of their own while they are built.
const KNOWN: [&str; 37] = [
    "anyhow",
    "clap_derive",
    "crc32fast",
    "crossbeam-deque",
    "crossbeam-epoch",
    "crossbeam-utils",
    "displaydoc",
    "dragonbox_ecma",
    "httparse",
    "icu_locale_fallback_data",
    "icu_segmenter_data",
    "libc",
    "libm",
    "mime_guess",
    "num-traits",
    "oxc_ast_macros",
    "phf_macros",
    "proc-macro2",
    "quote",
    "rayon-core",
    "rustversion",
    "seq-macro",
    "serde",
    "serde_core",
    "serde_derive",
    "serde_json",
    "thiserror",
    "thiserror-impl",
    "tokio-macros",
    "walrus-macro",
    "wasm-bindgen",
    "wasm-bindgen-macro",
    "wasm-bindgen-shared",
    "yoke-derive",
    "zerofrom-derive",
    "zerovec-derive",
    "zmij",
];

/// All crates and who needs whom.
pub struct Crates {
    metadata: Value,
}

impl Crates {
    /// Asks cargo, which may not change the lock file.
    pub fn read() -> Result<Self, Trouble> {
        let mut cargo = place::cargo();
        let asked = cargo.args(["metadata", "--format-version", "1", "--locked"]).output();
        let done = asked.map_err(|error| Trouble::program("cargo metadata", &error))?;
        if !done.status.success() {
            return Err(Trouble::program("cargo metadata", &String::from_utf8_lossy(&done.stderr)));
        }
        Ok(Self { metadata: json(&String::from_utf8_lossy(&done.stdout))? })
    }

    fn all(&self) -> impl Iterator<Item = &Value> {
        list(&self.metadata["packages"])
    }

    fn foreign(&self) -> impl Iterator<Item = &Value> {
        self.all().filter(|each| !each["source"].is_null())
    }

    /// Crates from anywhere but the registry, or of which the lock file has no checksum.
    pub fn of_unknown_origin(&self, lock: &str) -> Findings {
        let entries: Vec<_> = lock.split("[[package]]").collect();
        let sealed = |each: &Value| {
            let (name, version) = (line("name", &each["name"]), line("version", &each["version"]));
            let ours = |entry: &&&str| entry.contains(&name) && entry.contains(&version);
            entries.iter().find(ours).is_some_and(|entry| entry.contains("\nchecksum = \""))
        };
        let known = |each: &Value| word(&each["source"]).starts_with(REGISTRY) && sealed(each);
        named(self.foreign().filter(|each| !known(each)))
    }

    /// Crates under another licence.
    pub fn of_other_licence(&self) -> Findings {
        named(self.all().filter(|each| !licence::is_allowed(word(&each["license"]))))
    }

    /// Libraries that a package of ours asks for and that the table of libraries leaves out.
    pub fn untold(&self, table: &str) -> Findings {
        let rows: BTreeSet<_> = table
            .lines()
            .filter_map(|line| line.strip_prefix("| ")?.split(" | ").next())
            .flat_map(|names| names.split(", "))
            .collect();
        let own = self.all().filter(|each| each["source"].is_null());
        let asked = own.flat_map(|each| list(&each["dependencies"]));
        let asked: BTreeSet<_> = asked
            .filter(|each| !each["source"].is_null())
            .map(|each| word(&each["name"]))
            .collect();
        asked.into_iter().filter(|name| !rows.contains(name)).map(String::from).collect()
    }

    /// Libraries that the page's programs hold in two versions.
    pub fn twice_in_the_page(&self) -> Findings {
        let mut seen = BTreeSet::new();
        let again =
            self.needed(&SHIPPED[..1]).into_iter().filter(|each| !seen.insert(word(&each["name"])));
        named(again)
    }

    /// Crates that run code while page and tool are built, and are not known to.
    pub fn run_unasked(&self) -> Findings {
        let runs = |kind: &Value| ["custom-build", "proc-macro"].contains(&word(kind));
        let active = |each: &&Value| list(&each["targets"]).any(|of| list(&of["kind"]).any(runs));
        let known = |each: &&Value| KNOWN.contains(&word(&each["name"]));
        named(self.needed(&SHIPPED).into_iter().filter(active).filter(|each| !known(each)))
    }

    /// All crates that packages of ours need to be built and run, tests left out.
    fn needed(&self, packages: &[&str]) -> Vec<&Value> {
        let by_id: BTreeMap<_, _> = self.all().map(|each| (word(&each["id"]), each)).collect();
        let nodes = list(&self.metadata["resolve"]["nodes"]);
        let nodes: BTreeMap<_, _> = nodes.map(|each| (word(&each["id"]), each)).collect();
        let ours = |each: &&Value| packages.contains(&word(&each["name"]));
        let mut open: Vec<_> = self.all().filter(ours).map(|each| word(&each["id"])).collect();
        let mut seen = BTreeSet::new();
        while let Some(id) = open.pop() {
            let of_tests = |kind: &Value| kind["kind"] == "dev";
            let linked = |of: &&Value| !list(&of["dep_kinds"]).all(of_tests);
            if seen.insert(id)
                && let Some(node) = nodes.get(id)
            {
                open.extend(list(&node["deps"]).filter(linked).map(|of| word(&of["pkg"])));
            }
        }
        seen.into_iter().filter_map(|id| by_id.get(id).copied()).collect()
    }
}

fn list(value: &Value) -> impl Iterator<Item = &Value> {
    value.as_array().into_iter().flatten()
}

fn word(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

/// A line of the lock file.
fn line(key: &str, value: &Value) -> String {
    format!("\n{key} = {value}\n")
}

fn named<'a>(crates: impl Iterator<Item = &'a Value>) -> Findings {
    crates.map(|each| format!("{} {}", word(&each["name"]), word(&each["version"]))).collect()
}

#[cfg(test)]
mod tests {
    use super::Crates;
    use serde_json::json;

    /// A page that needs two versions of one crate, one of them from elsewhere, viral and with a script.
    fn planted() -> Crates {
        let from = |name: &str, version: &str, source: &str, licence: &str, kind: &str| {
            json!({"id": format!("{name}{version}"), "name": name, "version": version, "source": source,
                   "license": licence, "targets": [{"kind": [kind]}], "dependencies": []})
        };
        let own = json!({"id": "own", "name": "lightgap-wasm", "version": "1", "source": null, "license": "MIT",
                         "targets": [], "dependencies": [{"name": "x", "source": "registry+r"}]});
        let crates = [
            own,
            from("x", "1", "registry+r", "MIT", "lib"),
            from("x", "2", "git+h", "GPL-3.0-only", "custom-build"),
        ];
        let needs = |id: &str| json!({"pkg": id, "dep_kinds": [{"kind": null}]});
        let nodes =
            json!([{"id": "own", "deps": [needs("x1"), needs("x2")]}, {"id": "x1", "deps": []}]);
        Crates { metadata: json!({"packages": crates, "resolve": {"nodes": nodes}}) }
    }

    #[test]
    fn a_planted_crate_is_found_by_each_rule() {
        let crates = planted();
        let lock = "[[package]]\nname = \"x\"\nversion = \"1\"\nchecksum = \"0\"\n";
        assert_eq!(crates.of_unknown_origin(lock), ["x 2"]);
        assert_eq!(crates.of_unknown_origin(""), ["x 1", "x 2"]);
        assert_eq!(crates.of_other_licence(), ["x 2"]);
        assert_eq!(crates.twice_in_the_page(), ["x 2"]);
        assert_eq!(crates.run_unasked(), ["x 2"]);
        assert_eq!(crates.untold("| y, z | for what |"), ["x"]);
        assert!(crates.untold("| x, z | for what |").is_empty());
    }
}
