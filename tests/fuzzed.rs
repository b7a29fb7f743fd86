//! The fuzzers' trials on the stable compiler: every kept input, and seeded changes of it.

use lightgap_tests::trials::{Changer, TRIALS};
use lightgap_tests::{at, lesson_ids, listed};
use std::panic::catch_unwind;
use std::path::Path;

/// Changes of each seed that are tried; fewer where each takes long; and inputs of chance for a trial
/// that needs no form.
const CHANGES: usize = 24;
const CHANGES_OF_SLIDERS: usize = 2;
const OF_CHANCE: usize = 48;
/// Bytes of an input of chance.
const LONG: usize = 160;

/// The files of a folder, in the order of their names; none where there is no folder.
fn files(folder: &Path) -> Vec<Vec<u8>> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut paths: Vec<_> = entries.map(|entry| entry.path()).collect();
    paths.sort();
    paths.iter().map(|path| std::fs::read(path).expect("a file")).collect()
}

/// What a trial begins with: its own corpus, and the files that the project has anyway.
fn seeds(trial: &str) -> Vec<Vec<u8>> {
    let read = |name: String| std::fs::read(at(&name)).expect("a file");
    let mut seeds = files(&at(&format!("tests/fuzz/corpus/{trial}")));
    match trial {
        "scenario" => {
            seeds.extend(listed().into_iter().map(|one| read(format!("scenarios/{}", one.file))));
            seeds.push(read("tests/hostile/whole.json".into()));
        }
        "lesson" => {
            let ids = lesson_ids().into_iter().take(2);
            seeds.extend(ids.map(|id| read(format!("scenarios/lessons/{id}.json"))));
        }
        "sliders" => seeds.extend((0..OF_CHANCE).map(|i| Changer::new(i as u64).bytes(LONG))),
        _ => {}
    }
    seeds
}

/// Tries an input; the input itself is named when a promise is broken.
fn hold(name: &str, trial: fn(&[u8]), input: &[u8]) {
    let broken = catch_unwind(|| trial(input)).is_err();
    assert!(!broken, "{name} breaks a promise on {:?}", String::from_utf8_lossy(input));
}

fn run(name: &str) {
    let (name, trial) = TRIALS.into_iter().find(|(known, _)| *known == name).expect("a trial");
    let (seeds, mut changer) = (seeds(name), Changer::new(20_261_125));
    assert!(!seeds.is_empty(), "{name} has no corpus");
    for seed in &seeds {
        hold(name, trial, seed);
    }
    let changes = if name == "sliders" { CHANGES_OF_SLIDERS } else { CHANGES };
    for _ in 0..changes {
        for seed in &seeds {
            hold(name, trial, &changer.changed(seed));
        }
    }
}

#[test]
fn any_text_of_a_scenario_is_read_or_refused() {
    run("scenario");
}

#[test]
fn any_text_of_a_lesson_is_read_or_refused() {
    run("lesson");
}

#[test]
fn any_table_of_limits_is_taken_or_refused() {
    run("table");
}

#[test]
fn any_address_leaves_a_chain_that_stands() {
    run("address");
}

#[test]
fn any_sequence_of_sliders_keeps_metal_out_of_metal() {
    run("sliders");
}

#[test]
fn the_changes_are_the_same_in_every_run_and_do_change() {
    let some = |seed| Changer::new(seed).changed(b"{\"format\": 1, \"title\": \"x\"}");
    assert_eq!(some(3), some(3));
    assert!((0..20).filter(|seed| some(*seed) != some(seed + 20)).count() > 15);
}
