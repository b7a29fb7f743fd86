use super::*;
use crate::chain::sample::narrow;
use crate::chain::{Construction, Dimension, Sizes};
use crate::contact::{Along, Body, End, Joint, Play, Pose, Settler, Wish};
use crate::plane::Point;

mod flow;

const ROUNDING: f64 = 1e-12;
const LIQUID: Liquid =
    Liquid { viscosity_pa_s: 0.1, tension_n_per_m: 0.03, angle_rad: 0.35, pressure_pa: 1000.0 };

fn sizes(construction: Construction) -> Sizes {
    let more = [
        (Dimension::OuterPlate, 1.0),
        (Dimension::MouthRadius, 0.25),
        (Dimension::EdgeChamfer, 0.15),
        (Dimension::InnerPlateHeight, 8.6),
        (Dimension::OuterPlateHeight, 8.2),
    ];
    narrow(construction, &more)
}

fn straight(sizes: &Sizes, probes: Probes) -> Entered {
    Entered::of(sizes, &Pose::straight(sizes), Joint::First, &probes, &LIQUID)
}

fn of(entered: &Entered, gap: Gap, end: End) -> FaceEntry {
    let found = entered.faces.iter().find(|entry| entry.face.gap == gap && entry.face.end == end);
    *found.unwrap_or_else(|| panic!("{gap:?}"))
}

/// The pitch turned to its stop.
fn turned(sizes: &Sizes) -> Pose {
    let value = 1.02 * Play::of(sizes).turn.angle_rad;
    let wish = Wish::Coordinate { body: Body::NextOuter, along: Along::Yaw, value, weight: 1.0 };
    let mut settler = Settler::plan(sizes);
    let rest = *settler.straight();
    settler.settle(&[wish], &rest);
    *settler.pose()
}

/// Common practice, no source: a bristle reaches the outer rim of the side gap but none of the face
/// between pin and bore.
#[test]
fn a_bristle_reaches_the_rim_of_the_side_gap_and_nothing_of_the_pin() {
    for &construction in Construction::ALL {
        let sizes = sizes(construction);
        for bristle_mm in [0.08, 0.12, 0.2] {
            let entered = straight(&sizes, Probes { bristle_mm, particle_mm: 0.01 });
            for end in [End::Near, End::Far] {
                let rim = of(&entered, Gap::Side, end).bristle_fraction;
                assert!(rim > 0.001, "{construction:?} {bristle_mm}: {rim}");
                // 0.08 mm goes into a gap of 0.1 mm; what is thicker than the gap stays at its rim.
                assert_eq!(rim > 0.1, bristle_mm < 0.1, "{bristle_mm}: {rim}");
                assert!(of(&entered, Gap::PinBore, end).bristle_fraction < ROUNDING);
            }
        }
    }
}

#[test]
fn a_particle_goes_where_every_gap_on_its_way_is_wider() {
    for &construction in Construction::ALL {
        let sizes = sizes(construction);
        let reached = |gap, particle_mm| {
            let entered = straight(&sizes, Probes { bristle_mm: 0.2, particle_mm });
            of(&entered, gap, End::Far).particle_fraction
        };
        // The gap round a centred pin is 0.0125 mm, the side gap 0.1 mm, the roller's 0.0762 mm.
        assert!(reached(Gap::PinBore, 0.0124) > 1.0 - ROUNDING);
        assert!(reached(Gap::PinBore, 0.0126) < ROUNDING);
        assert!(reached(Gap::Side, 0.0999) > 0.9);
        assert!(reached(Gap::Side, 0.1001) < 0.1);
        assert!(reached(Gap::RollerSide, 0.076) > 0.9);
        assert!(reached(Gap::RollerSide, 0.077) < 0.1);
        assert!(reached(Gap::RollerBarrel, 0.038) > 1.0 - ROUNDING);
        assert!(reached(Gap::RollerBarrel, 0.0382) < ROUNDING);
    }
}

#[test]
fn the_slot_between_the_collars_is_reached_through_two_corners() {
    let sizes = sizes(Construction::Collared);
    let reached = |particle_mm| {
        let entered = straight(&sizes, Probes { bristle_mm: 0.08, particle_mm });
        of(&entered, Gap::CollarSlot, End::Whole)
    };
    assert_eq!(reached(0.01).face.gap.corners(), 2);
    // Past the roller, whose gap is wider than the pin's.
    assert!(reached(0.038).particle_fraction > 0.9);
    assert!(reached(0.039).particle_fraction < ROUNDING);
    assert!(reached(0.01).bristle_fraction < ROUNDING);
    assert!(reached(0.01).fill_time_s.is_some());
}

#[test]
fn brushing_never_reaches_more_than_soaking_and_larger_never_more_than_smaller() {
    let widths = [0.002, 0.01, 0.02, 0.05, 0.09, 0.15, 0.3];
    for &construction in Construction::ALL {
        let sizes = sizes(construction);
        for pose in [Pose::straight(&sizes), turned(&sizes)] {
            for &joint in Joint::ALL {
                let at = |mm| {
                    let probes = Probes { bristle_mm: mm, particle_mm: mm };
                    Entered::of(&sizes, &pose, joint, &probes, &LIQUID)
                };
                let mut before: Option<Entered> = None;
                for entered in widths.map(at) {
                    for (i, face) in entered.faces.iter().enumerate() {
                        let wet = f64::from(u8::from(face.fill_time_s.is_some()));
                        assert!(face.bristle_fraction <= face.particle_fraction + 1e-3);
                        assert!(face.particle_fraction <= wet);
                        let Some(smaller) = &before else { continue };
                        let then = smaller.faces[i];
                        // The ends of reach are found to a thousandth.
                        assert!(face.bristle_fraction <= then.bristle_fraction + 1e-3);
                        assert!(face.particle_fraction <= then.particle_fraction + 1e-3);
                    }
                    before = Some(entered);
                }
            }
        }
    }
}

#[test]
fn a_turned_joint_opens_one_side_and_shuts_the_other() {
    let sizes = sizes(Construction::Bushed);
    let cut = section(&sizes, &turned(&sizes), Joint::First);
    let reached = cut.rolling(0.11);
    let of_side = |left: bool, far: bool| {
        let here = |wall: &Wall| {
            let middle = wall.at(0.5);
            wall.face.gap == Gap::Side && (middle.x < 0.0) == left && (middle.y > 0.0) == far
        };
        let walls = cut.walls.iter().zip(&reached).filter(|(wall, _)| here(wall));
        walls.flat_map(|(_, spans)| spans).map(|(from, to)| to - from).sum::<f64>()
    };
    // Anticlockwise: far right and near left shut, far left and near right open.
    assert!(of_side(true, true) > 0.5 && of_side(false, false) > 0.5);
    assert!(of_side(false, true) < 0.2 && of_side(true, false) < 0.2);
}

#[test]
fn both_joints_of_a_straight_pitch_are_alike() {
    for &construction in Construction::ALL {
        let sizes = sizes(construction);
        let probes = Probes { bristle_mm: 0.08, particle_mm: 0.02 };
        let pose = Pose::straight(&sizes);
        let [one, other] = [Joint::First, Joint::Second]
            .map(|joint| Entered::of(&sizes, &pose, joint, &probes, &LIQUID));
        for (a, b) in one.faces.iter().zip(&other.faces) {
            assert!((a.bristle_fraction - b.bristle_fraction).abs() < 1e-3);
            assert!((a.particle_fraction - b.particle_fraction).abs() < 1e-3);
            assert!((a.flow_mm3_per_s - b.flow_mm3_per_s).abs() < ROUNDING);
        }
    }
}

/// The volume between two plates of which one is tilted, summed over little squares.
#[test]
fn a_worked_joint_breathes_the_volume_of_its_wedges() {
    let sizes = sizes(Construction::Bushed);
    let pumped = Pumped::of(&sizes);
    let psi = Play::of(&sizes).yaw.angle_rad;
    let (rim, mouth) = (4.05, 0.5 * 3.625 + 0.25);
    let steps = 1500;
    let side = rim / f64::from(steps);
    let mut moment = 0.0;
    for i in 0..steps {
        for j in -steps..steps {
            let (x, z) = ((f64::from(i) + 0.5) * side, (f64::from(j) + 0.5) * side);
            let r = (x * x + z * z).sqrt();
            if r > mouth && r < rim {
                moment += x * side * side;
            }
        }
    }
    let expected = 4.0 * 2.0 * psi * moment;
    // Little squares on round edges.
    let wrong = |rim_mm: f64| {
        let mean = 0.5 * (sizes.inner_reach_mm() + sizes.outer_reach_mm());
        (mean - rim_mm).abs()
    };
    assert!(wrong(rim) < ROUNDING);
    assert!((pumped.turned_side_mm3 / expected - 1.0).abs() < 1e-3);
    assert!(pumped.turned_pin_mm3 > 0.0 && pumped.turned_pin_mm3 < pumped.turned_side_mm3);
    assert!((pumped.slid_mm3 / pumped.side_volume_mm3 - 2.0).abs() < ROUNDING);
}

#[test]
fn pieces_know_how_far_they_are_apart() {
    let square = |x: f64| {
        let corners = [(0.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, 0.0)];
        Hull::new(corners.map(|(u, v)| Point::new(x + u, v)).to_vec(), 0.0)
    };
    let stick = Hull::new(vec![Point::new(0.5, 2.0), Point::new(0.5, 4.0)], 0.25);
    assert!((square(0.0).gap_mm(Point::new(2.0, 2.0)) - 2.0_f64.sqrt()).abs() < ROUNDING);
    assert!((square(0.0).gap_mm(Point::new(0.5, 0.75)) + 0.25).abs() < ROUNDING);
    assert!((square(0.0).gap_to(&square(1.5)).0 - 0.5).abs() < ROUNDING);
    assert!((square(0.0).gap_to(&stick).0 - 0.75).abs() < ROUNDING);
    assert!(square(0.0).gap_to(&square(0.5)).0 <= 0.0);
}
