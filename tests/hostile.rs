//! Files that must be refused, and what must be said of them: `hostile/README.md`.

use lightgap::error::{Error, Term};
use lightgap::scenario::{Scenario, Value};
use lightgap_tests::{read_scenario, text_of, words};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    why: String,
    text: Option<String>,
    change: Option<serde_json::Map<String, serde_json::Value>>,
    faults: Vec<(String, String)>,
}

fn whole() -> Value {
    serde_json::from_str(&text_of("tests/hostile/whole.json")).expect("a plain value")
}

fn read(case: &Case) -> Result<Scenario, Vec<Error>> {
    let Some(changes) = &case.change else {
        return read_scenario(case.text.as_deref().expect("a text or a change"));
    };
    let mut value = whole();
    for (path, changed) in changes {
        value.put(path, serde_json::from_value(changed.clone()).expect("a plain value"));
    }
    Scenario::read(&value)
}

#[test]
fn every_case_gives_its_faults_and_no_others() {
    let cases: Vec<Case> =
        serde_json::from_str(&text_of("tests/hostile/cases.json")).expect("the cases");
    let mut wrong = Vec::new();
    for case in &cases {
        let faults = read(case).err().unwrap_or_default();
        let got: Vec<_> =
            faults.into_iter().map(|fault| (fault.field, fault.rule.id().to_owned())).collect();
        if got != case.faults {
            wrong.push(format!("{}:\n  expected {:?}\n  got      {got:?}", case.why, case.faults));
        }
    }
    assert!(wrong.is_empty(), "{} of {} cases:\n{}", wrong.len(), cases.len(), wrong.join("\n"));
}

#[test]
fn every_fault_can_be_said() {
    let words = words();
    let cases: Vec<Case> =
        serde_json::from_str(&text_of("tests/hostile/cases.json")).expect("the cases");
    for fault in cases.iter().filter_map(|case| read(case).err()).flatten() {
        assert!(words[format!("fault.{}", fault.rule.id())].is_string(), "{fault:?}");
        for (name, term) in fault.rule.terms() {
            let Term::Word(word) = term else { continue };
            assert!(words[format!("{name}.{word}")].is_string(), "{name}.{word}");
        }
    }
}

#[test]
fn a_scenario_with_every_section_reads_and_comes_back() {
    let scenario = Scenario::read(&whole()).expect("it is whole");
    assert!(scenario.load.is_some() && scenario.motion.is_some() && scenario.drive.is_some());
    assert!(scenario.matching.is_some() && scenario.sampling.is_some() && scenario.wear.is_some());
    assert!(scenario.reach.is_some() && scenario.surface.is_some());
    let lists = [scenario.limits.len(), scenario.demands.len(), scenario.cost.len()];
    assert_eq!((lists, scenario.lesson.len()), ([3, 3, 1], 2));
    assert_eq!(Scenario::read(&scenario.write()).expect("it is whole"), scenario);
}

#[test]
fn nesting_without_end_is_refused_and_does_no_harm() {
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    let faults = read_scenario(&deep).expect_err("it is no scenario");
    assert_eq!(faults[0].rule.id(), "wrong_kind");
}
