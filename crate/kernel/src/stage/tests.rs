use super::*;
use crate::plane::Point;
use crate::scene::View;

fn file(bore_mm: f64) -> Value {
    Value::object([
        ("format", Value::Number(1.0)),
        ("title", Value::text("test")),
        (
            "chain",
            Value::object([
                ("construction", Value::text("bushed")),
                ("pitch_mm", Value::Number(12.7)),
                ("roller_diameter_mm", Value::Number(7.75)),
                ("inner_width_mm", Value::Number(6.35)),
                ("pin_diameter_mm", Value::Number(3.58)),
                ("bore_mm", Value::Number(bore_mm)),
            ]),
        ),
    ])
}

fn stage() -> Stage {
    Stage::new(Scenario::read(&file(3.62)).unwrap())
}

#[test]
fn a_refused_size_leaves_the_last_good_chain_and_pose() {
    let mut stage = stage();
    stage.scrub(0.5);
    let before = (stage.scenario().clone(), stage.share());
    let faults = stage.set("chain.bore_mm", Value::Number(-1.0)).unwrap_err();
    assert!(faults.iter().any(|fault| fault.field == "chain.bore_mm"));
    assert!(stage.set("chain.nonsense", Value::Number(1.0)).is_err());
    assert!(stage.load(&file(0.0)).is_err());
    assert!(stage.set_gap("pin_clearance_mm", f64::NAN).is_err());
    assert!(stage.set_gap("nothing_mm", 0.1).is_err());
    assert!(stage.adopt_size("40", "woven").is_err());
    assert!(stage.adopt_size("39", "bushed").is_err());
    assert!(stage.show("dance").is_err());
    assert_eq!((stage.scenario().clone(), stage.share()), before);
}

#[test]
fn a_gap_moves_one_dimension() {
    let mut stage = stage();
    for pair in Pair::ALL {
        let before = *stage.chain().sizes();
        stage.set_gap(Quantity::of_pair(*pair).key(), 0.11).unwrap();
        assert!((pair.gap_mm(stage.chain()) - 0.11).abs() < 1e-12, "{pair:?}");
        for other in Pair::ALL.iter().filter(|other| *other != pair) {
            let moved_mm = other.gap_mm(stage.chain()) - other.gap_mm(&before);
            assert!(moved_mm.abs() < 1e-12, "{pair:?} moves {other:?}");
        }
    }
}

#[test]
fn an_overlap_takes_the_pose_away_and_a_gap_gives_it_back() {
    let mut stage = stage();
    stage.scrub(1.0);
    stage.set_gap("pin_clearance_mm", -0.02).unwrap();
    let state = stage.state();
    assert!(!state.fits && stage.contacts().is_empty() && stage.posing().is_none());
    assert_eq!(state.interference.len(), 1);
    stage.set_gap("pin_clearance_mm", 0.04).unwrap();
    assert!(stage.state().fits && !stage.contacts().is_empty());
}

#[test]
fn every_published_size_goes_on_the_stage_in_both_constructions() {
    let mut stage = stage();
    for size in crate::table::PUBLISHED {
        for construction in Construction::ALL {
            stage.adopt_size(size.number, construction.key()).unwrap();
            let state = stage.state();
            assert!(state.fits, "{} {construction:?}", size.number);
            assert_eq!(state.number, Some(size.number));
            assert!(!state.chosen.is_empty());
        }
    }
}

#[test]
fn a_hand_on_the_next_link_pulls_it_to_the_stop_and_leaves_it_there() {
    let mut stage = stage();
    let at = Point::new(20.0, 0.0);
    assert!(stage.grab(View::Plan, at));
    stage.drag(at + Point::new(0.0, 50.0));
    stage.release();
    let live = stage.live();
    assert!(live.pin_touches && live.touching >= 4, "{live:?}");
    let before = live.total_rad;
    stage.drag(at);
    assert!((stage.live().total_rad - before).abs() < 1e-15, "nothing is held");
    assert!(!stage.grab(View::Plan, Point::new(-9.0, 0.0)), "the held link does not move");
}

#[test]
fn a_hand_turns_the_end_section_and_bends_the_side_view() {
    let mut stage = stage();
    stage.show("twist").unwrap();
    assert!(stage.grab(View::End, Point::new(5.0, 0.0)));
    stage.drag(Point::new(5.0, 5.0));
    assert!((stage.share() - 1.0).abs() < 1e-6);
    stage.show("bend").unwrap();
    assert!(stage.grab(View::Elevation, Point::new(15.0, 0.0)));
    stage.drag(Point::new(15.0, -1.0));
    assert!(stage.share() > 0.1);
}

#[test]
fn a_step_goes_on_from_where_the_hand_left_the_chain() {
    let mut stage = stage();
    stage.scrub(0.5);
    stage.nudge(2.0);
    assert!((stage.share() - 0.6).abs() < 1e-3, "{}", stage.share());
}

#[test]
fn a_chain_that_turns_far_is_drawn_less_too_big_at_the_start() {
    let mut stage = Stage::new(crate::scenario::sample::aside(10.0));
    let tight = stage.state();
    assert_eq!(tight.factor.start, tight.factor.cap);
    stage.show_worn(0.25);
    let loose = stage.state();
    let drawn_rad = |factor: u32| f64::from(factor) * loose.play.as_ref().unwrap().turn_limit_rad;
    assert!(loose.factor.start > 1 && loose.factor.start < loose.factor.cap);
    assert!(drawn_rad(loose.factor.start) <= 0.21 && drawn_rad(loose.factor.start + 1) > 0.21);
}

#[test]
fn the_factor_stays_honest() {
    let mut stage = stage();
    let cap = stage.state().factor.cap;
    assert!(cap > 1);
    stage.widen(1e9);
    assert_eq!(stage.factor(), cap);
    stage.widen(f64::NAN);
    assert_eq!(stage.factor(), 1);
    assert_eq!(stage.drawn().sizes(), stage.chain().sizes());
}

#[test]
fn the_extremes_of_the_limits_stand_on_the_stage_and_the_middle_comes_back() {
    use crate::scenario::Corner;
    let limit = |dimension: &str, mm: f64| {
        let (minus, plus) = (Value::Number(mm), Value::Number(mm));
        Value::object([("dimension", Value::text(dimension)), ("minus", minus), ("plus", plus)])
    };
    let mut file = file(3.61);
    file.put("limits", Value::List(vec![limit("pin_diameter_mm", 0.004), limit("bore_mm", 0.005)]));
    let mut stage = Stage::new(Scenario::read(&file).expect("a good one"));
    let gap_mm = |stage: &Stage| stage.chain().pin_clearance_mm();
    let middle = (gap_mm(&stage), stage.state().sizes);
    let mut seen = Vec::new();
    for corner in [Some(Corner::Tightest), None, Some(Corner::Loosest)] {
        stage.show_corner(corner);
        stage.scrub(1.0);
        let play = stage.state().play.expect("it goes together");
        assert!(stage.live().total_rad.abs() >= play.turn_limit_rad - 1e-9);
        assert_eq!(stage.state().sizes, middle.1, "what can be set is in the middle");
        seen.push((gap_mm(&stage), play.turn_limit_rad));
    }
    assert!(seen.windows(2).all(|two| two[0].0 < two[1].0 && two[0].1 < two[1].1), "{seen:?}");
    assert!((seen[1].0 - middle.0).abs() < 1e-12);
    // The slider moves what is seen, at an extreme too.
    stage.set_gap("pin_clearance_mm", 0.04).expect("a chain");
    assert!((gap_mm(&stage) - 0.04).abs() < 1e-12);
    let ends = stage.state().corner.expect("limits").ends;
    let pin = ends.iter().find(|end| end.dimension == "pin_diameter_mm").expect("a limited pin");
    assert_eq!(pin.end, "smallest");
}

#[test]
fn a_worn_joint_is_posed_and_drawn_and_the_chain_as_new_comes_back() {
    let mut stage = stage();
    stage.scrub(1.0);
    let (new, sizes) = (stage.posing().expect("it fits").total_yaw_rad(), *stage.chain().sizes());
    stage.show_worn(0.06);
    let posing = stage.posing().expect("it fits");
    let play = crate::contact::Play::worn(&sizes, &stage.chain().worn);
    assert!((stage.worn_mm() - 0.06).abs() < 1e-12);
    assert!(posing.total_yaw_rad() > 2.0 * new, "a worn joint turns further");
    assert!((posing.total_yaw_rad() - play.turn.angle_rad).abs() < 1e-9);
    let drawn_mm = 0.06 * f64::from(stage.factor());
    assert!((stage.drawn().worn.depth_mm() - drawn_mm).abs() < 1e-9, "drawn as big as gaps");
    let told = stage.state();
    assert!((told.geometry.pin_clearance_mm - 0.1).abs() < 1e-12 && told.worn_mm > 0.0);
    assert_eq!(stage.twin()[0].id, "worn");
    for nonsense in [f64::NAN, -1.0, 0.0] {
        stage.show_worn(nonsense);
        let again = stage.posing().expect("it fits").total_yaw_rad();
        assert_eq!((again.to_bits(), stage.worn_mm()), (new.to_bits(), 0.0));
    }
    stage.show_worn(1e9);
    assert!(stage.chain().worn.bore_mm < 0.5 * (sizes.barrel_mm - sizes.bore_mm), "metal is left");
}
