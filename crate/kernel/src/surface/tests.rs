use super::*;
use core::f64::consts::PI;

/// Rounding of sums of some thousand numbers of the order of 1.
const ROUNDING: f64 = 1e-12;

fn rough(seed: u64) -> Profile {
    Profile::seeded(Roughness::Rz(0.6), 20.0, seed)
}

/// Waves of 400 um.
fn sine(amplitude_um: f64, points_a_wave: usize, waves: usize) -> Profile {
    let height = |i: usize| amplitude_um * libm::sin(2.0 * PI * i as f64 / points_a_wave as f64);
    let step_um = 400.0 / points_a_wave as f64;
    Profile { step_um, heights_um: (0..points_a_wave * waves).map(height).collect() }
}

/// The closing as it is defined, every point against every other.
fn naive_closed_um(profile: &Profile, radius_um: f64) -> Vec<f64> {
    let z = &profile.heights_um;
    let shape = |i: usize, j: usize| {
        let along_um = i.abs_diff(j) as f64 * profile.step_um;
        (along_um <= radius_um)
            .then(|| ((radius_um - along_um) * (radius_um + along_um)).max(0.0).sqrt())
    };
    let traced: Vec<f64> = (0..z.len())
        .map(|i| {
            let centres = (0..z.len()).filter_map(|j| Some(z[j] + shape(i, j)?));
            centres.fold(f64::NEG_INFINITY, f64::max)
        })
        .collect();
    let lowest = |i: usize| {
        let undersides = (0..z.len()).filter_map(|j| Some(traced[j] - shape(i, j)?));
        undersides.fold(f64::INFINITY, f64::min)
    };
    (0..z.len()).map(lowest).collect()
}

#[test]
fn the_closing_is_that_of_every_point_against_every_other_to_the_bit() {
    for seed in 0..6 {
        let mut profile = rough(seed);
        profile.heights_um.truncate(600);
        // Rougher than true, so that disks of these sizes do not fit everywhere.
        profile.heights_um.iter_mut().for_each(|z| *z *= 30.0);
        for radius_um in [0.0, 0.3, 0.5, 4.0, 25.3, 100.0, 5000.0] {
            let (fast, naive) =
                (closed_um(&profile, radius_um), naive_closed_um(&profile, radius_um));
            let same = fast.iter().zip(&naive).all(|(a, b)| a.to_bits() == b.to_bits());
            assert!(same, "seed {seed}, radius {radius_um}");
        }
    }
}

#[test]
fn flat_and_stepped_faces_close_as_every_point_against_every_other() {
    let flat = Profile { step_um: 0.1, heights_um: vec![0.7; 40] };
    let steps = (0..80).map(|i| if i / 10 % 2 == 0 { 0.0 } else { 1.0 }).collect();
    for profile in [flat, Profile { step_um: 0.1, heights_um: steps }] {
        for radius_um in [0.05, 0.35, 2.0, 40.0] {
            let (fast, naive) =
                (closed_um(&profile, radius_um), naive_closed_um(&profile, radius_um));
            assert!(fast.iter().zip(&naive).all(|(a, b)| (a - b).abs() < ROUNDING));
        }
    }
}

#[test]
fn a_closing_fills_and_never_cuts_and_is_done_after_once() {
    let profile = rough(3);
    for radius_um in [0.3, 30.0, 3000.0] {
        let closed = closed_um(&profile, radius_um);
        let pairs = || closed.iter().zip(&profile.heights_um);
        assert!(pairs().all(|(filled, z)| *filled >= z - ROUNDING));
        let twice =
            closed_um(&Profile { heights_um: closed.clone(), ..profile.clone() }, radius_um);
        assert!(twice.iter().zip(&closed).all(|(a, b)| (a - b).abs() < 1e-9 * radius_um));
    }
}

#[test]
fn a_larger_disk_never_reaches_deeper() {
    let profile = rough(9);
    let mut before = profile.heights_um.clone();
    for radius_um in [1.0, 10.0, 100.0, 1000.0, 10_000.0] {
        let closed = closed_um(&profile, radius_um);
        let lower = closed.iter().zip(&before).map(|(now, then)| then - now).fold(0.0, f64::max);
        // A centre can only stand above a point of the profile, every 0.5 um.
        assert!(lower < 1e-3, "{radius_um}: {lower}");
        before = closed;
    }
}

/// Model: a sine is unchanged by a disk up to the radius of curvature at its bottom.
#[test]
fn a_sine_is_felt_whole_by_its_closing_radius_and_not_by_a_larger_one() {
    let (amplitude_um, wave) = (2.0, 4000);
    let profile = sine(amplitude_um, wave, 5);
    let radius_um = sine_radius_um(amplitude_um, 400.0);
    assert!((radius_um - 160_000.0 / (8.0 * PI * PI)).abs() < 1e-9);
    let missed = |radius_um: f64| {
        let closed = closed_um(&profile, radius_um);
        let inside = wave..4 * wave;
        inside.map(|i| closed[i] - profile.heights_um[i]).fold(0.0, f64::max)
    };
    // The centre can only stand above a point, every 0.1 um: where disk and bottom are almost alike
    // that lifts the disk by some 1e-5 um.
    let [within, beyond] = [0.99, 1.5].map(|times| missed(times * radius_um));
    assert!(within < 1e-4, "{within}");
    assert!(beyond > 0.02, "{beyond}");
}

#[test]
fn a_sine_has_the_parameters_of_its_integrals() {
    let (amplitude_um, points) = (2.0, 1000);
    let got = Parameters::of(&sine(amplitude_um, points, 5));
    assert!((got.ra_um - 2.0 * amplitude_um / PI).abs() < 1e-5);
    assert!((got.rq_um - amplitude_um / 2.0_f64.sqrt()).abs() < ROUNDING);
    assert!((got.rz_um - 2.0 * amplitude_um).abs() < ROUNDING);
    assert!(got.skewness.abs() < ROUNDING);
    assert!((got.kurtosis - 1.5).abs() < ROUNDING);
}

#[test]
fn a_profile_has_the_roughness_that_is_asked_for() {
    for seed in [1, 2, 3] {
        let of = |roughness| Parameters::of(&Profile::seeded(roughness, 20.0, seed));
        assert!((of(Roughness::Ra(0.2)).ra_um - 0.2).abs() < ROUNDING);
        assert!((of(Roughness::Rq(0.2)).rq_um - 0.2).abs() < ROUNDING);
        assert!((of(Roughness::Rz(0.6)).rz_um - 0.6).abs() < ROUNDING);
    }
}

/// One over e at the correlation length, zero at twice; the spread of many profiles.
#[test]
fn heights_are_alike_over_the_correlation_length() {
    let lags = [(0.5, libm::exp(-0.25)), (1.0, libm::exp(-1.0)), (2.0, libm::exp(-4.0))];
    let profiles: Vec<Profile> =
        (0..40).map(|seed| Profile::seeded(Roughness::Rq(1.0), 20.0, seed)).collect();
    for (lengths, expected) in lags {
        let lag = (lengths * 40.0) as usize;
        let alike = |profile: &Profile| {
            let z = &profile.heights_um;
            let pairs = z.iter().zip(&z[lag..]);
            pairs.map(|(a, b)| a * b).sum::<f64>() / (z.len() - lag) as f64
        };
        let mean = profiles.iter().map(alike).sum::<f64>() / profiles.len() as f64;
        // Some hundred free heights a profile, forty profiles: 0.02; the mean line takes another 0.01.
        assert!((mean - expected).abs() < 0.06, "{lengths}: {mean}");
    }
}

#[test]
fn the_same_seed_gives_the_same_profile_and_another_seed_another() {
    assert_eq!(rough(4), rough(4));
    assert_ne!(rough(4), rough(5));
}

/// Common practice, no source: rolled plate is about Rz 0.6 um; particles of 0.6 um settle in its
/// valleys, particles of 6 to 10 um do not.
#[test]
fn small_particles_sit_in_rolled_plate_and_large_ones_do_not() {
    for seed in 0..20 {
        let seated = |diameter_um| Seat::of(&rough(seed), diameter_um).seated_fraction;
        assert!((0.05..0.95).contains(&seated(0.6)), "{}", seated(0.6));
        for diameter_um in [6.0, 8.0, 10.0] {
            assert!(seated(diameter_um) < ROUNDING);
        }
    }
}

#[test]
fn a_larger_particle_never_sits_in_more_places() {
    let profile = Profile::seeded(Roughness::Rz(3.0), 2.0, 1);
    let mut before = 1.0;
    for diameter_um in [0.1, 0.3, 0.6, 1.0, 2.0, 4.0, 8.0] {
        let seated = Seat::of(&profile, diameter_um).seated_fraction;
        assert!(seated <= before);
        before = seated;
    }
    assert!(before < ROUNDING);
}

#[test]
fn peaks_are_stretches_above_the_mean_line() {
    let heights = [0.0, 1.0, 3.0, 2.0, -1.0, 5.0, -1.0, 0.5];
    assert!((peak_level_um(&heights) - (3.0 + 5.0 + 0.5) / 3.0).abs() < ROUNDING);
    let many = [1.0, -1.0, 2.0, -1.0, 3.0, -1.0, 4.0, -1.0, 5.0, -1.0, 6.0];
    assert!((peak_level_um(&many) - 4.0).abs() < ROUNDING);
    assert!(peak_level_um(&[-1.0]) < ROUNDING);
}

#[test]
fn faces_touch_more_as_they_come_nearer() {
    let facing = Facing::of(&rough(1), &rough(2));
    let first = facing.first_touch_ratio();
    assert!((2.0..5.0).contains(&first), "{first}");
    assert!(facing.touching_fraction(first) < ROUNDING);
    assert_eq!(facing.spots(first), 0);
    let mut before = 0.0;
    for film_ratio in [3.0, 2.0, 1.0, 0.5, 0.0] {
        let touching = facing.touching_fraction(film_ratio);
        assert!(touching >= before);
        before = touching;
    }
    assert!(facing.spots(1.0) > 3);
}

/// Heights of two normal faces add up to a normal one: its upper tail is what touches.
#[test]
fn the_touching_share_is_the_tail_of_a_normal_distribution() {
    for (film_ratio, tail) in [(0.5, 0.308_54), (1.0, 0.158_66), (2.0, 0.022_75)] {
        let share = |seed| {
            let rough = |seed| Profile::seeded(Roughness::Rq(0.1), 20.0, seed);
            Facing::of(&rough(seed), &rough(seed + 1000)).touching_fraction(film_ratio)
        };
        let mean = (0..100).map(share).sum::<f64>() / 100.0;
        assert!((mean - tail).abs() < 0.1 * tail, "{film_ratio}: {mean}");
    }
}

#[test]
fn two_faces_without_roughness_have_no_film_ratio() {
    assert_eq!(film_ratio(1.0, [0.0, 0.0]), None);
    let ratio = film_ratio(1.0, [0.3, 0.4]).expect("rough");
    assert!((ratio - 2.0).abs() < ROUNDING);
}
