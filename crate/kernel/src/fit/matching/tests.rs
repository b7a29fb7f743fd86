use super::*;
use crate::fit::tests::trike;
use crate::fit::{Asked, Law};
use crate::quantity::Quantity;

fn spread(dimension: Dimension, low_mm: f64, high_mm: f64) -> Spread {
    Spread { dimension, low_mm, high_mm, law: Law::Uniform, sigmas: 3.0, mean_shift: 0.0 }
}

/// Four first and four second parts between 0 and 4 and between 10 and 14.
fn pair(alike: bool) -> Pairing {
    let first = spread(Dimension::Bore, 0.0, 4.0);
    let second = spread(Dimension::Barrel, 10.0, 14.0);
    let parts: [&[f64]; 2] = [&[0.5, 1.0, 3.5, 9.0], &[13.0, 10.5, 11.5, 8.0]];
    Pairing::by_class(parts, [&first, &second], 2, alike)
}

#[test]
fn a_class_pairs_its_own_in_the_order_in_which_they_came() {
    // First parts: two low, two high (one above the limits). Second: one high, three low.
    let pairing = pair(true);
    assert_eq!((pairing.firsts.as_slice(), pairing.seconds.as_slice()), (&[2, 2][..], &[3, 1][..]));
    assert!(pairing.partners().eq([Some(1), Some(2), Some(0), None]));
    assert!((pairing.leftover_fraction() - 0.25).abs() < 1e-15);
}

#[test]
fn large_goes_with_small_where_a_number_takes_both_alike() {
    let pairing = pair(false);
    assert!(pairing.partners().eq([Some(0), None, Some(1), Some(2)]));
}

#[test]
fn nobody_is_paired_twice() {
    let many = trike();
    let wanted = side_gap();
    let dimensions = [Dimension::InnerPlate, Dimension::OuterSpacing];
    let shop = Shop::new(&many, wanted, dimensions, 10_000).expect("both have limits");
    let parts = shop.parts_mm();
    for pairing in [shop.sorted(&parts, 4), shop.sorted(&parts, 1), shop.ranked(&parts)] {
        let mut partners: Vec<_> = pairing.partners().flatten().collect();
        partners.sort_unstable();
        let count = partners.len();
        partners.dedup();
        assert_eq!(partners.len(), count);
    }
    assert_eq!(shop.ranked(&parts).pairs(), 10_000);
}

#[test]
fn two_that_are_paired_are_told_to_be_of_one_class() {
    let many = trike();
    let dimensions = [Dimension::InnerPlate, Dimension::OuterSpacing];
    let shop = Shop::new(&many, side_gap(), dimensions, 10_000).expect("both have limits");
    let [firsts, seconds] = shop.parts_mm();
    let [first, second] = shop.classes(5);
    let pairing = shop.sorted(&[firsts.clone(), seconds.clone()], 5);
    for (mm, partner) in firsts.iter().zip(pairing.partners()) {
        let Some(partner) = partner else { continue };
        assert_eq!(first(*mm), second(seconds[partner]));
    }
    let in_last = firsts.iter().filter(|mm| first(**mm) == 4).count();
    assert_eq!(in_last, pairing.firsts[4] as usize);
}

fn side_gap() -> Wanted {
    let asked = Asked::Catalogue(Quantity::SideGap);
    Wanted { asked, at_least: Some(0.15), at_most: Some(0.25) }
}

#[test]
fn equal_spreads_shrink_to_about_one_in_m() {
    // The spread that two inner plates make of the gap equals that of the outer spacing.
    let mut many = trike();
    many.spreads[2].low_mm = 0.975;
    many.spreads[2].high_mm = 1.025;
    for spread in &mut many.spreads {
        spread.law = Law::Uniform;
    }
    let dimensions = [Dimension::InnerPlate, Dimension::OuterSpacing];
    let shop = Shop::new(&many, side_gap(), dimensions, 40_000).expect("both have limits");
    let parts = shop.parts_mm();
    let sd = |pairing: Option<&Pairing>| shop.assemble(&parts[1], pairing).moments.sd();
    let before = sd(None);
    for classes in [2, 4, 8] {
        let after = sd(Some(&shop.sorted(&parts, classes)));
        let share = after / before * f64::from(classes);
        assert!((share - 1.0).abs() < 0.03, "{classes} classes: {share}");
    }
    assert!(sd(Some(&shop.ranked(&parts))) < 0.03 * before);
}

#[test]
fn no_pairing_of_all_parts_is_less_spread_than_by_rank() {
    let many = trike();
    let dimensions = [Dimension::InnerPlate, Dimension::OuterSpacing];
    let shop = Shop::new(&many, side_gap(), dimensions, 20_000).expect("both have limits");
    let parts = shop.parts_mm();
    let sd = |pairing: Option<&Pairing>| shop.assemble(&parts[1], pairing).moments.sd();
    let rank = shop.ranked(&parts);
    let best = sd(Some(&rank));
    assert!(best < sd(None) && best < sd(Some(&shop.sorted(&parts, 1))));
    // Exchanging the partners of two parts of different size widens it.
    for (one, other) in [(3, 7_000), (11, 19_999), (500, 501)] {
        assert!(sd(Some(&rank.clone().exchanged(one, other))) > best);
    }
}
