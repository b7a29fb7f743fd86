use super::*;

/// The smallest scenario.
fn smallest() -> Value {
    Value::object([
        ("format", Value::from(1.0)),
        ("title", Value::text("A chain")),
        (
            "chain",
            Value::object([
                ("pitch_mm", Value::from(12.7)),
                ("roller_diameter_mm", Value::from(7.75)),
                ("inner_width_mm", Value::from(6.35)),
                ("pin_diameter_mm", Value::from(3.58)),
            ]),
        ),
    ])
}

/// The paths and rules of all faults.
fn faults(value: &Value) -> Vec<(String, &'static str)> {
    let faults = Scenario::read(value).expect_err("it is faulty");
    faults.into_iter().map(|fault| (fault.field, fault.rule.id())).collect()
}

#[test]
fn only_format_title_and_chain_are_required() {
    let scenario = Scenario::read(&smallest()).expect("it is whole");
    assert_eq!(scenario.load, None);
    assert_eq!(scenario.chain.stated().len(), 4);
    assert_eq!(scenario.chain.defaulted().count(), Dimension::ALL.len() - 4);
    let nothing = faults(&Value::object([]));
    let paths: Vec<_> = nothing.iter().map(|(path, rule)| (path.as_str(), *rule)).collect();
    assert_eq!(paths, [("format", "missing"), ("title", "missing"), ("chain", "missing")]);
}

#[test]
fn a_length_may_be_given_in_inches_and_other_numbers_may_not() {
    let mut value = smallest();
    value.put("chain.pitch_mm.inch", Value::from(0.5));
    let scenario = Scenario::read(&value).expect("it is whole");
    assert_eq!(scenario.chain.chain().pitch_mm.to_bits(), 12.7_f64.to_bits());
    value.put("load.tension_n.inch", Value::from(0.5));
    assert_eq!(faults(&value), [("load.tension_n".to_owned(), "wrong_kind")]);
}

#[test]
fn a_stated_size_that_is_none_does_not_drag_its_defaults_along() {
    let mut value = smallest();
    value.put("chain.pitch_mm", Value::from(-1.0));
    value.put("chain.bore_mm", Value::text("wide"));
    let expected = [("chain.bore_mm", "wrong_kind"), ("chain.pitch_mm", "positive")]
        .map(|(path, rule)| (path.to_owned(), rule));
    assert_eq!(faults(&value), expected);
}

#[test]
fn a_change_that_makes_a_fault_leaves_the_scenario_as_it_was() {
    let scenario = Scenario::read(&smallest()).expect("it is whole");
    let wider = scenario.with("chain.bore_mm", Value::from(3.7)).expect("it can be built");
    assert!((wider.chain.chain().pin_clearance_mm() - 0.12).abs() < 1e-12);
    assert!(scenario.with("chain.bore_mm", Value::from(30.0)).is_err());
    assert!(scenario.with("chain.bore", Value::from(3.7)).is_err());
    let back = wider.with("chain.bore_mm", Value::Null).expect("it can be built");
    assert_eq!(back, scenario);
}

#[test]
fn faults_of_hostile_files_are_counted_to_a_hundred() {
    let many = (0..1000).map(|i| (format!("key {i}"), Value::Null)).collect();
    assert_eq!(faults(&Value::Object(many)).len(), 100);
}

#[test]
fn limits_are_refused_where_their_extremes_are_no_chain() {
    let mut value = smallest();
    let limit =
        Value::object([("dimension", Value::text("pin_diameter_mm")), ("plus", Value::from(2.0))]);
    value.put("limits", Value::List(vec![limit]));
    assert!(faults(&value).iter().all(|(path, _)| path.starts_with("limits")));
}

#[test]
fn a_step_of_a_lesson_that_leads_nowhere_is_refused_with_its_path() {
    let mut value = smallest();
    let change = Value::object([("chain.pitch_mm", Value::from(0.0))]);
    let step = Value::object([("say", Value::text("Look.")), ("set", change)]);
    value.put("lesson", Value::List(vec![step]));
    assert_eq!(faults(&value), [("lesson[0].set.chain.pitch_mm".to_owned(), "positive")]);
}

#[test]
fn a_bush_of_no_stated_length_stays_flush_with_plates_at_their_limits() {
    let mut value = smallest();
    let limit = Value::object([
        ("dimension", Value::text("inner_plate_mm")),
        ("minus", Value::from(0.01)),
        ("plus", Value::from(0.01)),
    ]);
    value.put("limits", Value::List(vec![limit]));
    let scenario = Scenario::read(&value).expect("it is whole");
    let middle = scenario.chain.chain().sizes();
    for &corner in Corner::ALL {
        let sizes = corner.sizes(middle, &scenario.limits);
        let short_mm = sizes.inner_link_width_mm() - sizes.bearing_length_mm;
        assert_eq!(short_mm.to_bits(), 0.0_f64.to_bits(), "{corner:?}");
        assert!((sizes.inner_link_width_mm() - middle.inner_link_width_mm()).abs() > 0.01);
    }
}
