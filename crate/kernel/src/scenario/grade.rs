//! Tolerance grades: `H8` and the like.

/// The grades that can be asked for: holes with capital letters, shafts with small ones.
pub(super) const GRADES: &[&str] = &[
    "H5", "H6", "H7", "H8", "H9", "H10", "H11", "h5", "h6", "h7", "h8", "h9", "h10", "h11", "JS5",
    "JS6", "JS7", "JS8", "JS9", "JS10", "JS11", "js5", "js6", "js7", "js8", "js9", "js10", "js11",
];

/// Grade numbers of the columns of [`ROWS`].
const FIRST_GRADE: usize = 5;
const MM_PER_UM: f64 = 0.001;

/// Sizes over the row before up to this, mm, and the width of the tolerance, um, for grades 5 to
/// 11. Source: ISO 286-1, standard tolerances, from memory; the row from 3 to 6 mm is also printed
/// in public tables.
const ROWS: &[(f64, [f64; 7])] = &[
    (3.0, [4.0, 6.0, 10.0, 14.0, 25.0, 40.0, 60.0]),
    (6.0, [5.0, 8.0, 12.0, 18.0, 30.0, 48.0, 75.0]),
    (10.0, [6.0, 9.0, 15.0, 22.0, 36.0, 58.0, 90.0]),
    (18.0, [8.0, 11.0, 18.0, 27.0, 43.0, 70.0, 110.0]),
    (30.0, [9.0, 13.0, 21.0, 33.0, 52.0, 84.0, 130.0]),
    (50.0, [11.0, 16.0, 25.0, 39.0, 62.0, 100.0, 160.0]),
    (80.0, [13.0, 19.0, 30.0, 46.0, 74.0, 120.0, 190.0]),
    (120.0, [15.0, 22.0, 35.0, 54.0, 87.0, 140.0, 220.0]),
];

/// The largest size that the grades are known for, mm.
pub(super) const LARGEST_GRADED_MM: f64 = 120.0;

/// Width of the tolerance of a grade number at a size, mm; none outside the table.
pub fn tolerance_mm(grade: usize, size_mm: f64) -> Option<f64> {
    let (_, widths_um) = ROWS.iter().find(|(up_to_mm, _)| size_mm <= *up_to_mm)?;
    let width_um = widths_um.get(grade.checked_sub(FIRST_GRADE)?)?;
    Some(width_um * MM_PER_UM)
}

/// How far below and above its nominal a size of a grade may lie, mm: H is 0 to +IT, h is -IT to 0,
/// JS and js are half of IT either way. None for a grade or size that is not known.
pub fn deviations_mm(grade: &str, size_mm: f64) -> Option<(f64, f64)> {
    let letters = grade.trim_end_matches(|figure: char| figure.is_ascii_digit());
    let width_mm = tolerance_mm(grade.get(letters.len()..)?.parse().ok()?, size_mm)?;
    match letters {
        "H" => Some((0.0, width_mm)),
        "h" => Some((width_mm, 0.0)),
        "JS" | "js" => Some((0.5 * width_mm, 0.5 * width_mm)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_grade_is_known_up_to_the_largest_size() {
        for grade in GRADES {
            let (minus, plus) = deviations_mm(grade, LARGEST_GRADED_MM).expect(grade);
            assert!(minus + plus > 0.0);
        }
        assert_eq!(deviations_mm("H8", 120.5), None);
        assert_eq!(deviations_mm("q8", 5.0), None);
        assert_eq!(deviations_mm("H99999999999999999999", 5.0), None);
    }

    #[test]
    fn tolerances_grow_with_size_and_grade() {
        for pair in ROWS.windows(2) {
            assert!(pair[0].0 < pair[1].0);
            assert!(pair[0].1.iter().zip(&pair[1].1).all(|(small, large)| small < large));
        }
        assert!(ROWS.iter().all(|(_, widths)| widths.is_sorted()));
    }
}
