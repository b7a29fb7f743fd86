//! The rows of a table that was pasted: its columns, and what one row says of its dimension.

use super::limits::COLUMNS;
use crate::chain::Dimension;
use crate::error::{Error, Given, Rule};
use crate::quantity::MM_PER_INCH;
use crate::scenario::Value;

/// Columns of text.
const TEXTS: [&str; 2] = ["grade", "law"];

/// A column of a table that was pasted.
#[derive(Clone, Copy)]
pub(super) struct Column {
    name: &'static str,
    /// mm for each unit of the column; one for what is no length.
    scale: f64,
}

/// What a cell says.
enum Cell {
    Dimension(Dimension),
    Size(f64),
    Limit(Value),
}

impl Column {
    fn of(title: &str) -> Option<Self> {
        let title = title.trim().to_ascii_lowercase();
        let inches = title.strip_suffix("_in").map(|stem| format!("{stem}_mm"));
        let scale = if inches.is_some() { MM_PER_INCH } else { 1.0 };
        let wanted = inches.as_deref().unwrap_or(&title);
        COLUMNS.iter().find(|name| **name == wanted).map(|name| Self { name, scale })
    }

    /// The key of a limit that the column is about.
    fn key(self) -> &'static str {
        self.name.trim_end_matches("_mm")
    }

    /// What a cell of the column says.
    fn read(self, cell: &str, between: char) -> Result<Cell, Error> {
        if self.name == "dimension" {
            let refused = || Error::text(self.name, cell, Rule::KnownDimension);
            return Dimension::of_key(cell).map(Cell::Dimension).ok_or_else(refused);
        }
        if TEXTS.contains(&self.name) {
            return Ok(Cell::Limit(Value::text(cell)));
        }
        let refused = || Error::text(self.name, cell, Rule::WrongKind { expected: "number" });
        let number = self.scale * number(cell, between).ok_or_else(refused)?;
        Ok(if self.key() == "size" { Cell::Size(number) } else { Cell::Limit(Value::from(number)) })
    }
}

/// What stands between two cells: a tab, a semicolon or a comma, the first of them that the line
/// holds.
pub(super) fn separator(line: &str) -> char {
    ['\t', ';'].into_iter().find(|separator| line.contains(*separator)).unwrap_or(',')
}

/// The columns by the title line.
pub(super) fn columns(title: &str, between: char) -> Result<Vec<Column>, Vec<Error>> {
    let (mut columns, mut faults) = (Vec::<Column>::new(), Vec::new());
    for name in title.split(between).map(str::trim) {
        let refused = |rule| Error::text("title", name, rule);
        match Column::of(name) {
            Some(column) if columns.iter().any(|known| known.name == column.name) => {
                faults.push(refused(Rule::Repeated));
            }
            Some(column) => columns.push(column),
            None => faults.push(refused(Rule::OneOf { choices: &COLUMNS })),
        }
    }
    let named = columns.iter().any(|column| column.name == "dimension");
    if faults.is_empty() && !named {
        faults.push(Error { field: "title".into(), value: Given::Nothing, rule: Rule::Missing });
    }
    if faults.is_empty() { Ok(columns) } else { Err(faults) }
}

/// What a row says.
pub(super) struct Row {
    /// The dimension that it is about.
    pub dimension: Dimension,
    /// Its middle size, where the row states it.
    pub size_mm: Option<f64>,
    /// Its limits, as a scenario states them.
    pub limit: Value,
}

/// One row; every fault of it.
pub(super) fn row(line: &str, between: char, columns: &[Column]) -> Result<Row, Vec<Error>> {
    let cells: Vec<_> = line.split(between).map(|cell| cell.trim().trim_matches('"')).collect();
    let mut faults: Vec<_> = miscounted(cells.len(), columns).into_iter().collect();
    let (mut dimension, mut size_mm, mut limit) = (None, None, Value::object([]));
    for (column, cell) in columns.iter().zip(cells).filter(|(_, cell)| !cell.is_empty()) {
        match column.read(cell, between) {
            Ok(Cell::Dimension(known)) => dimension = Some(known),
            Ok(Cell::Size(mm)) => size_mm = Some(mm),
            Ok(Cell::Limit(value)) => limit.put(column.key(), value),
            Err(fault) => faults.push(fault),
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

/// A row has a cell for every column, empty or not: what is cut short misses the first column that
/// it does not come to, told with the cells that there are.
fn miscounted(cells: usize, columns: &[Column]) -> Option<Error> {
    if let Some(cut) = columns.get(cells) {
        return Some(Error::number(cut.name, cells as f64, Rule::Missing));
    }
    let rule = Rule::AtMostItems { limit: columns.len() as f64 };
    (cells > columns.len()).then(|| Error::number("", cells as f64, rule))
}

/// A finite number, its decimals after a point, or after a comma where commas do not separate
/// cells.
fn number(cell: &str, between: char) -> Option<f64> {
    let plain = cell.replace('\u{2212}', "-");
    let plain = if between == ',' { plain } else { plain.replace(',', ".") };
    plain.parse::<f64>().ok().filter(|number| number.is_finite())
}
