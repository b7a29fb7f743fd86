//! The lessons: every number in their sentences comes from the kernel, and every guess has the
//! answer that the kernel gives.

use lightgap::chain::{Construction, Dimension};
use lightgap::contact::{Body, Kind, Settler};
use lightgap::posing::{ContactState, Mark, Posing};
use lightgap::report::Report;
use lightgap::scenario::{Scenario, Step};
use lightgap_tests::{at, lesson_ids, read_scenario, text_of};
use serde_json::Value as Json;
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// A step, the scenario it leads to and its report.
struct Stand {
    step: Step,
    scenario: Scenario,
    report: Json,
}

impl Stand {
    /// A number of the report or of the sizes by its path.
    fn number(&self, path: &str) -> f64 {
        self.value(path)
            .and_then(|value| value.as_f64())
            .unwrap_or_else(|| panic!("no number at {path}: {}", self.step.say))
    }

    fn word(&self, path: &str) -> String {
        let word = self.value(path).and_then(|value| value.as_str().map(str::to_owned));
        word.unwrap_or_else(|| panic!("no word at {path}: {}", self.step.say))
    }

    fn value(&self, path: &str) -> Option<Json> {
        if let Some(key) = path.strip_prefix("chain.") {
            return Some(Dimension::of_key(key)?.of(self.scenario.chain.chain()).into());
        }
        let found = self.report.pointer(&format!("/{}", path.replace('.', "/")))?;
        Some(found.clone())
    }

    /// Everything that is said in the step.
    fn texts(&self) -> Vec<&str> {
        let ask = self.step.ask.iter();
        let asked = ask.flat_map(|ask| {
            let choices = ask.choices.iter().map(String::as_str);
            choices.chain([ask.text.as_str(), ask.because.as_str()])
        });
        asked.chain([self.step.say.as_str()]).collect()
    }
}

/// Every lesson with its steps, each on what the steps before it changed.
static LESSONS: LazyLock<Vec<(String, Vec<Stand>)>> =
    LazyLock::new(|| lesson_ids().into_iter().map(|id| (id.clone(), stands(&id))).collect());

fn stands(id: &str) -> Vec<Stand> {
    stands_of(&format!("scenarios/lessons/{id}.json"))
}

fn stands_of(id: &str) -> Vec<Stand> {
    let text = text_of(id);
    let mut scenario = read_scenario(&text).unwrap_or_else(|faults| panic!("{id}: {faults:?}"));
    let steps = std::mem::take(&mut scenario.lesson);
    let mut after = |step: Step| {
        let mut whole = scenario.write();
        for (path, value) in &step.set {
            whole.put(path, value.clone());
        }
        scenario = Scenario::read(&whole).unwrap_or_else(|faults| panic!("{id}: {faults:?}"));
        let report = serde_json::to_value(Report::of(&scenario)).expect("plain data");
        Stand { step, scenario: scenario.clone(), report }
    };
    steps.into_iter().map(&mut after).collect()
}

/// The names in braces of a text, and the text without them.
fn places(text: &str) -> (Vec<String>, String) {
    let (mut names, mut rest) = (Vec::new(), String::new());
    let mut pieces = text.split('{');
    rest.push_str(pieces.next().unwrap_or_default());
    for piece in pieces {
        let (name, after) =
            piece.split_once('}').unwrap_or_else(|| panic!("an open brace: {text}"));
        names.push(name.to_owned());
        rest.push_str(after);
    }
    (names, rest)
}

#[test]
fn the_list_names_every_lesson_once() {
    let mut named: Vec<String> = lesson_ids().iter().map(|id| format!("{id}.json")).collect();
    named.push("index.json".to_owned());
    named.sort();
    let folder = std::fs::read_dir(at("scenarios/lessons")).expect("the folder");
    let name = |entry: std::io::Result<std::fs::DirEntry>| {
        entry.expect("an entry").file_name().to_string_lossy().into_owned()
    };
    let mut there: Vec<String> = folder.map(name).collect();
    there.sort();
    assert_eq!(named, there);
}

#[test]
fn a_lesson_has_five_to_nine_steps_and_asks_at_least_two_guesses() {
    for (id, stands) in &*LESSONS {
        assert!((5..=9).contains(&stands.len()), "{id} has {} steps", stands.len());
        let asked = stands.iter().filter(|stand| stand.step.ask.is_some()).count();
        assert!(asked >= 2, "{id} asks {asked}");
        assert!(
            stands.iter().any(|stand| stand.step.light.is_some()
                || stand.step.look.is_some()
                || stand.step.question.is_some()),
            "{id} points nowhere"
        );
    }
}

#[test]
fn every_number_of_a_lesson_is_the_kernels() {
    for (id, stands) in &*LESSONS {
        for stand in stands {
            for text in stand.texts() {
                let (names, rest) = places(text);
                assert!(!rest.contains(|c: char| c.is_ascii_digit()), "{id}: a number in {text}");
                for name in names {
                    assert!(stand.number(&name).is_finite(), "{id}: {name}");
                }
            }
        }
    }
}

#[test]
fn a_step_points_at_a_face_or_a_picture() {
    let drawn = ["give", "touch"];
    for (id, stands) in &*LESSONS {
        let mut question = "give";
        for (i, stand) in stands.iter().enumerate() {
            question = stand.step.question.unwrap_or(question);
            let points = stand.step.light.is_some() || stand.step.look.is_some();
            assert!(points || !drawn.contains(&question), "{id}, step {}", i + 1);
        }
    }
}

#[test]
fn the_crooked_line_ends_with_the_narrow_chain_and_the_oil_with_dust_in_a_valley() {
    let of = |id: &str| &LESSONS.iter().find(|(each, _)| each == id).expect("a lesson").1;
    let [.., before, kept, narrow] = &of("the-crooked-line")[..] else { panic!("steps") };
    let free = |stand: &Stand| stand.number("span.free_offset_mm");
    let width = |stand: &Stand| stand.number("chain.pin_length_mm");
    assert!(width(kept) < width(before) && (free(kept) - free(before)).abs() < SAME);
    assert!(width(narrow) < width(before) && free(narrow) < 0.5 * free(before));
    let dust = of("where-the-oil-goes").last().expect("a step");
    assert!(dust.number("surface.seated_fraction") > 0.25);
    assert!(dust.step.say.ends_with("lies in a valley of the surface."));
}

#[test]
fn a_lesson_made_in_the_page_is_read_and_its_numbers_are_the_kernels() {
    // What tests/page/support/making.js clicks together is compared with this file byte for byte.
    let stands = stands_of("tests/page/made-lesson.json");
    assert_eq!(stands.len(), 2);
    let texts = stands.iter().flat_map(|stand| stand.texts().into_iter().map(move |t| (stand, t)));
    let named: Vec<f64> = texts
        .flat_map(|(stand, text)| places(text).0.into_iter().map(|name| stand.number(&name)))
        .collect();
    assert_eq!(named.len(), 3);
    assert!(gap(&stands[1]) > gap(&stands[0]));
}

#[test]
fn the_light_of_a_step_is_a_contact_of_its_chain() {
    for (id, stands) in &*LESSONS {
        for stand in stands {
            let Some(light) = stand.step.light else { continue };
            let settler = Settler::plan(stand.scenario.chain.chain());
            assert!(settler.meetings().iter().any(|m| m.contact == light), "{id}: {light:?}");
        }
    }
}

/// Two numbers of reports that are the same but for rounding.
const SAME: f64 = 1e-9;

/// Why the right answer of a guess is right: the lesson, its step from 1, and what must hold of the
/// steps about the guess, the step itself being the second argument.
type Reason = fn(&[Stand], usize) -> bool;
const REASONS: &[(&str, usize, Reason)] = &[
    ("inside-one-link", 1, |stands, i| bodies(&stands[i]) == 5),
    ("inside-one-link", 4, |stands, i| !rollers_touch_when_taut(&stands[i])),
    ("why-so-little", 1, |stands, i| stands[i].word("play.yaw_limited_by") == "pin"),
    ("why-so-little", 3, |stands, i| {
        let [before, after] = turn(stands, i);
        let wider = gap(&stands[i + 1]) / gap(&stands[i]);
        (before - after).abs() < SAME && (wider - 2.0).abs() < ABOUT
    }),
    ("why-so-little", 6, |stands, i| {
        let [before, after] = turn(stands, i);
        before > SAME && after == 0.0 && gap(&stands[i + 1]) > gap(&stands[0])
    }),
    ("clearance-is-not-tolerance", 3, |stands, i| {
        let [before, after] = turn(stands, i);
        let [narrow, wide] = [range(&stands[i]), range(&stands[i + 1])];
        after > before + SAME && (narrow - wide).abs() < ABOUT * narrow
    }),
    ("clearance-is-not-tolerance", 5, |stands, i| {
        let [before, after] = turn(stands, i);
        let [wide, narrow] = [range(&stands[i]), range(&stands[i + 1])];
        (before - after).abs() < SAME && (2.0 * narrow - wide).abs() < ABOUT * wide
    }),
    ("the-crooked-line", 1, |stands, i| {
        let within = offset_mm(&stands[i + 1]) < stands[i].number("span.free_offset_mm");
        let loss = |stand: &Stand| stand.number("drive.loss_fraction_offset");
        within && (loss(&stands[i + 1]) / loss(&stands[i]) - 1.0).abs() < FRICTION_UNCHANGED
    }),
    ("the-crooked-line", 3, |stands, i| {
        let twice = 2.0 * stands[i].number("span.free_offset_mm");
        (1.0..1.1).contains(&worst(&stands[i + 1])) && offset_mm(&stands[i + 1]) > twice
    }),
    ("the-crooked-line", 4, |stands, i| {
        let [crooked, straight] = ["offset", "straight"]
            .map(|way| stands[i + 1].number(&format!("drive.loss_fraction_{way}")));
        worst(&stands[i + 1]) > 2.0 && crooked - straight < 0.02
    }),
    ("a-thousand-from-the-press", 1, |stands, i| {
        let share = |part: &str| stands[i].number(&format!("fit.demands.0.share_fraction.{part}"));
        let others = ["outer_spacing_mm", "pin_diameter_mm", "bore_mm"];
        others.iter().all(|other| share("inner_plate_mm") > share(other))
    }),
    ("a-thousand-from-the-press", 2, |stands, i| {
        let worst = stands[i].number("fit.demands.0.worst_low");
        let middle = stands[i].number("fit.demands.0.mean");
        // One set in a thousand lies below this, and it is a quarter of the way from the worst.
        stands[i].number("fit.demands.0.percentiles.0.share_fraction") <= 0.001
            && stands[i].number("fit.demands.0.percentiles.0.value") - worst
                > 0.25 * (middle - worst)
    }),
    ("a-thousand-from-the-press", 3, |stands, i| {
        let fits = |i: usize| stands[i].number("fit.demands.0.yield_fraction");
        fits(i + 2) > fits(i + 1) && fits(i + 1) > fits(i)
    }),
    ("a-thousand-from-the-press", 6, |stands, i| {
        let of = |key: &str| stands[i].number(&format!("fit.matching.{key}"));
        of("leftover_fraction") > 0.0 && of("yield_after") > of("yield_before")
    }),
    ("wear-you-can-measure", 1, |stands, i| {
        let inner = |i: usize| stands[i].number("wear.inner_pitch_mm");
        (inner(i) - inner(i + 1)).abs() < SAME
            && stands[i + 1].number("wear.elongation_fraction") > 0.0
    }),
    ("wear-you-can-measure", 2, |stands, i| {
        let of = |key: &str| stands[i].number(&format!("wear.{key}_mm"));
        let grown = of("outer_pitch") - stands[i].number("chain.pitch_mm");
        (of("inner_pitch") - stands[i].number("chain.pitch_mm")).abs() < SAME
            && (grown - 2.0 * of("joint_wear")).abs() < SAME
    }),
    ("wear-you-can-measure", 3, |stands, i| {
        let of = |key: &str| stands[i].number(&format!("wear.{key}_reading_fraction"));
        of("gauge") > of("rule")
    }),
    ("where-the-oil-goes", 1, |stands, i| {
        let bristle = |face: &str| face_of(&stands[i], face)["bristle_fraction"].as_f64();
        bristle("first.side-gap.near") > Some(0.5) && bristle("first.pin-bore.near") == Some(0.0)
    }),
    ("where-the-oil-goes", 2, |stands, i| {
        face_of(&stands[i], "first.pin-bore.near")["particle_fraction"].as_f64() > Some(0.5)
    }),
    ("where-the-oil-goes", 3, |stands, i| {
        let fill_s = face_of(&stands[i], "first.pin-bore.near")["fill_time_s"].as_f64();
        fill_s.is_some_and(|s| (15.0..60.0).contains(&s))
    }),
    ("where-the-oil-goes", 6, |stands, i| {
        let seated = |i: usize| stands[i].number("surface.seated_fraction");
        seated(i) > 0.25 && seated(i + 1) < 0.01
    }),
];

/// A face of the report's reach by its name; the sentences name them by their places, held here.
fn face_of<'a>(stand: &'a Stand, name: &str) -> &'a Json {
    let faces = stand.report["reach"]["faces"].as_array().expect("a list");
    assert_eq!(faces[0]["face"], "first.side-gap.near");
    assert_eq!(faces[1]["face"], "first.pin-bore.near");
    faces.iter().find(|face| face["face"] == name).unwrap_or_else(|| panic!("no face {name}"))
}

/// Sizes in the files are rounded.
const ABOUT: f64 = 0.01;
/// model.md section 4: within the free offset pin forces sum to the pull to 0.2 %.
const FRICTION_UNCHANGED: f64 = 0.002;

/// How far the wheels are out of line.
fn offset_mm(stand: &Stand) -> f64 {
    stand.scenario.drive.as_ref().expect("a drive").wheels.offset_mm
}

/// How many bodies take part in the contacts of a pitch.
fn bodies(stand: &Stand) -> usize {
    let settler = Settler::plan(stand.scenario.chain.chain());
    let bushed = stand.scenario.chain.chain().construction == Construction::Bushed;
    let one_part = |body| if bushed && body == Body::InnerNear { Body::InnerFar } else { body };
    let all = settler.meetings().iter().flat_map(|m| [m.corner_body, m.face_body]);
    all.map(|body| one_part(body).index()).collect::<BTreeSet<_>>().len()
}

/// Whether a roller touches anything in a straight chain under pull.
fn rollers_touch_when_taut(stand: &Stand) -> bool {
    let chain = stand.scenario.chain.chain();
    let mut posing = Posing::new(chain, chain, 1.0, 0.0);
    posing.set_taut(true);
    let touching = |contact: &&ContactState| contact.mark != Mark::Open;
    let mut touches = posing.contacts().iter().filter(touching);
    assert!(touches.clone().any(|c| c.contact.kind == Kind::PinBore), "the pull goes by the pins");
    touches.any(|c| matches!(c.contact.kind, Kind::RollerBarrel | Kind::RollerPlate))
}

/// The turn before and after a guess.
fn turn(stands: &[Stand], i: usize) -> [f64; 2] {
    [i, i + 1].map(|i| stands[i].number("play.turn_limit_rad"))
}

/// How far the turn strays over the limits.
fn range(stand: &Stand) -> f64 {
    let [most, least] = ["loosest", "tightest"]
        .map(|end| stand.number(&format!("range.{end}.play.turn_limit_rad")));
    most - least
}

fn gap(stand: &Stand) -> f64 {
    stand.number("geometry.side_gap_mm")
}

/// The multiple of the joint that rubs hardest.
fn worst(stand: &Stand) -> f64 {
    let all = &stand.report["span"]["elastic"]["friction_multiple"];
    all.as_array().expect("a list").iter().filter_map(Json::as_f64).fold(0.0, f64::max)
}

#[test]
fn every_guess_has_the_answer_of_the_kernel() {
    for (id, stands) in &*LESSONS {
        for (i, _) in stands.iter().enumerate().filter(|(_, stand)| stand.step.ask.is_some()) {
            let reason = REASONS.iter().find(|(lesson, step, _)| lesson == id && *step == i + 1);
            let (.., holds) = reason.unwrap_or_else(|| panic!("{id}, step {}: no reason", i + 1));
            assert!(holds(stands, i), "{id}, step {}", i + 1);
        }
    }
}

#[test]
fn the_list_has_the_titles_of_the_files() {
    let list: Vec<Json> =
        serde_json::from_str(&text_of("scenarios/lessons/index.json")).expect("the list");
    for one in list {
        let file = one["file"].as_str().expect("a file");
        let lesson: Json =
            serde_json::from_str(&text_of(&format!("scenarios/lessons/{file}"))).expect("json");
        assert_eq!(one["title"], lesson["title"]);
        assert_eq!(file, format!("{}.json", one["id"].as_str().expect("an id")));
    }
}

#[test]
fn the_lesson_that_the_readme_shows_is_one() {
    let readme = text_of("README.md");
    let shown = readme.split("```json\n").nth(1).and_then(|rest| rest.split("```").next());
    let scenario = read_scenario(shown.expect("an example")).expect("a scenario");
    let [first, second] = &scenario.lesson[..] else { panic!("{} steps", scenario.lesson.len()) };
    assert!(first.ask.is_some() && second.way == Some("aside"));
    let report = Report::of(&scenario).play.expect("limits");
    assert_eq!(report.yaw_limited_by, "pin");
}

/// The texts of a file that a language has of its own: those of members that hold sentences.
fn texts(file: &Json) -> Json {
    const SENTENCES: [&str; 6] = ["title", "about", "source", "say", "text", "because"];
    match file {
        Json::Array(items) => items.iter().map(texts).collect(),
        Json::Object(members) => {
            let kept = members.iter().filter_map(|(key, value)| match key.as_str() {
                "lesson" | "ask" => Some((key.clone(), texts(value))),
                "choices" => Some((key.clone(), value.clone())),
                key => SENTENCES.contains(&key).then(|| (key.to_owned(), value.clone())),
            });
            Json::Object(kept.collect())
        }
        other => other.clone(),
    }
}

/// Nothing where both have the same texts in the same places, with the same numbers in them.
fn unlike(ours: &Json, other: &Json, path: &str) -> Vec<String> {
    let below = |key: &dyn std::fmt::Display| format!("{path}.{key}");
    match (ours, other) {
        (Json::String(ours), Json::String(other)) => {
            let same = !other.trim().is_empty() && named_in(ours) == named_in(other);
            if same { Vec::new() } else { vec![format!("{path}: {ours} | {other}")] }
        }
        (Json::Array(ours), Json::Array(other)) if ours.len() == other.len() => {
            let pairs = ours.iter().zip(other).enumerate();
            pairs.flat_map(|(i, (ours, other))| unlike(ours, other, &below(&i))).collect()
        }
        (Json::Object(ours), Json::Object(other)) if ours.keys().eq(other.keys()) => {
            ours.iter().flat_map(|(key, each)| unlike(each, &other[key], &below(key))).collect()
        }
        _ => vec![format!("{path}: {ours} | {other}")],
    }
}

/// The `{paths}` of a text.
fn named_in(text: &str) -> BTreeSet<&str> {
    text.split('{').skip(1).filter_map(|part| Some(part.split_once('}')?.0)).collect()
}

#[test]
fn every_scenario_and_lesson_is_told_in_every_language() {
    let read = |path: &str| -> Json { serde_json::from_str(&text_of(path)).expect(path) };
    let menu = lightgap_tests::listed().into_iter().map(|listed| listed.file);
    let lessons = lesson_ids().into_iter().map(|id| format!("lessons/{id}.json"));
    for name in menu.chain(lessons) {
        let (ours, other) =
            (read(&format!("scenarios/{name}")), read(&format!("scenarios/de/{name}")));
        assert_eq!(unlike(&texts(&ours), &other, ""), [""; 0], "{name}");
    }
    let titles = |list: &Json| Json::from_iter(list.as_array().expect("a list").iter().map(texts));
    let (ours, other) =
        (read("scenarios/lessons/index.json"), read("scenarios/de/lessons/index.json"));
    assert_eq!(unlike(&titles(&ours), &other, ""), [""; 0]);
}
