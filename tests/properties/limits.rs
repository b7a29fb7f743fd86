//! The limits of one joint, against its corners and against their small-angle forms.

use crate::chains::{self, fixed};
use crate::corners::{self, Held};
use lightgap::chain::{Construction, Sizes};
use lightgap::contact::{Body, Joint, Pose};
use lightgap::contact::{Contact, Kind, Limit, Limiter, Play, RoomPoint, meetings, room};
use lightgap::plane::Placement;
use proptest::prelude::*;

/// A closed form against a bisection, rad.
const EXACT_RAD: f64 = 1e-12;
/// The same for an offset, mm; sizes are up to 40 mm.
const EXACT_MM: f64 = 1e-12;
/// Closer than this, which of two limits comes first is rounding's choice.
const TIE_RAD: f64 = 1e-9;

fn agrees(limit: Limit, (pin, face): (f64, f64), joints: f64) -> Result<(), TestCaseError> {
    let expected = joints * pin.min(face);
    prop_assert!(
        (limit.angle_rad - expected).abs() <= EXACT_RAD,
        "{} is not {expected}",
        limit.angle_rad
    );
    if (pin - face).abs() > TIE_RAD {
        let by = if pin < face { Limiter::Pin } else { Limiter::Face };
        prop_assert_eq!(limit.by, by);
    }
    Ok(())
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn every_limit_is_where_the_corners_leave_no_room(sizes in chains::any()) {
        let play = Play::of(&sizes);
        let each = corners::limits(&sizes, Held::EachPlate);
        agrees(play.yaw, each, 1.0)?;
        agrees(play.shear, each, 1.0)?;
        agrees(play.turn, corners::limits(&sizes, Held::Whole), 2.0)?;
        agrees(play.twist, corners::twists(&sizes), 1.0)?;
        prop_assert!((play.offset_mm - 0.5 * sizes.side_gap_mm()).abs() <= EXACT_MM);
    }

    #[test]
    fn the_outline_of_the_room_is_where_the_corners_stop(sizes in chains::any()) {
        for point in room(&sizes) {
            let left = corners::left(&sizes, Held::EachPlate, point.yaw_rad);
            prop_assert!(left.pin_mm >= -EXACT_MM);
            let off = (point.offset_mm - left.high_mm).abs().min((point.offset_mm - left.low_mm).abs());
            prop_assert!(off <= EXACT_MM, "{off} at {}", point.yaw_rad);
        }
    }

    #[test]
    fn small_angle_forms_are_right_to_second_order(sizes in chains::any()) {
        let s = &sizes;
        let play = Play::of(s);
        let (c, a) = (s.pin_clearance_mm(), s.side_gap_mm());
        let (one_mm, whole_mm) = (s.effective_length_mm(), s.bearing_width_mm());
        let reach_mm = s.inner_reach_mm() + s.outer_reach_mm();
        let height_mm = s.inner_plate_height_mm.min(s.outer_plate_height_mm) - 2.0 * s.edge_chamfer_mm;
        // Second order: t^2 with the widest part as its lever, and the pin's own play along x.
        let near = |limit: Limit, first: f64, arm_mm: f64, joints: f64| {
            let wide_mm = s.outer_spacing_mm + s.bore_mm + 2.0 * s.mouth_radius_mm;
            let t = first / joints;
            let allowed = joints * t * (wide_mm * t + c) / arm_mm;
            prop_assert!((limit.angle_rad - first).abs() <= allowed, "{limit:?} {first} {allowed}");
            Ok(())
        };
        let least = one_mm.min(reach_mm).min(height_mm);
        let yaw = (c / one_mm).min(a / reach_mm);
        near(play.yaw, yaw, least, 1.0)?;
        near(play.shear, yaw, least, 1.0)?;
        near(play.turn, 2.0 * (c / whole_mm).min(a / reach_mm), least, 2.0)?;
        near(play.twist, (c / one_mm).min(a / height_mm), least, 1.0)?;
    }

    #[test]
    fn the_places_of_a_bushed_link_are_those_of_the_small_angle_form(
        sizes in chains::of(Construction::Bushed),
        at in prop::array::uniform3(-1.5..1.5_f64),
    ) {
        let s = &sizes;
        let (c, a, b) = (s.pin_clearance_mm(), s.side_gap_mm(), s.bearing_width_mm());
        let (gi, go) = (s.inner_reach_mm(), s.outer_reach_mm());
        let (x, y, yaw) = (0.5 * c * at[0], 0.5 * a * at[1], Play::of(s).yaw.angle_rad * at[2]);
        let small = [
            0.5 * c - x.abs() - yaw.abs() * 0.5 * b,
            0.5 * a - (y - yaw * gi).abs(),
            0.5 * a - (y + yaw * go).abs(),
        ];
        let small = small.into_iter().fold(f64::INFINITY, f64::min);
        let mut pose = Pose::straight(s);
        let place = Placement::new(x, y, yaw);
        (pose.0[Body::InnerFar.index()], pose.0[Body::InnerNear.index()]) = (place, place);
        let first = |contact: &Contact| {
            contact.joint == Joint::First && matches!(contact.kind, Kind::PinBore | Kind::PlateFace)
        };
        let exact = meetings(s).iter().filter(|m| first(&m.contact)).map(|m| m.gap_mm(&pose))
            .fold(f64::INFINITY, f64::min);
        // Second order: every size turned twice, and a shift turned once.
        let wide_mm = s.outer_spacing_mm + s.bore_mm + 2.0 * s.mouth_radius_mm + gi + go;
        let allowed = yaw * yaw * wide_mm + yaw.abs() * (x.abs() + y.abs()) + 1e-12;
        prop_assert!((small - exact).abs() <= allowed, "{small} {exact} {allowed}");
    }

    #[test]
    fn more_clearance_never_gives_less_freedom(
        sizes in chains::any(),
        more_pin in 0.0..0.01_f64,
        more_side in 0.0..0.05_f64,
    ) {
        let p = sizes.pitch_mm;
        let looser = [
            Sizes { bore_mm: (sizes.bore_mm + more_pin * p).min(sizes.barrel_mm - 2.0 * sizes.mouth_radius_mm), ..sizes },
            Sizes { pin_diameter_mm: sizes.pin_diameter_mm - more_pin * p, ..sizes },
            Sizes { outer_spacing_mm: sizes.outer_spacing_mm + more_side * p, ..sizes },
        ];
        let freedom = |s: &Sizes| {
            let play = Play::of(s);
            let angles = [play.yaw, play.turn, play.shear, play.twist].map(|limit| limit.angle_rad);
            (angles, play.offset_mm, area(&room(s)))
        };
        let (angles, offset_mm, room) = freedom(&sizes);
        for looser in looser {
            let (more_angles, more_offset_mm, more_room) = freedom(&looser);
            for (less, more) in angles.into_iter().zip(more_angles) {
                prop_assert!(more >= less - 1e-15, "{less} {more}");
            }
            prop_assert!(more_offset_mm >= offset_mm);
            // The outline's curved edges are sampled at other yaws: to second order of those.
            prop_assert!(more_room >= room * (1.0 - 1e-6), "{room} {more_room}");
        }
    }

    #[test]
    fn without_clearance_there_is_no_freedom(sizes in chains::any(), more_side in 0.0..0.3_f64) {
        let no_side = Sizes { outer_spacing_mm: sizes.inner_link_width_mm(), ..sizes };
        let play = Play::of(&no_side);
        prop_assert!(play.offset_mm.abs() <= EXACT_MM);
        prop_assert!(play.yaw.angle_rad.abs() <= EXACT_RAD && play.turn.angle_rad.abs() <= EXACT_RAD);
        let no_pin = Sizes {
            pin_diameter_mm: sizes.bore_mm,
            outer_spacing_mm: sizes.outer_spacing_mm + more_side * sizes.pitch_mm,
            ..sizes
        };
        let play = Play::of(&no_pin);
        prop_assert!(play.turn.angle_rad.abs() <= EXACT_RAD && play.yaw.angle_rad.abs() <= EXACT_RAD);
        prop_assert_eq!(play.turn.by, Limiter::Pin);
        prop_assert!(play.side_bow_mm_per_m.abs() <= 1e-6);
    }

    #[test]
    fn a_limit_is_an_angle_and_does_not_know_the_scale(sizes in chains::any(), scale in 0.1..10.0_f64) {
        let (small, large) = (Play::of(&sizes), Play::of(&scaled(&sizes, scale)));
        for (a, b) in [(small.yaw, large.yaw), (small.turn, large.turn), (small.twist, large.twist)] {
            prop_assert!((a.angle_rad - b.angle_rad).abs() <= EXACT_RAD);
        }
        prop_assert!((small.offset_mm * scale - large.offset_mm).abs() <= 10.0 * EXACT_MM);
    }

    #[test]
    fn the_room_is_the_same_mirrored(sizes in chains::any()) {
        let outline = room(&sizes);
        for point in &outline {
            let mirrored = |other: &&RoomPoint| {
                (other.offset_mm + point.offset_mm).abs() <= EXACT_MM
                    && (other.yaw_rad + point.yaw_rad).abs() <= EXACT_RAD
            };
            prop_assert!(outline.iter().any(|other| mirrored(&other)));
        }
    }
}

/// Every length so many times as long.
pub fn scaled(sizes: &Sizes, scale: f64) -> Sizes {
    let mut scaled = *sizes;
    for dimension in lightgap::chain::Dimension::ALL {
        dimension.put(&mut scaled, scale * dimension.of(sizes));
    }
    scaled
}

/// The area inside an outline, mm rad.
fn area(outline: &[RoomPoint]) -> f64 {
    let next = outline.iter().cycle().skip(1);
    let twice: f64 = outline
        .iter()
        .zip(next)
        .map(|(a, b)| a.offset_mm * b.yaw_rad - b.offset_mm * a.yaw_rad)
        .sum();
    0.5 * twice
}
