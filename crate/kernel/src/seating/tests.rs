use super::*;
use crate::friction::Coefficients;

/// Rounding of a few operations, as a share.
const ROUNDING: f64 = 1e-12;

fn engagement(teeth: u32, turns: Turns) -> Engagement {
    let wheel = Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
    let rubbing = Rubbing {
        friction: Coefficients { pin: 0.1, face: 0.12, roller: 0.09 },
        pin_radius_mm: 1.8,
        barrel_radius_mm: 2.5,
        roller_radius_mm: 3.875,
        rollers_turn: true,
    };
    let load = JointLoad::straight(300.0);
    let tooth_push_n = 300.0 * wheel.tooth_push_ratio();
    Engagement { wheel, load, tooth_push_n, rubbing, clearance_mm: 0.03, turns }
}

fn close(got: f64, expected: f64) -> bool {
    (got - expected).abs() <= ROUNDING * expected.abs()
}

#[test]
fn a_whole_fold_takes_mu_t_r_alpha() {
    for teeth in [11, 16, 44] {
        let alpha = 2.0 * core::f64::consts::PI / f64::from(teeth);
        let outer = engagement(teeth, Turns::Outer).at(1.0).work;
        assert!(close(outer.total_n_mm(), 0.1 * 300.0 * 1.8 * alpha));
        assert_eq!(outer.roller_n_mm.to_bits(), 0.0_f64.to_bits());
        let inner = engagement(teeth, Turns::Inner);
        let roller = 0.09 * inner.tooth_push_n * 2.5 * alpha;
        assert!(close(inner.at(1.0).work.total_n_mm(), 0.1 * 300.0 * 1.8 * alpha + roller));
    }
}

#[test]
fn faces_work_at_their_own_arm_and_coefficient() {
    let load = JointLoad::with_face(420.0, 20.0, 4.2);
    let bent = Engagement { load, ..engagement(16, Turns::Outer) };
    let alpha = bent.articulation_rad();
    let expected = (0.1 * 420.0 * 1.8 + 0.12 * 20.0 * 4.2) * alpha;
    assert!(close(bent.at(1.0).work.total_n_mm(), expected));
}

#[test]
fn the_two_kinds_of_engagement_average_to_what_a_drive_loses() {
    let both = [Turns::Outer, Turns::Inner].map(|turns| engagement(16, turns).at(1.0).work);
    let one = engagement(16, Turns::Outer);
    let mean = one.rubbing.work(&one.load, one.tooth_push_n, one.articulation_rad());
    let sum = both[0].total_n_mm() + both[1].total_n_mm();
    assert!(close(0.5 * sum, mean.total_n_mm()));
}

#[test]
fn a_stuck_roller_slides_on_its_tooth_only_where_the_inner_link_turns() {
    for turns in [Turns::Outer, Turns::Inner] {
        let free = engagement(16, turns);
        let rubbing = Rubbing { rollers_turn: false, ..free.rubbing };
        let stuck = Engagement { rubbing, ..free };
        let (free, stuck) = (free.at(1.0).work.roller_n_mm, stuck.at(1.0).work.roller_n_mm);
        assert!((stuck - free * 3.875 / 2.5).abs() <= ROUNDING * stuck.max(1.0));
        assert_eq!(free > 0.0, turns == Turns::Inner);
    }
}

#[test]
fn the_pin_rolls_by_its_friction_angle_and_then_stays_there() {
    let friction = libm::atan(0.1);
    for (turns, over_mm, way) in [(Turns::Outer, 3.63, -1.0), (Turns::Inner, 3.6, 1.0)] {
        let joint = engagement(16, turns);
        assert!(close(joint.roll_rad(), friction * 0.03 / over_mm));
        let alpha = joint.articulation_rad();
        let half = joint.at(0.5 * joint.roll_rad() / alpha);
        assert!(close(half.climb_rad, way * 0.5 * friction));
        assert!(close(half.rolled_rad, half.fold_rad));
        for share in [0.1, 0.5, 1.0] {
            let slid = joint.at(share);
            assert!(close(slid.climb_rad, way * friction) && slid.rolled_rad < slid.fold_rad);
        }
    }
}

/// Rolling: equal lengths pass on pin and bore. Sliding: the contact is still on the one that turns
/// with the pull.
#[test]
fn equal_lengths_roll_by_and_then_only_one_of_the_two_is_rubbed() {
    for turns in [Turns::Outer, Turns::Inner] {
        let joint = engagement(16, turns);
        let rolled = joint.at(0.7 * joint.roll_rad() / joint.articulation_rad());
        let (bore_mm, pin_mm) = (1.815 * rolled.on_bore.at_rad, 1.8 * rolled.on_pin.at_rad);
        assert!((bore_mm - pin_mm).abs() < 1e-12, "{turns:?} {bore_mm} {pin_mm}");
        let (one, two) = (joint.at(0.3), joint.at(0.9));
        let moved = |seen: fn(&Seated) -> Rubbed| seen(&two).at_rad - seen(&one).at_rad;
        let (bore, pin) = (moved(|seated| seated.on_bore), moved(|seated| seated.on_pin));
        let (rubbed, still) = if turns == Turns::Outer { (bore, pin) } else { (pin, bore) };
        assert!(close(rubbed, 0.6 * joint.articulation_rad()) && still.abs() < ROUNDING);
    }
}

#[test]
fn a_contact_has_been_where_it_began_and_where_it_is() {
    for turns in [Turns::Outer, Turns::Inner] {
        for i in 0..=20 {
            let seated = engagement(16, turns).at(f64::from(i) / 20.0);
            for rubbed in [seated.on_bore, seated.on_pin] {
                assert!(rubbed.low_rad <= 0.0 && rubbed.high_rad >= 0.0);
                assert!(rubbed.low_rad <= rubbed.at_rad && rubbed.at_rad <= rubbed.high_rad);
            }
        }
    }
}

#[test]
fn without_friction_or_beyond_the_ends_nothing_is_out_of_order() {
    let joint = engagement(16, Turns::Outer);
    assert_eq!(joint.at(-3.0), joint.at(0.0));
    assert_eq!(joint.at(7.0), joint.at(1.0));
    let friction = Coefficients { pin: 0.0, face: 0.0, roller: 0.0 };
    let slippery = Engagement { rubbing: Rubbing { friction, ..joint.rubbing }, ..joint };
    let end = slippery.at(1.0);
    assert_eq!([end.climb_rad, end.work.total_n_mm()].map(f64::to_bits), [0.0_f64.to_bits(); 2]);
}
