//! A disk closed over a rough face against another library's morphology: `reference/closing.csv`,
//! written by `reference/closing.py`.

use super::{Check, Sheet, check};
use crate::text_of;
use lightgap::surface::{Profile, closed_um};

/// Radii of the columns, um, and the step of the profile.
const RADII_UM: [f64; 3] = [0.8, 6.0, 40.0];
const STEP_UM: f64 = 0.5;
const SOURCE: &str = "SciPy, grey morphology with a disk; tests/reference/closing.py";
/// A point is filled when it is this much higher than the face, um.
const FILLED_UM: f64 = 1e-9;

/// Face, then closings, point by point.
fn table() -> Vec<Vec<f64>> {
    let text = text_of("tests/reference/closing.csv");
    let number = |cell: &str| cell.parse().unwrap_or(f64::NAN);
    text.lines().skip(1).map(|line| line.split(',').map(number).collect()).collect()
}

fn of_radius(rows: &[Vec<f64>], column: usize, radius_um: f64) -> [Check; 2] {
    let heights_um = rows.iter().map(|row| row[0]).collect();
    let closed = closed_um(&Profile { step_um: STEP_UM, heights_um }, radius_um);
    let differs = |(mine, row): (&f64, &Vec<f64>)| (mine - row[column]).abs();
    let worst = closed.iter().zip(rows).map(differs).fold(0.0, f64::max);
    // The largest of rows that are no numbers would be taken for none.
    let whole = rows.len() == 301 && rows.iter().all(|row| row.iter().all(|cell| cell.is_finite()));
    let got = if whole { worst } else { f64::NAN };
    let filled = |heights: &mut dyn Iterator<Item = (f64, f64)>| {
        heights.filter(|(height, face)| *height > face + FILLED_UM).count() as f64
    };
    let mine = filled(&mut closed.iter().zip(rows).map(|(height, row)| (*height, row[0])));
    let theirs = filled(&mut rows.iter().map(|row| (row[column], row[0])));
    let what = |name: &str| format!("{name}, disk of {radius_um} um on 301 points");
    // Rounding: the radius is added and taken away again.
    let rounding_um = 1e-14 * radius_um.max(1.0);
    [
        check(SOURCE, &what("largest difference"), (0.0, got), rounding_um, "um"),
        check(SOURCE, &what("points filled"), (theirs, mine), 0.0, ""),
    ]
}

pub(super) fn sheet() -> Sheet {
    let rows = table();
    let of = |(column, radius_um): (usize, f64)| of_radius(&rows, column + 1, radius_um);
    let checks = RADII_UM.into_iter().enumerate().flat_map(of).collect();
    Sheet { title: "Closing of a rough face", checks }
}
