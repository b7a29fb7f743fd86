//! What a report says of a drive, against closed forms and common practice. Published figures of wheels
//! and friction are in `checked/wheels.rs`.

use core::f64::consts::PI;
use lightgap::drive::ChainLine;
use lightgap::report::Report;
use lightgap::scenario::{Scenario, Value};
use lightgap_tests::scenarios;

/// One of the scenarios, its wheels so far aside, mm.
fn aside(id: &str, offset_mm: f64) -> Scenario {
    let scenario = scenarios().into_iter().find(|(found, _)| found == id).expect(id).1;
    scenario.with("drive.offset_mm", Value::from(offset_mm)).expect("any offset is a drive")
}

#[test]
fn a_report_of_a_straight_drive_has_the_closed_form_of_its_loss() {
    for id in ["ferry-winch", "ferry-trike", "wide-gap"] {
        let scenario = aside(id, 0.0);
        let drive = scenario.drive.expect("it has a drive");
        let chain = scenario.chain.chain();
        let line = ChainLine::of(&scenario).expect("it goes together");
        let (tight_n, slack_n) = (line.running.tight_n, line.running.slack_n);
        let teeth =
            1.0 / f64::from(drive.wheels.driver_teeth) + 1.0 / f64::from(drive.wheels.driven_teeth);
        let arm = 0.5 * chain.pin_diameter_mm / chain.pitch_mm;
        let sides = (tight_n + slack_n) / (tight_n - slack_n);
        let closed = 2.0 * PI * drive.friction.pin_friction * arm * teeth * sides;
        let section = Report::of(&scenario).drive.expect("it has a drive");
        assert!((section.loss_fraction_straight / closed - 1.0).abs() < 1e-12, "{id}");
        let offset = section.loss_fraction_offset.expect("it settles");
        assert!((offset / closed - 1.0).abs() < 1e-9, "{id} {offset} {closed}");
    }
}

#[test]
fn a_report_tells_the_free_offset_and_what_is_too_far() {
    let report = Report::of(&aside("ferry-trike", 2.0));
    let span = report.span.expect("it has a drive");
    assert_eq!(span.joints, 34);
    assert!((span.free_offset_mm - 34.0 * 0.5 * 0.2).abs() < 1e-9);
    assert!(span.rigid_pose_exists && span.shortfall_mm == 0.0);
    let rigid = span.rigid.expect("a rigid pose");
    assert_eq!([rigid.turn_rad.len(), rigid.pin_force_n.len(), rigid.face_force_n.len()], [34; 3]);
}

/// The trike's wheels close together: a span of a few links.
fn short() -> Scenario {
    let near = Value::from(160.0);
    aside("ferry-trike", 0.0).with("drive.centre_distance_mm", near).expect("a drive")
}

#[test]
fn a_report_tells_by_how_much_an_offset_is_too_large() {
    const WITHIN_MM: f64 = 1e-9;
    let span = Report::of(&short()).span.expect("it has a drive");
    let too_far_mm = span.max_offset_mm + span.tooth_float_mm + 0.5;
    let beyond = short().with("drive.offset_mm", Value::from(too_far_mm)).expect("a drive");
    let span = Report::of(&beyond).span.expect("it has a drive");
    assert!(!span.rigid_pose_exists && span.rigid.is_none());
    assert!((span.shortfall_mm - 0.5).abs() < WITHIN_MM, "{}", span.shortfall_mm);
}

#[test]
fn a_report_says_why_there_is_no_springy_strand() {
    let aside = |times: f64, span: &lightgap::report::SpanSection| {
        let far_mm = times * (span.max_offset_mm + span.tooth_float_mm);
        let far = short().with("drive.offset_mm", Value::from(far_mm)).expect("a drive");
        Report::of(&far)
    };
    let span = Report::of(&short()).span.expect("it has a drive");
    assert_eq!([span.rigid_missing, span.elastic_missing], [None; 2]);
    let report = aside(1.6, &span);
    let bent = report.span.expect("it has a drive");
    assert!(bent.elastic.is_none() && !bent.rigid_pose_exists);
    assert_eq!([bent.rigid_missing, bent.elastic_missing], [Some("no_pose"), Some("bent")]);
    let drive = report.drive.expect("it has a drive");
    assert_eq!((drive.loss_fraction_offset, drive.loss_offset_missing), (None, Some("bent")));
    let beyond = aside(1.05, &span).span.expect("it has a drive");
    assert!(beyond.elastic.is_some() && beyond.elastic_missing.is_none());
}

/// Sanity bands: common practice, no source. The test prints what the model says beside them and
/// holds its own figures, not the bands.
#[test]
fn what_common_practice_says_stands_beside_what_the_model_says() {
    let line = ChainLine::of(&aside("ferry-trike", 0.0)).expect("it goes together");
    let arms = line.face_arms();
    let pin_mm = line.running.rubbing.pin_radius_mm;
    let (flat, edge) = (arms.flat_mm / pin_mm, arms.inner_edge_mm / pin_mm);
    let sizes = &line.sizes;
    let (side_mm, pin_mm_wide) = (sizes.side_gap_mm(), sizes.pin_clearance_mm());
    println!("side gap: practice about 0.2 mm, give or take 0.05; here {side_mm:.3}");
    println!("pin clearance: practice under 0.001 in, 0.0254 mm; here {pin_mm_wide:.4} mm");
    assert!((side_mm - 0.2).abs() < 1e-9 && (pin_mm_wide - 0.025).abs() < 1e-9);
    println!("face lever arm over the pin's: practice nearly 2; flat {flat:.3}, edge {edge:.3}");
    assert!((flat - 1.7247).abs() < 5e-4 && (edge - 2.3056).abs() < 5e-4, "{flat} {edge}");
    const FREE_SHARE: f64 = 2e-3;
    let mut before = 1.0 - FREE_SHARE;
    for offset_mm in [3.0, 9.0, 16.0] {
        let line = ChainLine::of(&aside("ferry-trike", offset_mm)).expect("a drive");
        let times = line.own_cost().expect("it settles").multiple().expect("friction");
        println!("trike {offset_mm} mm aside: practice 2 to 3 at the extreme; here {times:.3}");
        assert!(times >= before, "{times} {before}");
        before = times;
    }
    assert!(before > 1.5, "{before}");
}
