use super::*;
use crate::chain::sample::reference;
use crate::chain::{Chain, Construction, Dimension, Sizes, WornBore};

/// Agreement of a settled pose with an exact limit, rad: the settled gap tolerance over a bearing
/// width of several millimetres.
const AGREE_RAD: f64 = 1e-9;

pub(super) fn half_inch(construction: Construction, side_gap_mm: f64) -> Sizes {
    let more = [(Dimension::MouthRadius, 0.2), (Dimension::OuterSpacing, 5.0 + side_gap_mm)];
    *Chain::new(reference(construction, &more)).unwrap()
}

fn yaw(body: Body, value: f64) -> Wish {
    Wish::Coordinate { body, along: Along::Yaw, value, weight: 1.0 }
}

fn across(body: Body, value: f64) -> Wish {
    Wish::Coordinate { body, along: Along::Y, value, weight: 1.0 }
}

#[test]
fn the_straight_pose_has_exactly_the_stated_gaps() {
    let sizes = half_inch(Construction::Collared, 0.4);
    let settler = Settler::plan(&sizes);
    for (meeting, gap_mm) in settler.meetings().iter().zip(settler.gaps_mm()) {
        let half_mm = match meeting.contact.kind {
            Kind::PinBore => 0.5 * sizes.pin_clearance_mm(),
            Kind::PlateFace => 0.5 * sizes.side_gap_mm(),
            Kind::RollerPlate => 0.5 * sizes.roller_side_clearance_mm(),
            Kind::RollerBarrel => 0.5 * sizes.roller_clearance_mm(),
            Kind::CollarEnds => sizes.inner_link_width_mm() - 2.0 * sizes.bearing_length_mm,
        };
        assert!((gap_mm - half_mm).abs() < 1e-12, "{} {gap_mm} {half_mm}", meeting.contact.id());
    }
}

#[test]
fn the_slope_of_a_gap_is_its_finite_difference() {
    let settler = Settler::plan(&half_inch(Construction::Collared, 0.4));
    let mut pose = *settler.straight();
    for (i, place) in pose.0.iter_mut().enumerate() {
        *place = place.turned(0.003 * (i as f64 - 2.0));
        place.x_mm += 0.01 * i as f64;
        place.y_mm -= 0.02 * i as f64;
    }
    const STEP: f64 = 1e-6;
    for meeting in settler.meetings() {
        let slope = meeting.slope(&pose);
        for (body, change) in [(meeting.corner_body, slope.corner), (meeting.face_body, slope.face)]
        {
            for (axis, change) in change.into_iter().enumerate() {
                let mut gaps = [0.0; 2];
                for (gap, sign) in gaps.iter_mut().zip([-1.0, 1.0]) {
                    let mut moved = pose;
                    let place = &mut moved.0[body.index()];
                    match axis {
                        0 => place.x_mm += sign * STEP,
                        1 => place.y_mm += sign * STEP,
                        _ => *place = place.turned(sign * STEP),
                    }
                    *gap = meeting.gap_mm(&moved);
                }
                let difference = (gaps[1] - gaps[0]) / (2.0 * STEP);
                assert!((difference - change).abs() < 1e-7, "{}", meeting.contact.id());
            }
        }
    }
}

#[test]
fn wear_opens_the_loaded_side_of_every_pin_and_nothing_else() {
    let worn = WornBore { pin_mm: 0.07, bore_mm: 0.05 };
    for construction in [Construction::Bushed, Construction::Collared] {
        let new = half_inch(construction, 0.4);
        let settlers = [new, Sizes { worn, ..new }].map(|sizes| Settler::plan(&sizes));
        let [new, old] = &settlers;
        let gaps = new.gaps_mm().iter().zip(old.gaps_mm());
        for (meeting, (new_mm, old_mm)) in new.meetings().iter().zip(gaps) {
            let Contact { kind, joint, side, .. } = meeting.contact;
            let loaded = kind == Kind::PinBore && side == joint.loaded();
            let more_mm = if loaded { worn.depth_mm() } else { 0.0 };
            assert!((old_mm - new_mm - more_mm).abs() < 1e-12, "{}", meeting.contact.id());
        }
    }
}

#[test]
fn a_turn_wished_too_far_settles_at_the_exact_limit_as_new_and_worn() {
    let made = [Construction::Bushed, Construction::Collared];
    let wears = [WornBore::NONE, WornBore { pin_mm: 0.02, bore_mm: 0.04 }];
    for (construction, worn) in made.into_iter().flat_map(|made| wears.map(|worn| (made, worn))) {
        let sizes = Sizes { worn, ..half_inch(construction, 0.4) };
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let beyond = 0.51 * Play::of(&sizes).turn.angle_rad;
        let wishes = [
            yaw(Body::NextOuter, 2.0 * beyond),
            yaw(Body::InnerFar, beyond),
            yaw(Body::InnerNear, beyond),
            across(Body::InnerFar, 0.0),
            across(Body::InnerNear, 0.0),
        ];
        let settled = settler.settle(&wishes, &straight);
        assert!(settled.worst_gap_mm >= -OVERLAP_MM, "{settled:?}");
        let turn = settler.pose().of(Body::NextOuter).yaw_rad;
        let limit = Play::of(&sizes).turn.angle_rad;
        // Two collared plates give a little: they move towards each other, and the pin's lever with them.
        let agree_rad = match construction {
            Construction::Bushed => AGREE_RAD,
            Construction::Collared if worn == WornBore::NONE => 2e-3 * limit,
            Construction::Collared => 6e-3 * limit,
        };
        assert!((turn - limit).abs() < agree_rad, "{construction:?} {turn} {limit} {settled:?}");
    }
}

#[test]
fn the_faces_stop_a_turn_when_the_side_gap_is_small() {
    let sizes = half_inch(Construction::Bushed, 0.02);
    let mut settler = Settler::plan(&sizes);
    let straight = *settler.straight();
    let settled = settler.settle(&[yaw(Body::NextOuter, 1.0)], &straight);
    let play = Play::of(&sizes);
    assert_eq!(play.turn.by, Limiter::Face);
    let turn = settler.pose().of(Body::NextOuter).yaw_rad;
    assert!((turn - play.turn.angle_rad).abs() < AGREE_RAD, "{turn} {play:?} {settled:?}");
}

#[test]
fn a_shift_wished_too_far_settles_at_the_side_gap() {
    for construction in [Construction::Bushed, Construction::Collared] {
        let sizes = half_inch(construction, 0.4);
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let up =
            Wish::Coordinate { body: Body::InnerFar, along: Along::Y, value: 5.0, weight: 1.0 };
        let still = yaw(Body::InnerFar, 0.0);
        let settled = settler.settle(&[up, still, yaw(Body::NextOuter, 0.0)], &straight);
        let offset = settler.pose().of(Body::InnerFar).y_mm;
        assert!((offset - 0.2).abs() < 1e-6, "{construction:?} {offset} {settled:?}");
    }
}

#[test]
fn a_wish_within_reach_is_met_without_touching() {
    let sizes = half_inch(Construction::Bushed, 0.4);
    let mut settler = Settler::plan(&sizes);
    let straight = *settler.straight();
    let half = 0.5 * Play::of(&sizes).turn.angle_rad;
    let settled = settler.settle(&[yaw(Body::NextOuter, half)], &straight);
    assert!(settled.worst_gap_mm > 0.001);
    assert!((settler.pose().of(Body::NextOuter).yaw_rad / half - 1.0).abs() < 1e-3);
}

#[test]
fn a_held_point_follows_the_hand_without_a_jump() {
    for construction in [Construction::Bushed, Construction::Collared] {
        let sizes = half_inch(construction, 0.4);
        let mut settler = Settler::plan(&sizes);
        let straight = *settler.straight();
        let inside = Point::new(9.0, 0.0);
        let mut last = straight;
        let (mut largest, mut most) = (0.0_f64, 0);
        for i in 0..=400 {
            let angle = f64::from(i) * 0.04;
            let reach = 0.004 * f64::from(i);
            let to = Point::new(21.7 + reach * libm::cos(angle), reach * libm::sin(angle));
            let hold = Wish::Point { body: Body::NextOuter, inside, to };
            let settled = settler.settle(&[hold], &straight);
            assert!(settled.worst_gap_mm >= -OVERLAP_MM, "{i} {settled:?}");
            most = most.max(settled.rounds);
            let now = *settler.pose();
            for (a, b) in now.0.iter().zip(&last.0) {
                let step = (a.y_mm - b.y_mm).abs().max((a.x_mm - b.x_mm).abs());
                largest = largest.max(step).max(9.0 * (a.yaw_rad - b.yaw_rad).abs());
            }
            last = now;
        }
        // The hand itself moves by up to 0.07 mm a step.
        assert!(largest < 0.1, "{construction:?} {largest}");
        assert!(most <= 12, "{construction:?} {most} rounds");
    }
}

use crate::plane::Point;

#[test]
fn a_twist_wished_too_far_settles_at_the_exact_limit() {
    for construction in [Construction::Bushed, Construction::Collared] {
        for (side_gap_mm, by) in [(0.4, Limiter::Pin), (0.01, Limiter::Face)] {
            let sizes = half_inch(construction, side_gap_mm);
            let twist = Play::of(&sizes).twist;
            assert_eq!(twist.by, by);
            let mut settler = Settler::end_section(&sizes);
            let straight = *settler.straight();
            let beyond = 1.02 * twist.angle_rad;
            let settled = settler
                .settle(&[yaw(Body::InnerFar, beyond), yaw(Body::InnerNear, beyond)], &straight);
            let reached = settler.pose().of(Body::InnerFar).yaw_rad;
            // Two plates stopped by their faces move towards each other and give a little more.
            let gives = construction == Construction::Collared && by == Limiter::Face;
            let agree_rad = if gives { 0.03 * twist.angle_rad } else { AGREE_RAD };
            assert!((reached - twist.angle_rad).abs() < agree_rad, "{twist:?} {settled:?}");
        }
    }
}

#[test]
fn every_contact_is_found_by_its_id_and_no_other_word_names_one() {
    for construction in [Construction::Bushed, Construction::Collared] {
        for meeting in Settler::plan(&half_inch(construction, 0.4)).meetings() {
            assert_eq!(Contact::of_id(&meeting.contact.id()), Some(meeting.contact));
        }
    }
    for id in ["", "first", "first.pin-bore.far", "third.pin-bore.far.right", "a.b.c.d.inner"] {
        assert_eq!(Contact::of_id(id), None, "{id}");
    }
}
