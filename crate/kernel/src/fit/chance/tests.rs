use super::*;
use crate::chain::Dimension;
use crate::fit::tests::trike;
use crate::fit::{Asked, Law};
use crate::quantity::Quantity;

/// The share of a normal law up to a number of standard deviations.
fn below(z: f64) -> f64 {
    0.5 * libm::erfc(-z / 2.0_f64.sqrt())
}

fn side_gap(low: f64, high: f64) -> Wanted {
    let asked = Asked::Catalogue(Quantity::SideGap);
    Wanted { asked, at_least: Some(low), at_most: Some(high) }
}

#[test]
fn a_yield_of_normal_laws_is_that_of_the_closed_form() {
    let study = Study::new(trike(), vec![side_gap(0.16, 0.25)], 200_000);
    let sd = study.stacks[0].as_ref().expect("a stack").rss_sd;
    let chance = study.whole();
    let each = &chance.each[0];
    let exact = below((0.25 - 0.2) / sd) - below((0.16 - 0.2) / sd);
    let (found, se) = each.yield_fraction;
    assert!((found - exact).abs() < 5.0 * se, "{found} {exact} {se}");
    assert!((each.mean.0 - 0.2).abs() < 5.0 * each.mean.1);
    assert!((each.sd.0 - sd).abs() < 5.0 * each.sd.1);
    for percentile in &each.percentiles {
        let exact = below((percentile.value - 0.2) / sd);
        let error = percentile.se / sd;
        let slack = 5.0 * error + 1e-3;
        assert!((exact - percentile.share).abs() < slack, "{percentile:?} {exact}");
    }
    let counted: f64 = each.histogram.iter().map(|bin| bin.count).sum();
    assert!((counted - 200_000.0).abs() < 0.5, "{counted}");
}

#[test]
fn any_cut_of_the_blocks_gives_the_same_bits() {
    let turn = Wanted {
        asked: Asked::Catalogue(Quantity::TurnLimit),
        at_least: Some(0.009),
        at_most: None,
    };
    let study = Study::new(trike(), vec![side_gap(0.16, 0.24), turn], 30_001);
    let whole = study.run(0, study.blocks());
    for workers in [1, 2, 7] {
        let share = study.blocks().div_ceil(workers);
        let mut joined = study.tally();
        // Whoever is ready first: the parts are joined in the order of their blocks all the same.
        let parts: Vec<_> =
            (0..workers).rev().map(|w| study.run(w * share, (w + 1) * share)).collect();
        parts.iter().rev().for_each(|part| joined.join(part));
        assert_eq!(joined, whole, "{workers} workers");
        let bits = |chance: &Chance| {
            let each = &chance.each[0];
            [each.mean.0, each.mean.1, each.sd.0, each.sd.1, each.percentiles[3].value]
                .map(f64::to_bits)
        };
        assert_eq!(bits(&study.chance(&joined)), bits(&study.chance(&whole)));
    }
    assert_eq!(whole.sets, 30_001);
}

#[test]
fn the_sets_that_fail_by_most_can_be_drawn_again() {
    let study = Study::new(trike(), vec![side_gap(0.17, 0.23)], 20_000);
    let chance = study.whole();
    let worst = &chance.each[0].worst;
    assert_eq!(worst.len(), 3);
    assert!(worst.windows(2).all(|pair| pair[0].outside >= pair[1].outside));
    for kept in worst {
        let value = study.many.set(kept.set).side_gap_mm();
        assert_eq!(value.to_bits(), kept.value.to_bits());
        assert!(!(0.17..=0.23).contains(&value));
    }
}

#[test]
fn chains_that_do_not_go_together_are_failures() {
    let mut many = trike();
    // Pins as large as their holes on the average: half of them do not go in.
    many.nominal.pin_diameter_mm = 3.625;
    many.spreads[0].low_mm = 3.62;
    many.spreads[0].high_mm = 3.63;
    let study = Study::new(many, vec![side_gap(0.0, 1.0)], 20_000);
    let chance = study.whole();
    let share = chance.apart as f64 / chance.sets as f64;
    assert!((share - 0.5).abs() < 0.02, "{share}");
    let (found, _) = chance.each[0].yield_fraction;
    assert!((found + share - 1.0).abs() < 1e-12);
}

#[test]
fn a_tally_is_what_every_set_says_alone() {
    let mut asked: Vec<_> =
        Quantity::ALL.iter().map(|quantity| Asked::Catalogue(*quantity)).collect();
    asked.extend([Asked::FreeOffset { joints: 30 }, Asked::PitchUnderLoad]);
    let wanted: Vec<_> =
        asked.into_iter().map(|asked| Wanted { asked, at_least: None, at_most: None }).collect();
    let (mut told, mut apart) = (0, 0);
    // Pins from loose to as large as their holes; the widest limits hold rare sizes.
    for (pin_mm, times) in [(3.6, 1.0), (3.6, 4.0), (3.614, 1.0), (3.62, 1.0), (3.625, 1.0)] {
        let mut many = trike();
        many.nominal.pin_diameter_mm = pin_mm;
        for (spread, middle_mm) in many.spreads.iter_mut().zip([pin_mm, 3.625, 1.0, 4.6]) {
            let half_mm = times * spread.half_mm();
            (spread.low_mm, spread.high_mm) = (middle_mm - half_mm, middle_mm + half_mm);
        }
        let study = Study::new(many, wanted.clone(), 6_000);
        let whole = study.run(0, study.blocks());
        let mut alone = study.tally();
        for first in (0..study.sets).step_by(BLOCK) {
            alone.each.iter_mut().for_each(DemandTally::begin);
            let sets = first..study.sets.min(first + BLOCK as u64);
            sets.for_each(|set| study.count(set, &[study.many.set(set)], &mut alone));
        }
        assert_eq!(alone, whole, "pin {pin_mm}, limits times {times}");
        told += u64::from(whole.apart == 0);
        apart += whole.apart + whole.unmade;
    }
    assert!(told > 0 && apart > 0, "{told} told, {apart} apart");
}

#[test]
fn other_limits_on_one_dimension_leave_the_draws_of_the_others() {
    let many = trike();
    let mut other = trike();
    other.spreads[3].law = Law::Uniform;
    let (before, after) = (many.set(77), other.set(77));
    assert_eq!(before.pin_diameter_mm.to_bits(), after.pin_diameter_mm.to_bits());
    assert_ne!(before.outer_spacing_mm.to_bits(), after.outer_spacing_mm.to_bits());
    assert_eq!(many.spreads[3].dimension, Dimension::OuterSpacing);
}

#[test]
fn a_tally_is_the_same_after_a_journey_as_numbers() {
    let study = Study::new(trike(), vec![side_gap(0.17, 0.23)], 9_000);
    let (first, rest) = (study.run(0, 2), study.run(2, study.blocks()));
    let mut joined = study.tally();
    assert!(joined.join_packed(&first.packed()) && joined.join_packed(&rest.packed()));
    assert_eq!(joined, study.run(0, study.blocks()));
    assert!(!joined.join_packed(&first.packed()[1..]), "a row that is too short is refused");
    assert_eq!(joined.sets, 9_000);
}
