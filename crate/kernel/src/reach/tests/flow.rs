//! What flows through the gaps and how long they take to fill.

use super::*;
use core::f64::consts::PI;

#[test]
fn slot_and_annulus_pass_what_their_closed_forms_say() {
    // Water-thin oil of 0.01 Pa s, 1000 Pa: w h^3 dp / (12 mu L) = 5 * 0.001 * 1000 / (12 * 0.01 * 2).
    let flat = slot(2.0, 5.0, 0.1).conductance(0.01) * 1000.0;
    assert!((flat - 5.0 * 0.001 * 1000.0 / 0.24).abs() < 1e-12 * flat);
    let (r, h, length) = (1.8, 0.0125, 5.0);
    let round = |e| annulus(length, r, h, e).conductance(0.01);
    let expected = PI * r * h * h * h / (6.0 * 0.01 * length);
    assert!((round(0.0) / expected - 1.0).abs() < ROUNDING);
    assert!((round(1.0) / round(0.0) - 2.5).abs() < ROUNDING);
    // Between rings: q = pi h^3 dp / (6 mu ln(R / r)).
    let ring = radial_slot(4.0, 1.8, 0.1, 0.0).conductance(0.01);
    let expected = PI * 0.001 / (6.0 * 0.01 * libm::log(4.0 / 1.8));
    assert!((ring / expected - 1.0).abs() < 1e-9);
}

/// Flow through a gap h (1 + e cos phi) round a pin: the mean of its cube, by the midpoint rule.
#[test]
fn an_eccentric_annulus_passes_the_integral_of_its_gaps() {
    for e in [0.0, 0.3, 0.7, 1.0] {
        let steps = 2000;
        let cube = |i: i32| {
            let gap = 1.0 + e * libm::cos(2.0 * PI * (f64::from(i) + 0.5) / f64::from(steps));
            gap * gap * gap
        };
        let integral = (0..steps).map(cube).sum::<f64>() / f64::from(steps);
        let even = annulus(5.0, 1.8, 0.0125, 0.0).conductance(0.1);
        let got = annulus(5.0, 1.8, 0.0125, e).conductance(0.1);
        assert!((got / even / integral - 1.0).abs() < 1e-9, "{e}");
    }
}

#[test]
fn flow_in_is_flow_out_at_every_place_and_the_pin_lets_little_through() {
    for &construction in Construction::ALL {
        let sizes = sizes(construction);
        for pose in [Pose::straight(&sizes), turned(&sizes)] {
            let network = Network::of(&sizes, &pose, Joint::First);
            let flows = network.flows_mm3_per_s(1000.0, 0.1);
            for place in 2..8 {
                let sum = |of: fn(&Edge) -> usize| {
                    let edges = network.edges.iter().zip(&flows);
                    edges.filter(|(edge, _)| of(edge) == place).map(|(_, q)| q).sum::<f64>()
                };
                assert!((sum(|edge| edge.to) - sum(|edge| edge.from)).abs() < 1e-9);
            }
            let largest = flows.iter().fold(0.0, |most: f64, q| most.max(q.abs()));
            assert!(largest > 0.0);
        }
    }
}

/// A bushed joint is passages one after another: their resistances add up.
#[test]
fn a_straight_way_through_adds_its_resistances() {
    let sizes = sizes(Construction::Bushed);
    let network = Network::of(&sizes, &Pose::straight(&sizes), Joint::First);
    let flows = network.flows_mm3_per_s(1000.0, 0.1);
    let through = |gaps: [Gap; 2]| {
        let edges = network.edges.iter().filter(|edge| gaps.contains(&edge.face.gap));
        1000.0 / edges.map(|edge| 1.0 / edge.passage.conductance(0.1)).sum::<f64>()
    };
    for (edge, q) in network.edges.iter().zip(&flows) {
        let expected = match edge.face.gap {
            Gap::Side | Gap::PinBore => through([Gap::Side, Gap::PinBore]),
            _ => through([Gap::RollerSide, Gap::RollerBarrel]),
        };
        assert!((q.abs() / expected - 1.0).abs() < 1e-9);
    }
}

/// 3 mu L^2 / (h gamma cos theta) for the side gap, which fills first.
#[test]
fn a_slot_fills_in_the_time_of_its_closed_form() {
    let sizes = sizes(Construction::Bushed);
    let liquid = Liquid { pressure_pa: 0.0, ..LIQUID };
    let probes = Probes { bristle_mm: 0.08, particle_mm: 0.01 };
    let entered = Entered::of(&sizes, &Pose::straight(&sizes), Joint::First, &probes, &liquid);
    let (length, h) = (4.05 - 0.5 * 3.625 - 0.25, 0.1);
    let metres = 1e-3 * length * length / h;
    let expected = 3.0 * 0.1 * metres / (0.03 * libm::cos(0.35));
    let got = of(&entered, Gap::Side, End::Far).fill_time_s.expect("it wets");
    assert!((got / expected - 1.0).abs() < 1e-9, "{got} {expected}");
    let pin = of(&entered, Gap::PinBore, End::Far).fill_time_s.expect("it wets");
    assert!(pin > got);
}

#[test]
fn what_does_not_wet_stays_out_until_it_is_pressed_in() {
    let sizes = sizes(Construction::Collared);
    let probes = Probes { bristle_mm: 0.08, particle_mm: 0.01 };
    let wet = |pressure_pa| {
        let liquid = Liquid { angle_rad: 2.0, pressure_pa, ..LIQUID };
        let entered = Entered::of(&sizes, &Pose::straight(&sizes), Joint::First, &probes, &liquid);
        entered.faces.iter().filter(|face| face.fill_time_s.is_some()).count()
    };
    assert_eq!(wet(0.0), 0);
    // 2 gamma cos(theta) / h: 250 Pa keep it out of the side gap, 2000 Pa out of the pin's.
    assert!(wet(1000.0) > 0 && wet(1000.0) < 9);
    assert_eq!(wet(1e5), 9);
}

#[test]
fn a_pin_that_fills_its_hole_lets_nothing_in() {
    let mut sizes = sizes(Construction::Bushed);
    sizes.bore_mm = sizes.pin_diameter_mm;
    let entered = straight(&sizes, Probes { bristle_mm: 0.08, particle_mm: 0.01 });
    let pin = of(&entered, Gap::PinBore, End::Far);
    assert_eq!(pin.fill_time_s, None);
    assert!(pin.particle_fraction < ROUNDING && pin.flow_mm3_per_s < ROUNDING);
}
