use super::{Pair, QUESTIONS, figures, pairs, spans};
use crate::report::Report;
use crate::scenario::Scenario;
use crate::scenario::Value;
use crate::scenario::sample::aside;

/// A drive of which every question can be asked.
fn whole() -> Scenario {
    let none = || Value::object([]);
    let demand =
        Value::object([("quantity", Value::text("side_gap_mm")), ("at_least", Value::from(0.12))]);
    let limit = Value::object([
        ("dimension", Value::text("outer_spacing_mm")),
        ("minus", Value::from(0.05)),
        ("plus", Value::from(0.05)),
    ]);
    let told = [
        ("demands", Value::List(vec![demand])),
        ("limits", Value::List(vec![limit])),
        ("sampling", Value::object([("sets", Value::from(500.0))])),
        ("reach", none()),
        ("surface", none()),
    ];
    told.into_iter()
        .fold(aside(10.0), |scenario, (key, value)| scenario.with(key, value).expect("a scenario"))
}

#[test]
fn every_question_has_figures_and_a_chain_beside_itself_has_not_changed() {
    let scenario = whole();
    for question in QUESTIONS {
        let told = figures(question, &scenario, None);
        assert!(told.len() >= 3, "{question}");
        for Pair { key, a, b, change, way } in pairs(&told, &told) {
            assert_eq!((a, change, way), (b, Some(0.0), "same"), "{question} {key}");
        }
    }
}

#[test]
fn half_the_side_gap_is_told_by_its_size_in_what_it_changes_and_in_nothing_else() {
    let a = whole();
    let gap_mm = a.chain.chain().side_gap_mm();
    let narrower_mm = a.chain.chain().outer_spacing_mm - 0.5 * gap_mm;
    let b = a.with("chain.outer_spacing_mm", Value::from(narrower_mm)).expect("a chain");
    let told = ["give", "line", "surface"]
        .map(|question| pairs(&figures(question, &a, None), &figures(question, &b, None)));
    let of = |question: &str, key: &str| {
        let at = usize::from(question == "line") + 2 * usize::from(question == "surface");
        *told[at].iter().find(|pair| pair.key == key).expect("the figure")
    };
    assert!((of("give", "side_gap_mm").change.unwrap() + 0.5 * gap_mm).abs() < 1e-12);
    assert!((of("give", "offset_limit_mm").change.unwrap() + 0.25 * gap_mm).abs() < 1e-12);
    assert_eq!(of("give", "pin_clearance_mm").way, "same");
    assert_eq!(of("line", "free_aside_mm").way, "less");
    assert!(of("line", "friction_multiple").change.unwrap() > 0.0);
    assert_eq!(of("surface", "seated_fraction").way, "same");
    let (before, after) = (Report::of(&a), Report::of(&b));
    let free = |report: &Report| {
        let span = report.span.as_ref().unwrap();
        span.free_offset_mm + span.tooth_float_mm
    };
    assert_eq!(of("line", "free_aside_mm").b, Some(free(&after)));
    assert_eq!(of("line", "free_aside_mm").a, Some(free(&before)));
}

#[test]
fn a_chain_without_a_drive_has_nothing_beside_one_with_it() {
    let pair = pairs(&[("free_offset_mm", 1.0)], &[]);
    let only = Pair { key: "free_offset_mm", a: Some(1.0), b: None, change: None, way: "none" };
    assert_eq!(pair, [only]);
}

#[test]
fn the_tightest_chain_of_the_limits_is_compared_where_it_stands_on_the_stage() {
    let scenario = whole();
    let tightest = crate::scenario::Corner::of_key("tightest");
    let [middle, tight] = [None, tightest].map(|corner| figures("give", &scenario, corner)[0]);
    assert_eq!(middle.0, "side_gap_mm");
    assert!((middle.1 - tight.1 - 0.05).abs() < 1e-12);
}

#[test]
fn every_question_is_asked_of_the_chain_that_stands_but_for_the_one_about_the_limits() {
    let scenario = whole();
    let loosest = Some(crate::scenario::Corner::Loosest);
    for question in QUESTIONS {
        let told = figures(question, &scenario, loosest);
        for span in spans(question, &scenario) {
            let figure = told.iter().find(|(key, _)| *key == span.key).map(|(_, value)| *value);
            assert_eq!(figure, span.loosest, "{question} {}", span.key);
        }
    }
    assert_eq!(figures("fit", &scenario, loosest), figures("fit", &scenario, None));
}

#[test]
fn every_question_tells_what_its_limits_leave_open_and_nothing_without_limits() {
    let limited = whole();
    let told = |question| spans(question, &limited);
    for question in ["give", "touch", "line", "reach", "width"] {
        let gap = told(question);
        assert!(!gap.is_empty(), "{question}");
        assert!(gap.iter().all(|span| span.tightest != span.loosest), "{question}");
    }
    let find = |question, key: &str| {
        let span = told(question).into_iter().find(|span| span.key == key).expect("the figure");
        (span.tightest.expect("a chain"), span.loosest.expect("a chain"))
    };
    let gap_mm = limited.chain.chain().side_gap_mm();
    let (tight_mm, loose_mm) = find("touch", "side_gap_mm");
    assert!(
        (tight_mm - (gap_mm - 0.05)).abs() < 1e-12 && (loose_mm - (gap_mm + 0.05)).abs() < 1e-12
    );
    // Free aside is n a/2 and what the teeth take up: by as much further as the gap is wider.
    let (tight_free_mm, loose_free_mm) = find("line", "free_aside_mm");
    let (tight_width_mm, loose_width_mm) = find("width", "free_offset_mm");
    assert!(loose_free_mm > tight_free_mm && loose_width_mm > tight_width_mm);
    // No size that a surface depends on has limits.
    assert!(told("surface").is_empty());
    let none = limited.with("limits", Value::List(Vec::new())).expect("a scenario");
    assert!(QUESTIONS.iter().all(|question| spans(question, &none).is_empty()));
}
