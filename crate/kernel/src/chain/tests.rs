use super::*;

/// A bushed chain of half an inch, sizes chosen.
pub(crate) fn bushed() -> Sizes {
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 6.35),
        (Dimension::PinDiameter, 3.58),
    ];
    Sizes::from_stated(Construction::Bushed, &stated)
}

#[test]
fn the_defaults_make_a_chain_of_either_construction() {
    assert!(Chain::new(bushed()).unwrap().goes_together());
    let collared = Sizes::from_stated(
        Construction::Collared,
        &[
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 2.4),
            (Dimension::PinDiameter, 3.6),
        ],
    );
    assert!(Chain::new(collared).unwrap().goes_together());
}

#[test]
fn derived_sizes_are_sums_and_differences() {
    let sizes = Sizes {
        inner_width_mm: 3.0,
        inner_plate_mm: 1.0,
        outer_spacing_mm: 5.4,
        bearing_length_mm: 1.5,
        mouth_radius_mm: 0.25,
        ..Sizes::default()
    };
    assert!((sizes.side_gap_mm() - 0.4).abs() < 1e-14);
    assert!((sizes.bearing_width_mm() - 1.0).abs() < 1e-14);
    let collared = Sizes { construction: Construction::Collared, ..sizes };
    assert!((collared.bearing_width_mm() - 4.5).abs() < 1e-14);
}

#[test]
fn every_impossible_size_is_refused_and_named() {
    let good = bushed();
    let refused = [
        (Dimension::Pitch, 0.0),
        (Dimension::Pitch, f64::NAN),
        (Dimension::Pitch, 1e6),
        (Dimension::RollerDiameter, 12.7),
        (Dimension::RollerBore, 7.75),
        (Dimension::RollerBore, 3.0),
        (Dimension::RollerLength, 7.2),
        (Dimension::PinBore, 3.58),
        (Dimension::PinBore, -0.1),
        (Dimension::PinLength, 5.0),
        (Dimension::Bore, 2.0),
        (Dimension::Barrel, 3.5),
        (Dimension::BearingLength, 12.0),
        (Dimension::MouthRadius, 5.0),
        (Dimension::InnerPlate, -1.0),
        (Dimension::InnerPlateHeight, 4.0),
        (Dimension::OuterPlateHeight, 3.0),
        (Dimension::InnerWaist, 13.0),
        (Dimension::OuterWaist, 13.0),
        (Dimension::EdgeChamfer, 1.0),
        (Dimension::InnerOverhang, 6.35),
        (Dimension::OuterOverhang, 6.35),
        (Dimension::OuterSpacing, 8.0),
    ];
    for (dimension, mm) in refused {
        let mut sizes = good;
        dimension.put(&mut sizes, mm);
        let faults = Chain::new(sizes).expect_err(dimension.key());
        assert!(faults.iter().any(|fault| fault.field == dimension.key()), "{faults:?}");
    }
}

#[test]
fn a_small_overlap_is_drawn_and_a_large_one_refused() {
    let mut tight = bushed();
    tight.bore_mm = tight.pin_diameter_mm - 0.02;
    let chain = Chain::new(tight).unwrap();
    let overlaps = chain.interference();
    assert_eq!(overlaps.len(), 1);
    assert_eq!(overlaps[0].between, Pair::PinBore);
    assert!((overlaps[0].too_little_mm - 0.02).abs() < 1e-12);
    tight.bore_mm = tight.pin_diameter_mm - 0.051 * tight.pitch_mm;
    assert!(Chain::new(tight).is_err());
}

#[test]
fn all_faults_are_told_at_once() {
    let mut sizes = bushed();
    sizes.pitch_mm = -1.0;
    sizes.pin_bore_mm = -1.0;
    assert_eq!(Chain::new(sizes).unwrap_err().len(), 2);
}
