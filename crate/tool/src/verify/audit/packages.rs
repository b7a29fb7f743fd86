//! The packages of the page's tests, as npm's lock file lists them. None of them reaches the page.

use super::{Findings, licence};
use serde_json::Value;

/// A library of accessibility rules that the tests load and nobody is handed.
const TESTS_ONLY: [(&str, &str); 1] = [("node_modules/axe-core", "MPL-2.0")];

/// The packages that are not the project's own.
fn foreign(lock: &Value) -> impl Iterator<Item = (&String, &Value)> {
    lock["packages"].as_object().into_iter().flatten().filter(|(name, _)| !name.is_empty())
}

/// Packages that any rule speaks against.
fn those(lock: &Value, against: impl Fn(&str, &Value) -> bool) -> Findings {
    foreign(lock).filter(|(name, each)| against(name, each)).map(|(name, _)| name.clone()).collect()
}

/// Packages without a hash, linked, or fetched from an address of their own.
pub fn of_unknown_origin(lock: &Value) -> Findings {
    those(lock, |_, each| {
        let hash = each["integrity"].as_str().unwrap_or_default();
        !hash.starts_with("sha512-") || each["link"] == true || each.get("resolved").is_some()
    })
}

/// Packages under another licence.
pub fn of_other_licence(lock: &Value) -> Findings {
    those(lock, |name, each| {
        let said = each["license"].as_str().unwrap_or_default();
        !licence::is_allowed(said) && !TESTS_ONLY.contains(&(name, said))
    })
}

/// Packages with an installing script.
pub fn run_unasked(lock: &Value) -> Findings {
    those(lock, |_, each| each["hasInstallScript"] == true)
}

#[cfg(test)]
mod tests {
    use super::{of_other_licence, of_unknown_origin, run_unasked};
    use serde_json::json;

    #[test]
    fn a_planted_package_is_found_by_each_rule() {
        let good = json!({"integrity": "sha512-x", "license": "MIT"});
        let lock = json!({"packages": {
            "": {"name": "own"},
            "good": good,
            "unhashed": {"license": "MIT"},
            "elsewhere": {"integrity": "sha512-x", "license": "MIT", "resolved": "git+ssh://x"},
            "viral": {"integrity": "sha512-x", "license": "GPL-3.0-only", "hasInstallScript": true},
        }});
        assert_eq!(of_unknown_origin(&lock), ["unhashed", "elsewhere"]);
        assert_eq!(of_other_licence(&lock), ["viral"]);
        assert_eq!(run_unasked(&lock), ["viral"]);
    }
}
