//! Reading of the committed tables.

#![allow(dead_code, clippy::unwrap_used)]

use std::collections::BTreeMap;

use tenter_chemistry::equilibrium::Totals;

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

/// The make-up of the solution of a row, mol/kg.
pub fn totals(row: &Row) -> Totals {
    let m = |column: &str| number(row, column).unwrap_or(0.0);
    Totals {
        sodium: m("m_Na"),
        potassium: m("m_K"),
        carbonate: m("m_C"),
        phosphate: m("m_P"),
        acetate: m("m_Ac"),
        citrate: m("m_Cit"),
        chloride: m("m_Cl"),
        sulfate: m("m_SO4"),
        ammonia: m("m_N"),
        calcium: m("m_Ca"),
        magnesium: m("m_Mg"),
        silicate: m("m_Si"),
        sulfite: m("m_S4"),
    }
}
