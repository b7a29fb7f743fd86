//! Whole strands, brought from nothing to their offset: every round, not one linear problem.

use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::strand::{Ends, Outcome, Setup, Solution, Strand};

/// The reference chain of the derivation.
const STATED: [(Dimension, f64); 10] = [
    (Dimension::Pitch, 12.7),
    (Dimension::RollerDiameter, 7.75),
    (Dimension::InnerWidth, 3.0),
    (Dimension::InnerPlate, 1.0),
    (Dimension::PinDiameter, 3.6),
    (Dimension::Bore, 3.63),
    (Dimension::OuterSpacing, 5.4),
    (Dimension::BearingLength, 5.0),
    (Dimension::InnerOverhang, 4.2),
    (Dimension::OuterOverhang, 4.2),
];

/// A springy strand of so many joints, made and brought to half past its free offset.
pub fn brought(joints: usize) -> Solution {
    let sizes = Sizes::from_stated(Construction::Bushed, &STATED);
    let setup = Setup { joints, tension_n: 300.0, stiffness_n_mm: Some(6e5), ends: Ends::Held };
    let mut strand = Strand::new(&sizes, setup);
    let solution = strand.solve(1.5 * strand.free_offset_mm());
    assert_eq!(solution.outcome, Outcome::Solved);
    solution
}
