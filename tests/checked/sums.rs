//! Sums of tolerances against published figures: `reference/fit.csv`.

use super::Sheet;
use crate::Row;
use lightgap::fit::{Part, inflated, root_sum_square, uniform_inflated, worst_case};

/// The dimensions of a stack by their signs and tolerances.
fn parts(of: &str) -> Option<Vec<Part>> {
    const SHAFT: [(f64, f64); 7] = [
        (-1.0, 0.0015),
        (1.0, 0.008),
        (-1.0, 0.0025),
        (1.0, 0.002),
        (-1.0, 0.006),
        (1.0, 0.002),
        (-1.0, 0.0025),
    ];
    let part = |(slope, half): (f64, f64)| Part { slope, half, shift: 0.0 };
    Some(match of {
        "shaft in a housing" => SHAFT.map(part).to_vec(),
        "ten equal of 0.1" => vec![part((1.0, 0.1)); 10],
        _ => return None,
    })
}

pub(super) fn sheet() -> Sheet {
    Sheet::of_rows("Sums of tolerances", "tests/reference/fit.csv", |row: &Row| {
        let parts = parts(&row.of)?;
        Some(match row.what.as_str() {
            "worst_case" => worst_case(&parts),
            "root_sum_square" => root_sum_square(&parts),
            "uniform_inflated" => uniform_inflated(&parts),
            "inflated" => inflated(&parts),
            _ => return None,
        })
    })
}
