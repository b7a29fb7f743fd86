use super::{Measured, Reading};
use crate::chain::{Construction, Dimension};
use crate::error::Rule;

/// A half-inch chain as a caliper reads it over ten pitches; chosen.
const READ: Measured = Measured {
    construction: Construction::Bushed,
    readings_mm: [134.92, 7.92, 7.95, 11.15, 11.4, 14.4, 3.96, 11.8],
    pitches: 10.0,
    doubt_mm: 0.02,
};

/// The readings with one of them changed.
fn with(reading: Reading, mm: f64) -> Measured {
    let mut read = READ;
    read.readings_mm[reading as usize] = mm;
    read
}

#[test]
fn eight_readings_make_a_chain_whose_readings_they_are() {
    let made = READ.chain().expect("a chain");
    let s = made.chain.chain();
    assert!((s.pitch_mm - 12.7).abs() < 1e-12 && (s.inner_plate_mm - 1.6).abs() < 1e-12);
    assert!((s.outer_plate_mm - 1.5).abs() < 1e-12 && (s.side_gap_mm() - 0.25).abs() < 1e-12);
    let again = Measured::like(s, READ.pitches, READ.doubt_mm);
    for (a, b) in again.readings_mm.iter().zip(READ.readings_mm) {
        assert!((a - b).abs() < 1e-12);
    }
    let chosen: Vec<_> = made.chain.defaulted().collect();
    assert_eq!(chosen.len(), Dimension::ALL.len() - Reading::ALL.len());
    assert!(chosen.contains(&Dimension::Bore) && !chosen.contains(&Dimension::OuterSpacing));
}

/// Two readings of 0.02 mm put 0.028 mm of doubt into their difference (root sum square, arithmetic).
#[test]
fn a_gap_is_in_doubt_by_the_root_of_two_readings_squares() {
    let [pitch, inner, _, gap] = READ.chain().expect("a chain").doubts;
    assert!((gap.doubt_mm - 0.028_284_271_247_461_9).abs() < 1e-15);
    assert!((inner.doubt_mm - 0.5 * gap.doubt_mm).abs() < 1e-15);
    assert!((pitch.doubt_mm - 0.1 * gap.doubt_mm).abs() < 1e-15);
}

#[test]
fn a_gap_is_clear_lost_in_its_doubt_or_negative() {
    let told = |between_outer_mm| {
        with(Reading::BetweenOuter, between_outer_mm).chain().expect("a chain").gap
    };
    assert_eq!([11.4, 11.17, 11.13, 11.1].map(told), ["clear", "lost", "lost", "apart"]);
}

#[test]
fn what_cannot_be_read_is_refused_by_the_name_of_its_reading() {
    let refused = |reading, mm| {
        let faults = with(reading, mm).chain().expect_err("no chain");
        (faults[0].field.clone(), faults[0].rule.clone())
    };
    assert_eq!(refused(Reading::Pin, -1.0), ("pin_mm".to_owned(), Rule::Positive));
    assert_eq!(refused(Reading::Roller, f64::NAN), ("roller_mm".to_owned(), Rule::Finite));
    assert!(
        matches!(refused(Reading::OverInner, 7.0), (field, Rule::AboveSize { .. }) if field == "over_inner_mm")
    );
    assert_eq!(refused(Reading::Pin, 9.0).0, "pin_mm", "thicker than the roller");
    assert_eq!(Measured { pitches: 0.0, ..READ }.chain().expect_err("none")[0].field, "pitches");
    assert_eq!(Measured { doubt_mm: 5.0, ..READ }.chain().expect_err("none")[0].field, "doubt_mm");
}
