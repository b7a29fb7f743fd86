use super::*;
use crate::chain::{Construction, Dimension};
use crate::contact::Kind;

fn chain(factor: f64) -> Chain {
    let c = 0.03 * factor;
    let a = 0.4 * factor;
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 8.51),
        (Dimension::InnerWidth, 3.0),
        (Dimension::InnerPlate, 1.0),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.6 + c),
        (Dimension::Barrel, 5.2 + c),
        (Dimension::RollerBore, 5.25 + c),
        (Dimension::InnerOverhang, 4.2),
        (Dimension::OuterOverhang, 4.2),
        (Dimension::OuterSpacing, 5.0 + a),
    ];
    Chain::new(Sizes::from_stated(Construction::Bushed, &stated)).unwrap()
}

fn posing() -> Posing {
    Posing::new(&chain(1.0), &chain(10.0), 10.0, 0.4)
}

fn touching(posing: &Posing) -> Vec<String> {
    let touches = |state: &&ContactState| state.mark != Mark::Open;
    posing.contacts().iter().filter(touches).map(|state| state.contact.id()).collect()
}

#[test]
fn a_full_turn_touches_the_four_ends_of_the_two_bores() {
    let mut posing = posing();
    assert!(touching(&posing).is_empty());
    posing.put(Ask::Share { mode: Mode::Turn, share: 1.0 });
    let ids = [
        "first.pin-bore.far.right",
        "first.pin-bore.near.left",
        "second.pin-bore.far.left",
        "second.pin-bore.near.right",
    ];
    assert_eq!(touching(&posing), ids);
    assert!(
        posing.contacts().iter().all(|s| s.mark != Mark::Rubbing),
        "they meet at the stop only"
    );
    assert!((posing.share(Mode::Turn) - 1.0).abs() < 1e-6);
}

#[test]
fn the_drawn_chain_touches_where_the_true_one_does() {
    let mut posing = posing();
    for mode in [Mode::Turn, Mode::Aside, Mode::Lean] {
        posing.put(Ask::Share { mode, share: 1.0 });
        let gaps = posing.truth.plan.gaps_mm().iter().zip(posing.drawn.plan.gaps_mm());
        for ((truth, drawn), meeting) in gaps.zip(posing.truth.plan.meetings()) {
            if matches!(meeting.contact.kind, Kind::PinBore | Kind::PlateFace) {
                assert_eq!(*truth < 1e-7, *drawn < 1e-6, "{mode:?} {truth} {drawn}");
            }
        }
    }
}

#[test]
fn taking_hold_moves_nothing_and_dragging_far_ends_at_metal() {
    let mut posing = posing();
    posing.put(Ask::Share { mode: Mode::Turn, share: 0.4 });
    let before = *posing.drawn_pose();
    let at = before.of(Body::NextOuter).outward(Point::new(9.0, 0.0));
    posing.grab(Body::NextOuter, at);
    posing.drag(at);
    for (a, b) in posing.drawn_pose().0.iter().zip(&before.0) {
        assert!((a.y_mm - b.y_mm).abs() < 1e-3 && (a.yaw_rad - b.yaw_rad).abs() < 1e-4);
    }
    posing.drag(at + Point::new(0.0, 60.0));
    assert!(posing.share(Mode::Turn) > 0.9);
    assert!(touching(&posing).len() >= 4);
}

#[test]
fn sliding_aside_under_a_pull_rubs_the_pins() {
    let mut posing = posing();
    posing.set_taut(true);
    posing.put(Ask::Share { mode: Mode::Aside, share: 0.5 });
    let rubbing = |state: &&ContactState| state.mark == Mark::Rubbing;
    let pins = |state: &ContactState| state.contact.kind == Kind::PinBore;
    assert!(posing.contacts().iter().filter(rubbing).filter(|s| pins(s)).count() >= 4);
}

#[test]
fn the_dot_goes_where_it_is_put_inside_the_room() {
    let mut posing = posing();
    posing.put(Ask::Room { offset_mm: 0.1, yaw_rad: 0.002 });
    let (offset_mm, yaw_rad) = posing.first_joint();
    assert!((offset_mm - 0.1).abs() < 1e-3 && (yaw_rad - 0.002).abs() < 1e-5);
}

#[test]
fn a_twist_and_a_bend_reach_their_ends() {
    let mut posing = posing();
    posing.put(Ask::Share { mode: Mode::Twist, share: -1.0 });
    assert!((posing.share(Mode::Twist) + 1.0).abs() < 1e-6);
    assert_eq!(touching(&posing), ["first.pin-bore.far.above", "first.pin-bore.near.below"]);
    posing.put(Ask::Share { mode: Mode::Bend, share: 1.0 });
    assert!((posing.share(Mode::Bend) - 1.0).abs() < 1e-12);
    assert!(posing.contacts().iter().any(|state| state.mark == Mark::Rubbing));
}
#[test]
fn sliding_aside_to_the_stop_lays_whole_faces_on_each_other() {
    let ids = [
        "first.plate-face.far.right",
        "first.plate-face.far.left",
        "second.plate-face.near.right",
        "second.plate-face.near.left",
    ];
    for construction in Construction::ALL {
        let of = |factor| {
            let mut sizes = *chain(factor).sizes();
            sizes.construction = *construction;
            if *construction == Construction::Collared {
                sizes.bearing_length_mm = 1.5;
            }
            Chain::new(sizes).unwrap()
        };
        let mut posing = Posing::new(&of(1.0), &of(10.0), 10.0, 0.4);
        posing.put(Ask::Share { mode: Mode::Aside, share: 1.0 });
        assert_eq!(touching(&posing), ids, "{construction:?}");
        assert!((posing.first_joint().0 - posing.play().offset_mm).abs() < 1e-3);
    }
}
