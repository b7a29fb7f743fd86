//! Dimensions and what follows from them as comma-separated text.

use crate::chain::{Dimension, Sizes};
use crate::quantity::Quantity;
use std::fmt::Write;

/// One row for each dimension of a chain: key, letter, value in the unit that the key ends in with
/// every figure that it has, and where it comes from: `stated` or `default`; then the quantities
/// that follow, marked `derived`. Rows end as RFC 4180 has it; no field needs quotes.
pub fn dimensions_csv(sizes: &Sizes, is_stated: impl Fn(Dimension) -> bool) -> String {
    let mut csv = String::from("key,letter,value,from\r\n");
    let mut row = |key: &str, letter: &str, value: f64, from: &str| {
        // Writing to a text cannot fail.
        let _ = write!(csv, "{key},{letter},{value},{from}\r\n");
    };
    for &dimension in Dimension::ALL {
        let from = if is_stated(dimension) { "stated" } else { "default" };
        row(dimension.key(), dimension.letter(), dimension.of(sizes), from);
    }
    for &quantity in Quantity::GEOMETRY {
        row(quantity.key(), "", quantity.of(sizes), "derived");
    }
    csv
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Construction;
    use crate::table::Published;

    #[test]
    fn every_number_is_written_with_all_its_figures() {
        let size = Published::of_number("40").expect("it is in the table");
        let filled = size.fill(Construction::Bushed);
        let sizes = filled.sizes();
        let csv = dimensions_csv(&sizes, |wanted| {
            filled.stated.iter().any(|(named, _)| *named == wanted)
        });
        let mut rows = csv.lines().skip(1).map(|line| line.split(',').collect::<Vec<_>>());
        for &dimension in Dimension::ALL {
            let row = rows.next().expect("a row for each dimension");
            assert_eq!(row[0], dimension.key());
            let value: f64 = row[2].parse().expect("a number");
            assert_eq!(value.to_bits(), dimension.of(&sizes).to_bits());
        }
        assert!(csv.contains("bore_mm,d3,4.0005,stated\r\n"), "{csv}");
        assert!(csv.contains("mouth_radius_mm,r,0,default\r\n"), "{csv}");
    }
}
