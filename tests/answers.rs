//! Every answer has its sentence, and every place of the sentence its number.

use lightgap::answer::{Answer, give, line, ranges, touch};
use lightgap::chain::Dimension;
use lightgap::drive::{ChainLine, Costs, Missing};
use lightgap::error::{Error, Rule};
use lightgap::posing::{Ask, Mode, Posing};
use lightgap::scenario::{Scenario, Value};
use lightgap_tests::{scenarios, words};
use serde_json::Value as Json;

/// The names in braces of a sentence.
fn places(sentence: &str) -> Vec<&str> {
    sentence.split('{').skip(1).filter_map(|rest| rest.split('}').next()).collect()
}

/// The sentences of an answer: for both constructions, and what nobody expects.
fn sentences<'a>(words: &'a Json, answer: &Answer) -> Vec<&'a str> {
    let id = answer.id;
    let ids = ["", ".collared", ".bushed"];
    let named =
        ids.iter().flat_map(|end| [format!("answer.{id}{end}"), format!("surprise.{id}{end}")]);
    named.filter_map(|id| words[id].as_str()).collect()
}

fn check(words: &Json, answer: &Answer) {
    assert!(words[format!("answer.{}", answer.id)].is_string(), "{} has no sentence", answer.id);
    for sentence in sentences(words, answer) {
        for place in places(sentence) {
            let number = answer.numbers.iter().find(|(name, _)| *name == place);
            let (_, number) = number.unwrap_or_else(|| panic!("{}: {place}", answer.id));
            assert!(number.is_finite() && *number >= 0.0, "{} {place} {number}", answer.id);
        }
    }
}

/// Every scenario, and each with one gap shut.
fn situations() -> Vec<Scenario> {
    let mut all = Vec::new();
    for (_, scenario) in scenarios() {
        let sizes = *scenario.chain.chain().sizes();
        let shut = [
            ("chain.bore_mm", sizes.pin_diameter_mm),
            ("chain.bore_mm", sizes.pin_diameter_mm + 0.2),
            ("chain.outer_spacing_mm", sizes.inner_link_width_mm()),
            ("chain.outer_spacing_mm", sizes.inner_link_width_mm() - 0.01),
            ("chain.roller_length_mm", sizes.inner_width_mm + 0.01),
            ("chain.roller_bore_mm", sizes.barrel_mm - 0.01),
        ];
        let changed = shut.iter().filter_map(|(path, mm)| {
            let with = scenario.with(path, Value::from(*mm));
            with.ok()
        });
        all.extend(changed);
        all.push(scenario);
    }
    all
}

#[test]
fn every_answer_has_its_sentence_and_its_numbers() {
    let words = words();
    let mut ids: Vec<&str> = Vec::new();
    for scenario in situations() {
        let answers = give(scenario.chain.chain()).into_iter().chain(ranges(&scenario));
        for answer in answers {
            check(&words, &answer);
            ids.push(answer.id);
        }
    }
    ids.sort_unstable();
    ids.dedup();
    for expected in ["turn.pin", "turn.face", "turn.none.pin", "turn.none.face", "aside.none"] {
        assert!(ids.contains(&expected), "{expected} never came up");
    }
    for expected in ["lean.plates.face", "range.turn", "apart.side_gap", "apart.roller_barrel"] {
        assert!(ids.contains(&expected), "{expected} never came up");
    }
}

#[test]
fn what_touches_is_said_at_every_stop() {
    let words = words();
    for (id, scenario) in scenarios() {
        let chain = scenario.chain.chain();
        if !chain.goes_together() {
            continue;
        }
        let mut posing = Posing::new(chain, chain, 1.0, 0.5);
        for &mode in &[Mode::Turn, Mode::Aside, Mode::Twist] {
            posing.put(Ask::Share { mode, share: 1.0 });
            let answers = touch(posing.contacts());
            assert_ne!(answers[0].id, "touch.none", "{id} {mode:?}");
            answers.iter().for_each(|answer| check(&words, answer));
        }
    }
}

#[test]
fn what_a_crooked_line_costs_is_said_at_every_offset() {
    let words = words();
    let trike = scenarios().into_iter().find(|(id, _)| id == "ferry-trike").expect("a trike").1;
    let near = Value::from(160.0);
    let short = trike.with("drive.centre_distance_mm", near).expect("a drive");
    let line_of = |scenario: &Scenario| ChainLine::of(scenario).expect("it goes together");
    let straight = line_of(&short);
    let (free_mm, reach_mm) = (straight.free_mm(), straight.largest_mm() + straight.float_mm());
    let offset = |mm: f64| short.with("drive.offset_mm", Value::from(mm)).expect("a drive");
    let slippery = offset(0.9 * reach_mm).with("drive.pin_friction", Value::from(0.0));
    let cases = [
        (offset(0.5 * free_mm), "line.free"),
        (offset(free_mm + 0.02), "line.turning"),
        (offset(0.97 * reach_mm), "line.bearing"),
        (offset(reach_mm + 0.1), "line.beyond"),
        (slippery.expect("a drive"), "line.smooth"),
        (offset(1.6 * reach_mm), "line.bent"),
    ];
    for (scenario, expected) in cases {
        let answers = line(&Costs::of(&line_of(&scenario)));
        assert_eq!(answers[0].id, expected, "{:?}", answers[0]);
        answers.iter().for_each(|answer| check(&words, answer));
        assert!(answers.iter().any(|answer| answer.id == "line.laboratory"));
    }
    let costs = Costs::of(&line_of(&offset(0.97 * reach_mm)));
    for (missing, id) in [
        (Missing::NoPose, "line.no_pose"),
        (Missing::Bent, "line.bent"),
        (Missing::Unsettled, "line.unsettled"),
        (Missing::Locked, "line.locked"),
    ] {
        // Rigid joints never stand in for springy ones that found no rest.
        let answers = line(&Costs { elastic: Err(missing), ..costs });
        assert_eq!(answers[0].id, id);
        answers.iter().for_each(|answer| check(&words, answer));
        assert!(answers.iter().all(|a| a.numbers.iter().all(|(name, _)| *name != "loss_w")));
    }
}

/// One of every rule that a reader can refuse by.
fn rules() -> Vec<Rule> {
    let (limit, of, choices) = (1.0, "pitch", &["a", "b"] as &[_]);
    vec![
        Rule::Finite,
        Rule::Positive,
        Rule::NotNegative,
        Rule::AtMost { limit },
        Rule::AtLeast { limit },
        Rule::BelowSize { limit, of },
        Rule::AtMostSize { limit, of },
        Rule::AboveSize { limit, of },
        Rule::AtLeastSize { limit, of },
        Rule::Whole,
        Rule::Missing,
        Rule::UnknownKey,
        Rule::WrongKind { expected: "number" },
        Rule::OneOf { choices },
        Rule::ExactlyOne { choices },
        Rule::AtLeastOne { choices },
        Rule::NotEmpty,
        Rule::AtMostCharacters { limit },
        Rule::AtMostItems { limit },
        Rule::Repeated,
        Rule::KnownDimension,
        Rule::KnownQuantity,
        Rule::KnownContact,
        Error::syntax("", 1, 1).rule,
    ]
}

#[test]
fn every_rule_has_its_sentence_and_every_place_its_term() {
    let words = words();
    for rule in rules() {
        let sentence = words[format!("fault.{}", rule.id())].as_str();
        let sentence = sentence.unwrap_or_else(|| panic!("{} has no sentence", rule.id()));
        for place in places(sentence) {
            let known = ["field", "value"].contains(&place);
            let named = rule.terms().iter().any(|(name, _)| *name == place);
            assert!(known || named, "{}: {place}", rule.id());
        }
    }
}

#[test]
fn every_dimension_has_its_word() {
    let words = words();
    for dimension in Dimension::ALL {
        assert!(words[format!("size.{}", dimension.key())].is_string(), "{}", dimension.key());
    }
}
