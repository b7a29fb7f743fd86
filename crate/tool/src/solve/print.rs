//! Reports as text.

use super::Format;
use crate::trouble::Trouble;
use lightgap::report::Report;
use serde_json::Value;

/// One value of a report under its whole name, such as `play.yaw_limit_rad`.
type Entry = (String, Value);

/// All reports in one form.
pub fn reports(reports: &[Report], format: Format) -> Result<String, Trouble> {
    let trees = reports.iter().map(serde_json::to_value).collect::<Result<Vec<_>, _>>();
    let trees = trees.map_err(|error| Trouble::program("report", &error))?;
    Ok(match format {
        Format::Json => trees.iter().map(|tree| format!("{tree}\n")).collect(),
        Format::Table => table(&trees),
        Format::Csv => csv(&trees),
    })
}

fn table(trees: &[Value]) -> String {
    let mut text = String::new();
    for tree in trees {
        let entries = entries(tree);
        let width = entries.iter().map(|(name, _)| name.len()).max().unwrap_or_default();
        for (name, value) in entries {
            text += &format!("{name:width$}  {}\n", bare(&value));
        }
        text += "\n";
    }
    text
}

/// A row of all names that occur, then a row a report; what a report lacks is empty.
fn csv(trees: &[Value]) -> String {
    let rows: Vec<Vec<Entry>> = trees.iter().map(entries).collect();
    let mut names: Vec<&str> = Vec::new();
    for (name, _) in rows.iter().flatten() {
        if !names.contains(&name.as_str()) {
            names.push(name);
        }
    }
    let mut text = line(names.iter().map(|name| (*name).to_string()));
    for row in &rows {
        let value = |name: &&str| row.iter().find(|(key, _)| key == name).map(|(_, value)| value);
        text += &line(names.iter().map(|name| value(name).map(bare).unwrap_or_default()));
    }
    if rows.is_empty() { String::new() } else { text }
}

/// One line of comma-separated values (RFC 4180).
fn line(cells: impl Iterator<Item = String>) -> String {
    let quoted = cells.map(|cell| {
        let needs_quotes = cell.contains([',', '"', '\n', '\r']);
        if needs_quotes { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
    });
    quoted.collect::<Vec<_>>().join(",") + "\r\n"
}

/// Every value of a report that is neither a list nor an object, in its order.
fn entries(tree: &Value) -> Vec<Entry> {
    let mut found = Vec::new();
    collect("", tree, &mut found);
    found
}

fn collect(path: &str, value: &Value, found: &mut Vec<Entry>) {
    let below = |key: &str| if path.is_empty() { key.to_string() } else { format!("{path}.{key}") };
    match value {
        Value::Object(members) => {
            members.iter().for_each(|(key, value)| collect(&below(key), value, found));
        }
        Value::Array(items) => {
            let each = items.iter().enumerate();
            each.for_each(|(index, item)| collect(&below(&index.to_string()), item, found));
        }
        plain => found.push((path.to_string(), plain.clone())),
    }
}

/// A text without its quotes, a number with all its digits.
fn bare(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), String::from)
}

#[cfg(test)]
mod tests {
    use super::{csv, table};
    use serde_json::json;

    #[test]
    fn rows_of_different_reports_share_one_head() {
        let trees = [
            json!({"title": "one, two", "play": {"yaw_limit_rad": 0.1}}),
            json!({"title": "said \"so\"", "interference": [{"between": "pin_bore"}]}),
        ];
        let expected = "title,play.yaw_limit_rad,interference.0.between\r\n\
                        \"one, two\",0.1,\r\n\"said \"\"so\"\"\",,pin_bore\r\n";
        assert_eq!(csv(&trees), expected);
        assert_eq!(csv(&[]), "");
    }

    #[test]
    fn a_table_lines_its_values_up() {
        let tree = json!({"title": "A", "play": {"yaw_limit_rad": 0.1}});
        assert_eq!(table(&[tree]), "title               A\nplay.yaw_limit_rad  0.1\n\n");
    }
}
