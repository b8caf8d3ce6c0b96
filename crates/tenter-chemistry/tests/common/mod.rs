//! Reading of the committed tables.

#![allow(dead_code, clippy::unwrap_used)]

use std::collections::BTreeMap;

/// One row of a table, by column name.
pub type Row = BTreeMap<String, String>;

/// Splits one line of comma-separated values; double quotes protect commas.
fn split(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            _ => cells.last_mut().unwrap().push(c),
        }
    }
    cells
}

/// Rows of a table.
pub fn rows(text: &str) -> Vec<Row> {
    let mut lines = text.lines().filter(|l| !l.starts_with('#') && !l.trim().is_empty());
    let header = split(lines.next().unwrap());
    let rows: Vec<Row> = lines.map(|line| header.iter().cloned().zip(split(line)).collect()).collect();
    assert!(!rows.is_empty());
    rows
}

/// A number in a row; `None` where the cell is blank.
pub fn number(row: &Row, column: &str) -> Option<f64> {
    row.get(column).and_then(|cell| cell.parse().ok())
}
