//! Dimensions with their limits as rows, for a spreadsheet and back.

use crate::chain::Dimension;
use crate::error::{Error, Given, Rule};
use crate::quantity::MM_PER_INCH;
use crate::scenario::{Scenario, Value};
use std::fmt::Write;

/// The columns in the order in which they are written. A length may also be given in inches, in a
/// column whose name ends in `_in`.
const COLUMNS: [&str; 8] =
    ["dimension", "size_mm", "minus_mm", "plus_mm", "grade", "law", "sigmas", "mean_shift"];
/// Columns of text.
const TEXTS: [&str; 3] = ["dimension", "grade", "law"];
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

/// A column of a table that was pasted.
#[derive(Clone, Copy)]
struct Column {
    name: &'static str,
    /// mm for each unit of the column; one for what is no length.
    scale: f64,
}

impl Column {
    fn of(title: &str) -> Option<Self> {
        let title = title.trim().to_ascii_lowercase();
        let inches = title.strip_suffix("_in").map(|stem| format!("{stem}_mm"));
        let scale = if inches.is_some() { MM_PER_INCH } else { 1.0 };
        let wanted = inches.as_deref().unwrap_or(&title);
        COLUMNS.iter().find(|name| **name == wanted).map(|name| Self { name, scale })
    }
}

/// What stands between two fields: a tab, a semicolon or a comma, the first of them that the line
/// holds.
fn separator(line: &str) -> char {
    ['\t', ';'].into_iter().find(|separator| line.contains(*separator)).unwrap_or(',')
}

/// The scenario with the sizes and limits of a pasted table instead of its own limits.
///
/// # Errors
/// One for each fault of a row, its field `row[N].column` with rows counted from 1 below the title;
/// or what the whole scenario breaks, told at the row that it is about where there is one.
pub fn with_limits(scenario: &Scenario, text: &str) -> Result<Scenario, Vec<Error>> {
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let title = lines.next().unwrap_or_default();
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
    let mut faults = Vec::new();
    let (mut whole, mut limits, mut seen) = (scenario.write(), Vec::new(), Vec::new());
    for (i, line) in rows.iter().enumerate() {
        match row(line, between, &columns) {
            Ok(row) if seen.contains(&row.dimension) => {
                let fault = Error::text("dimension", row.dimension.key(), Rule::Repeated);
                faults.push(fault.within(&format!("row[{}]", i + 1)));
            }
            Ok(row) => {
                seen.push(row.dimension);
                if let Some(mm) = row.size_mm {
                    whole.put(&format!("chain.{}", row.dimension.key()), Value::from(mm));
                }
                limits.push(row.limit);
            }
            Err(found) => {
                let place = format!("row[{}]", i + 1);
                faults.extend(found.into_iter().map(|fault| fault.within(&place)));
            }
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    whole.put("limits", Value::List(limits));
    Scenario::read(&whole).map_err(|faults| faults.into_iter().map(at_row).collect())
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

/// The columns by the title line.
fn columns(title: &str, between: char) -> Result<Vec<Column>, Vec<Error>> {
    let mut columns = Vec::new();
    let mut faults = Vec::new();
    for name in title.split(between) {
        match Column::of(name) {
            Some(column) => columns.push(column),
            None => {
                let rule = Rule::OneOf { choices: &COLUMNS };
                faults.push(Error::text("title", name.trim(), rule));
            }
        }
    }
    let named = columns.iter().any(|column| column.name == "dimension");
    if faults.is_empty() && !named {
        faults.push(Error { field: "title".into(), value: Given::Nothing, rule: Rule::Missing });
    }
    if faults.is_empty() { Ok(columns) } else { Err(faults) }
}

struct Row {
    dimension: Dimension,
    size_mm: Option<f64>,
    limit: Value,
}

/// One row; every fault of it.
fn row(line: &str, between: char, columns: &[Column]) -> Result<Row, Vec<Error>> {
    let mut faults = Vec::new();
    let (mut dimension, mut size_mm, mut limit) = (None, None, Value::object([]));
    let fields: Vec<_> = line.split(between).map(|field| field.trim().trim_matches('"')).collect();
    if fields.len() > columns.len() {
        let rule = Rule::AtMostItems { limit: columns.len() as f64 };
        faults.push(Error::number("", fields.len() as f64, rule));
    }
    for (column, field) in columns.iter().zip(fields).filter(|(_, field)| !field.is_empty()) {
        let key = column.name.trim_end_matches("_mm");
        if column.name == "dimension" {
            dimension = Dimension::of_key(field);
            if dimension.is_none() {
                faults.push(Error::text("dimension", field, Rule::KnownDimension));
            }
        } else if TEXTS.contains(&column.name) {
            limit.put(key, Value::text(field));
        } else {
            match number(field, between) {
                Some(number) if key == "size" => size_mm = Some(number * column.scale),
                Some(number) => limit.put(key, Value::from(number * column.scale)),
                None => {
                    let rule = Rule::WrongKind { expected: "number" };
                    faults.push(Error::text(column.name, field, rule));
                }
            }
        }
    }
    if dimension.is_none() && faults.is_empty() {
        let rule = Rule::Missing;
        faults.push(Error { field: "dimension".into(), value: Given::Nothing, rule });
    }
    match dimension.filter(|_| faults.is_empty()) {
        Some(dimension) => {
            limit.put("dimension", Value::text(dimension.key()));
            Ok(Row { dimension, size_mm, limit })
        }
        None => Err(faults),
    }
}

/// A finite number, its decimals after a point, or after a comma where commas do not separate
/// fields.
fn number(field: &str, between: char) -> Option<f64> {
    let plain = field.replace('\u{2212}', "-");
    let plain = if between == ',' { plain } else { plain.replace(',', ".") };
    plain.parse::<f64>().ok().filter(|number| number.is_finite())
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
    fn a_table_without_title_or_rows_is_refused() {
        assert_eq!(faults("")[0].0, "title");
        assert_eq!(faults("dimension,plus_mm")[0], ("table".to_owned(), "not_empty"));
        assert_eq!(faults("dimension,width\nbore_mm,1")[0], ("title".to_owned(), "one_of"));
        assert_eq!(faults("plus_mm\n1")[0], ("title".to_owned(), "missing"));
    }
}
