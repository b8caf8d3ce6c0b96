//! Columns of text: the first wraps, the others keep their width and may hold several lines.

use serde::Serialize;

use crate::text::wrap::{width, wrap};

/// Which edge a column keeps straight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Edge {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

/// Rows of cells under a line of headings.
#[derive(Debug, Serialize)]
pub struct Table {
    heads: Vec<(String, Edge)>,
    rows: Vec<Row>,
}

#[derive(Debug, Serialize)]
struct Row {
    cells: Vec<String>,
    /// Told under the row, set in.
    beneath: Vec<String>,
}

/// Blanks between columns.
const GAP: usize = 2;

impl Table {
    /// A table with these columns. An empty heading shows none.
    pub fn new(heads: &[(&str, Edge)]) -> Self {
        Self { heads: heads.iter().map(|(text, edge)| ((*text).to_owned(), *edge)).collect(), rows: Vec::new() }
    }

    /// Adds a row; what is `beneath` is told under it over the whole width.
    pub fn row(&mut self, cells: Vec<String>, beneath: Vec<String>) {
        self.rows.push(Row { cells, beneath });
    }

    /// Whether it holds no row.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// The table, set in by `indent`, no wider than `columns`. Columns that hold nothing are left out.
    pub fn render(&self, indent: usize, columns: usize) -> String {
        let kept: Vec<usize> = (0..self.heads.len())
            .filter(|&column| column == 0 || self.rows.iter().any(|row| !cell(row, column).is_empty()))
            .collect();
        let mut widths: Vec<usize> = kept.iter().map(|&column| self.width_of(column)).collect();
        let others: usize = widths.iter().skip(1).map(|wide| wide + GAP).sum();
        if let Some(first) = widths.first_mut() {
            *first = (*first).min(columns.saturating_sub(indent + others)).max(12);
        }
        let mut out = String::new();
        if self.heads.iter().any(|(text, _)| !text.is_empty()) {
            let heads: Vec<&str> =
                kept.iter().map(|&column| self.heads.get(column).map_or("", |(text, _)| text.as_str())).collect();
            self.line(&mut out, &heads, &kept, &widths, indent);
        }
        for row in &self.rows {
            let names = wrap(cell(row, 0), widths.first().copied().unwrap_or(columns));
            let height = (1..self.heads.len()).map(|column| cell(row, column).lines().count()).max().unwrap_or(0);
            for number in 0..names.len().max(height) {
                let cells: Vec<&str> = kept
                    .iter()
                    .map(|&column| match column {
                        0 => names.get(number).map_or("", String::as_str),
                        _ => cell(row, column).lines().nth(number).unwrap_or(""),
                    })
                    .collect();
                self.line(&mut out, &cells, &kept, &widths, indent);
            }
            for text in &row.beneath {
                for line in wrap(text, columns.saturating_sub(indent + 4)) {
                    out.push_str(&" ".repeat(indent + 4));
                    out.push_str(&line);
                    out.push('\n');
                }
            }
        }
        out
    }

    /// The rows as lines of words, not lined up: `soda ash: in all 612 g; % owg 12%`.
    pub fn told(&self) -> Vec<String> {
        let mut lines = Vec::new();
        for row in &self.rows {
            let height = (1..row.cells.len()).map(|column| cell(row, column).lines().count()).max().unwrap_or(0);
            for number in 0..height.max(1) {
                let cells = (1..row.cells.len()).filter_map(|column| {
                    let text = cell(row, column).lines().nth(number).filter(|text| !text.is_empty())?;
                    let head = self.heads.get(column).map_or("", |(head, _)| head.as_str());
                    let gap = if head.is_empty() { "" } else { " " };
                    Some(format!("{head}{gap}{text}"))
                });
                let cells = cells.collect::<Vec<_>>().join("; ");
                let gap = if cells.is_empty() { "" } else { ": " };
                lines.push(format!("{}{gap}{cells}", cell(row, 0)));
            }
            lines.extend(row.beneath.iter().map(|text| format!("  {text}")));
        }
        lines
    }

    fn width_of(&self, column: usize) -> usize {
        let head = self.heads.get(column).map_or(0, |(text, _)| width(text));
        self.rows.iter().flat_map(|row| cell(row, column).lines()).map(width).chain([head]).max().unwrap_or(0)
    }

    fn line(&self, out: &mut String, cells: &[&str], kept: &[usize], widths: &[usize], indent: usize) {
        let mut line = " ".repeat(indent);
        for (number, ((text, wide), column)) in cells.iter().zip(widths).zip(kept).enumerate() {
            if number > 0 {
                line.push_str(&" ".repeat(GAP));
            }
            let fill = " ".repeat(wide.saturating_sub(width(text)));
            match self.heads.get(*column).map(|(_, edge)| *edge) {
                Some(Edge::Right) => {
                    line.push_str(&fill);
                    line.push_str(text);
                }
                _ => {
                    line.push_str(text);
                    line.push_str(&fill);
                }
            }
        }
        out.push_str(line.trim_end());
        out.push('\n');
    }
}

fn cell(row: &Row, column: usize) -> &str {
    row.cells.get(column).map_or("", String::as_str)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn told_in_words_each_fact_names_its_column() {
        let mut table = Table::new(&[("step", Edge::Left), ("clock", Edge::Right), ("goods", Edge::Left)]);
        table.row(vec!["soak".into(), "21 min".into(), "front\nback".into()], vec!["beneath".into()]);
        table.row(vec!["dry".into(), String::new(), String::new()], vec![]);
        assert_eq!(table.told(), ["soak: clock 21 min; goods front", "soak: goods back", "  beneath", "dry"]);
    }

    #[test]
    fn numbers_end_in_line_and_long_names_wrap() {
        let mut table = Table::new(&[("", Edge::Left), ("in all", Edge::Right), ("empty", Edge::Right)]);
        table.row(vec!["soda ash".into(), "612 g".into()], vec![]);
        table.row(vec!["a very long name of a material".into(), "1.2 kg".into()], vec!["beneath".into()]);
        let text = table.render(2, 30);
        assert_eq!(
            text,
            "                        in all\n  soda ash               612 g\n  a very long name of a 1.2 kg\n".replace(
                "a very long name of a 1.2 kg\n",
                "a very long name of   1.2 kg\n  a material\n      beneath\n"
            )
        );
    }
}
