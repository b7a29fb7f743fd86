use super::*;
use crate::error::Rule;
use crate::report::DriveSection;
use crate::scenario::Value;
use crate::scenario::sample::aside;
use crate::strand::Ends;

/// Pin forces of a free strand sum to the pull to within this share: in a slightly slanted link a
/// little of the pull is the faces'.
const FREE_SHARE: f64 = 2e-3;

#[test]
fn power_and_slack_make_the_tight_pull() {
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    assert!((line.running.tight_n - 258.6).abs() < 0.05, "{}", line.running.tight_n);
    assert_eq!(line.joints(), 34);
}

#[test]
fn the_teeth_take_up_the_first_of_an_offset() {
    const ROUNDING: f64 = 1e-12;
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    let float_mm = 0.07 * 3.0;
    assert!((line.float_mm() - float_mm).abs() < ROUNDING);
    assert!((line.free_mm() - (34.0 * 0.2 + float_mm)).abs() < ROUNDING);
    assert!(line.strand_offset_mm(float_mm).abs() < ROUNDING);
    assert!((line.strand_offset_mm(-5.0) + (5.0 - float_mm)).abs() < ROUNDING);
}

#[test]
fn a_chain_that_does_not_go_together_has_no_drive() {
    let stiff = aside(0.0).with("chain.bore_mm", Value::from(3.59)).expect("it can be drawn");
    assert_eq!(ChainLine::of(&stiff), None);
}

/// Up to the free offset the pins carry the pull and no more. Once the line of the pull no longer
/// lies along the chain in every bore, faces carry its slope: that is all a crooked line adds.
#[test]
fn up_to_the_free_offset_pins_carry_the_pull_and_faces_its_slope() {
    let straight = ChainLine::of(&aside(0.0)).expect("it goes together").straight();
    for offset_mm in [-7.0, -3.0, 0.0, 3.0, 7.0] {
        let line = ChainLine::of(&aside(offset_mm)).expect("it goes together");
        let mut strand = line.strand(None, Ends::Held);
        let solution = strand.solve(line.strand_offset_mm(offset_mm));
        let [first, last] = ChainLine::end_loads(&solution);
        let slope_n = line.running.tight_n * offset_mm.abs() / line.layout.tangent_length_mm();
        for end in [first, last] {
            assert!((end.pin_n / line.running.tight_n - 1.0).abs() < FREE_SHARE, "{offset_mm}");
            assert!(end.face_n <= 1.05 * slope_n, "{offset_mm} {} {slope_n}", end.face_n);
        }
        let times = line.cost(&[first, last]).loss_fraction / straight.loss_fraction;
        assert!((1.0 - FREE_SHARE..1.05).contains(&times), "{offset_mm} {times}");
    }
}

#[test]
fn gears_stand_a_step_apart_and_cost_by_their_offset() {
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    let gears = Gears {
        front: Gears::row(&[44], 0.0, 0.0),
        back: Gears::row(&[11, 16, 24], 5.0, 0.0),
        guides: vec![11, 11],
    };
    assert_eq!(gears.range_mm(), Some([-5.0, 5.0]));
    let pairs = gears.costs(&line);
    let back: Vec<_> = pairs.iter().map(|pair| pair.back_teeth).collect();
    assert_eq!(back, [11, 16, 24]);
    for pair in &pairs {
        assert!(pair.offset_mm.abs() <= pair.free_mm);
        let times = pair.loss_fraction.expect("it settles") / pair.straight_fraction;
        assert!((1.0 - FREE_SHARE..1.05).contains(&times), "{times}");
    }
    assert!(pairs[0].straight_fraction > pairs[2].straight_fraction);
    assert!((pairs[0].guide_fraction - pairs[2].guide_fraction).abs() < 1e-15);
}

#[test]
fn wheels_that_do_not_fit_between_the_shafts_are_left_out() {
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    let back = Gears::row(&[16, 400], 5.0, 0.0);
    let gears = Gears { front: Gears::row(&[44], 0.0, 0.0), back, guides: Vec::new() };
    assert_eq!(gears.costs(&line).len(), 1);
}

#[test]
fn an_offset_to_either_side_costs_the_same() {
    let cost = |offset_mm| {
        let line = ChainLine::of(&aside(offset_mm)).expect("it goes together");
        line.own_cost().expect("it settles")
    };
    let (far, near) = (cost(9.0), cost(-9.0));
    assert!((far.loss_fraction - near.loss_fraction).abs() < 1e-15);
    assert!(far.multiple() >= Some(1.0));
}

#[test]
fn a_study_answers_a_step_back_as_it_did_the_first_time() {
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    let mut study = Study::of(&line, 20);
    let step_mm = study.step_mm();
    let (four, five) = (4.0 * step_mm, 5.0 * step_mm);
    let first = study.cost(Variant::Rigid, four);
    assert!(first.is_ok() && study.cost(Variant::Rigid, five) != first);
    assert_eq!(study.cost(Variant::Rigid, -four), first);
    assert!(study.is_of(&ChainLine::of(&aside(3.0)).expect("it goes together")));
}

#[test]
fn the_view_stands_between_its_wheels() {
    const ROUNDING_MM: f64 = 1e-9;
    let line = ChainLine::of(&aside(6.0)).expect("it goes together");
    let solution = line.solve(Variant::Rigid).expect("it settles");
    let view = LineView::of(&line, &solution, 6.0);
    assert_eq!(view.joints.len(), 34);
    let aside_mm = view.driven.y_mm - view.driver.y_mm;
    assert!((aside_mm - 6.0).abs() < ROUNDING_MM, "{aside_mm}");
    let along_mm = view.driven.x_mm - view.driver.x_mm;
    assert!((along_mm - line.layout.tangent_length_mm()).abs() < ROUNDING_MM, "{along_mm}");
    let half_mm = line.float_mm() / 2.0;
    let last = view.joints[33];
    assert!((view.driven.y_mm - last.y_mm - half_mm).abs() < line.sizes.side_gap_mm());
}

#[test]
fn a_curve_tells_watts_and_their_band_of_friction() {
    let line = ChainLine::of(&aside(0.0)).expect("it goes together");
    let mut study = Study::of(&line, 10);
    let curve = study.curve(Variant::Rigid).expect("it can be built");
    let mu = line.running.rubbing.friction.pin;
    for sample in &curve.samples {
        assert!((sample.loss_w - 100.0 * sample.loss_fraction).abs() < 1e-12);
        let [low_w, high_w] = sample.band_w.expect("there is friction");
        assert!(low_w < sample.loss_w && sample.loss_w < high_w);
        assert!((low_w * mu - 0.08 * sample.loss_w).abs() < 1e-12);
        assert!((high_w / low_w - 2.0).abs() < 1e-12);
    }
    let straight_w = 100.0 * line.straight().loss_fraction;
    assert!((curve.samples[0].loss_w - straight_w).abs() < 1e-9);
}

/// Friction of the slack strand alone can take more than the drive carries: it then cannot turn.
#[test]
fn a_slack_pull_that_stops_the_drive_is_refused_and_one_just_below_it_loses_nearly_all() {
    let slack =
        |offset_mm, slack_n: f64| aside(offset_mm).with("drive.slack_n", Value::from(slack_n));
    let faults = slack(0.0, 1e5).expect_err("it cannot turn");
    assert_eq!((faults.len(), faults[0].field.as_str()), (1, "drive.slack_n"));
    let Rule::BelowSize { limit, of: "slack_that_stops" } = faults[0].rule else {
        panic!("{:?}", faults[0]);
    };
    let line = ChainLine::of(&slack(0.0, 0.999 * limit).expect("it turns")).expect("a drive");
    let straight = line.running.straight_fraction();
    assert!(straight > 0.99 && straight < 1.0, "{straight}");
    assert!(slack(0.0, 1.001 * limit).is_err());
    let crooked = ChainLine::of(&slack(14.0, 0.999 * limit).expect("it turns")).expect("a drive");
    let costs = Costs::of(&crooked);
    assert_eq!(costs.elastic, Err(Missing::Locked));
    assert_eq!(crate::answer::line(&costs)[0].id, "line.locked");
    assert_eq!(Crooked::of(&crooked).cost(), Err(Missing::Locked));
    let told = DriveSection::of(&Crooked::of(&crooked));
    assert_eq!((told.loss_fraction_offset, told.loss_offset_missing), (None, Some("locked")));
    let [front, back] = [crooked.layout.driver, crooked.layout.driven]
        .map(|wheel| Gears::row(&[wheel.teeth], 0.0, 0.0));
    let mut gears = Gears { front, back, guides: Vec::new() };
    gears.back[0].aside_mm = 14.0;
    let pair = gears.costs(&crooked)[0];
    assert_eq!((pair.loss_fraction, pair.missing), (None, Some("locked")));
}
