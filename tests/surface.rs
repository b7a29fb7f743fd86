//! Rough faces against what the trade says. The closing of an independent library is in
//! `checked/closing.rs`.

use lightgap::report::Report;
use lightgap::scenario::{Scenario, Value};
use lightgap::surface::{Parameters, Profile, Roughness, Seat};
use lightgap_tests::{at, scenarios};

fn with_surface(rz_um: f64, particle_um: f64) -> Scenario {
    let scenario = scenarios().into_iter().find(|(id, _)| id == "ferry-trike").expect("it").1;
    let member = |key, number: f64| (key, Value::from(number));
    let surface = Value::object([member("rz_um", rz_um), member("particle_um", particle_um)]);
    scenario.with("surface", surface).expect("a scenario")
}

/// Common practice, no source: rolled plate is about Rz 0.6 um; particles of 0.6 um settle in its
/// valleys, particles of 8 um do not.
#[test]
fn a_report_says_what_settles_in_rolled_plate() {
    let seated = |particle_um| {
        let report = Report::of(&with_surface(0.6, particle_um));
        report.surface.expect("it is asked for").seated_fraction
    };
    assert!(seated(0.6) > 0.05);
    assert!(seated(8.0) <= 0.0);
}

#[test]
fn a_report_holds_the_numbers_of_the_profile() {
    let section = Report::of(&with_surface(0.6, 0.6)).surface.expect("it is asked for");
    let profile = Profile::seeded(Roughness::Rz(0.6), 20.0, 1);
    let told = Parameters::of(&profile);
    let pairs = [(section.ra_um, told.ra_um), (section.rq_um, told.rq_um), (section.rz_um, 0.6)];
    assert!(pairs.iter().all(|(got, expected)| (got - expected).abs() < 1e-12));
    let seat = Seat::of(&profile, 0.6);
    assert!((section.seated_fraction - seat.seated_fraction).abs() < 1e-12);
    // Half of 0.025 mm over the root of twice the square.
    let film = 12.5 / (2.0_f64.sqrt() * told.rq_um);
    assert!((section.film_ratio - film).abs() < 1e-6 * film);
}

#[test]
fn the_script_of_the_reference_is_kept() {
    assert!(at("tests/reference/closing.py").exists());
}
