//! Dimensions with their limits as rows, for a spreadsheet and back.

use super::row::{Column, Row, columns, row, separator};
use crate::error::{Error, Given, Rule};
use crate::scenario::{Scenario, Value};
use std::fmt::Write;

/// The columns in the order in which they are written. A length may also be given in inches, in a
/// column whose name ends in `_in`.
pub(super) const COLUMNS: [&str; 8] =
    ["dimension", "size_mm", "minus_mm", "plus_mm", "grade", "law", "sigmas", "mean_shift"];
/// So many rows are read at most.
const MOST_ROWS: usize = 200;

/// One row for each dimension with limits, in mm, every figure of each number; rows end as RFC 4180
/// has it, no field needs quotes.
pub fn limits_csv(scenario: &Scenario) -> String {
    let sizes = scenario.chain.chain();
    let mut csv = COLUMNS.join(",");
    csv.push_str("\r\n");
    for limit in &scenario.limits {
        let nominal_mm = limit.dimension.of(sizes);
        let (minus_mm, plus_mm) = limit.band.deviations_mm(nominal_mm);
        let (key, law) = (limit.dimension.key(), limit.law);
        let (sigmas, shift) = (limit.sigmas, limit.mean_shift);
        // Writing to a text cannot fail.
        let _ = write!(csv, "{key},{nominal_mm},{minus_mm},{plus_mm},,{law},{sigmas},{shift}\r\n");
    }
    csv
}

/// The scenario with the sizes and limits of a pasted table instead of its own limits.
///
/// # Errors
/// One for each fault of a row, its field `row[N].column` with rows counted from 1 below the title;
/// or what the whole scenario breaks, told at the row that it is about where there is one; `table`
/// where nothing was pasted, or nothing below the title.
pub fn with_limits(scenario: &Scenario, text: &str) -> Result<Scenario, Vec<Error>> {
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let Some(title) = lines.next() else {
        let nothing = Error { field: "table".into(), value: Given::Nothing, rule: Rule::Missing };
        return Err(vec![nothing]);
    };
    let between = separator(title);
    let columns = columns(title, between)?;
    let rows: Vec<_> = lines.collect();
    if rows.is_empty() {
        return Err(vec![Error::text("table", title, Rule::NotEmpty)]);
    }
    if rows.len() > MOST_ROWS {
        let rule = Rule::AtMostItems { limit: MOST_ROWS as f64 };
        return Err(vec![Error::number("table", rows.len() as f64, rule)]);
    }
    let mut whole = scenario.write();
    let mut limits = Vec::new();
    for Row { dimension, size_mm, limit } in every(&rows, between, &columns)? {
        if let Some(mm) = size_mm {
            whole.put(&format!("chain.{}", dimension.key()), Value::from(mm));
        }
        limits.push(limit);
    }
    whole.put("limits", Value::List(limits));
    Scenario::read(&whole).map_err(|faults| faults.into_iter().map(at_row).collect())
}

/// Every row, each about a dimension of its own; or every fault of all of them.
fn every(lines: &[&str], between: char, columns: &[Column]) -> Result<Vec<Row>, Vec<Error>> {
    let (mut rows, mut faults) = (Vec::<Row>::new(), Vec::new());
    for (i, line) in lines.iter().enumerate() {
        let found = row(line, between, columns).and_then(|row| {
            let key = row.dimension.key();
            let named = rows.iter().any(|known| known.dimension == row.dimension);
            let repeated = || vec![Error::text("dimension", key, Rule::Repeated)];
            if named { Err(repeated()) } else { Ok(row) }
        });
        let place = format!("row[{}]", i + 1);
        match found {
            Ok(row) => rows.push(row),
            Err(found) => faults.extend(found.into_iter().map(|fault| fault.within(&place))),
        }
    }
    if faults.is_empty() { Ok(rows) } else { Err(faults) }
}

/// A fault of the whole scenario, told at its row where it is about one: limits keep the order of
/// their rows.
fn at_row(mut fault: Error) -> Error {
    let index = fault.field.strip_prefix("limits[").and_then(|rest| rest.split_once(']'));
    if let Some((index, rest)) = index
        && let Ok(index) = index.parse::<usize>()
    {
        fault.field = format!("row[{}]{rest}", index + 1);
    }
    fault
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Construction;
    use crate::table::Published;

    fn scenario() -> Scenario {
        let size = Published::of_number("40").expect("it is in the table");
        Scenario::read(&size.fill(Construction::Bushed).file()).expect("a scenario")
    }

    fn faults(text: &str) -> Vec<(String, &'static str)> {
        let faults = with_limits(&scenario(), text).expect_err("a fault");
        faults.into_iter().map(|fault| (fault.field, fault.rule.id())).collect()
    }

    #[test]
    fn a_table_comes_back_as_it_went() {
        let table = "dimension,size_mm,minus_mm,plus_mm,grade,law\n\
                     pin_diameter_mm,3.95,0.01,0,,uniform\nbore_mm,,,,H8,\n";
        let first = with_limits(&scenario(), table).expect("a good table");
        assert!((first.chain.chain().pin_diameter_mm - 3.95).abs() < 1e-12);
        let csv = limits_csv(&first);
        let again = with_limits(&first, &csv).expect("its own table");
        assert_eq!(limits_csv(&again), csv);
        assert!(
            (again.limits[1].ends_mm(again.chain.chain()).1
                - first.limits[1].ends_mm(first.chain.chain()).1)
                .abs()
                < 1e-12
        );
    }

    #[test]
    fn a_spreadsheet_may_use_tabs_or_semicolons_with_commas_and_inches() {
        let mm = with_limits(&scenario(), "dimension\tplus_mm\r\nbore_mm\t0,02\r\n").expect("tabs");
        let inch = with_limits(&scenario(), "dimension;plus_in\nbore_mm;0,001\n").expect("inches");
        let plus_mm = |read: &Scenario| read.limits[0].band.deviations_mm(4.0).1;
        assert!((plus_mm(&mm) - 0.02).abs() < 1e-15);
        assert!((plus_mm(&inch) - 0.0254).abs() < 1e-15);
    }

    #[test]
    fn every_bad_row_is_told_by_its_number() {
        let table = "dimension,minus_mm,plus_mm\npin_diameter_mm,0.01,0\nhole,0.01,0\n\
                     bore_mm,much,0\nbore_mm,0,0.01\nbore_mm,0,0.02\n,0,0\nbarrel_mm,0,0,0";
        let expected = [
            ("row[2].dimension", "known_dimension"),
            ("row[3].minus_mm", "wrong_kind"),
            ("row[5].dimension", "repeated"),
            ("row[6].dimension", "missing"),
            ("row[7]", "at_most_items"),
        ];
        assert_eq!(faults(table), expected.map(|(field, rule)| (field.to_owned(), rule)));
        let graded = faults("dimension,grade\nbore_mm,H8\nbarrel_mm,H99");
        assert_eq!(graded, [("row[2].grade".to_owned(), "one_of")]);
    }

    #[test]
    fn a_row_that_is_cut_short_is_told_by_the_first_cell_that_it_misses() {
        let table = "dimension\tminus_mm\tplus_mm\npin_diameter_mm\t0.01\nbore_mm\t\t0.01\n\
                     barrel_mm\t0.01\t";
        assert_eq!(faults(table), [("row[1].plus_mm".to_owned(), "missing")]);
        let inches = with_limits(&scenario(), "dimension,plus_in,law\nbore_mm,0.001\nhole");
        let told = inches.expect_err("two short rows").into_iter();
        let told: Vec<_> = told.map(|fault| (fault.field, fault.value)).collect();
        let number = |cells| Given::Number(cells);
        assert_eq!(told[0], ("row[1].law".to_owned(), number(2.0)));
        assert_eq!(told[1], ("row[2].plus_mm".to_owned(), number(1.0)));
    }

    #[test]
    fn a_table_without_title_or_rows_is_refused() {
        assert_eq!(faults(" \n\t\n"), [("table".to_owned(), "missing")]);
        assert_eq!(faults("dimension,plus_mm")[0], ("table".to_owned(), "not_empty"));
        assert_eq!(faults("dimension,width\nbore_mm,1")[0], ("title".to_owned(), "one_of"));
        assert_eq!(faults("dimension,plus_mm,plus_in\n,,")[0], ("title".to_owned(), "repeated"));
        assert_eq!(faults("plus_mm\n1")[0], ("title".to_owned(), "missing"));
    }
}
