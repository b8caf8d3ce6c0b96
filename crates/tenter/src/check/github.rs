//! Findings as annotations of GitHub's build log.
//!
//! A step shows at most ten annotations of a kind and drops the rest without a word, so the plain log follows, and the
//! last line tells how many have no annotation.

use std::fmt::Write;

use tenter_rules::Level;

use crate::check::one::Result;
use crate::check::report::Report;
use crate::check::text::plain_line;
use crate::output::Output;
use crate::text::safe::safe;

/// Annotations of each kind that a step shows.
const SHOWN: usize = 10;

/// Writes annotations, then the log.
pub fn show(results: &[Result], output: &mut Output) {
    let reports: Vec<&Report> = results.iter().flat_map(|result| &result.reports).collect();
    let mut left = 0;
    for level in [Level::Error, Level::Warning, Level::Advice] {
        let of_level = || reports.iter().filter(|report| report.level == level);
        for report in of_level().take(SHOWN) {
            output.raw(&annotation(report));
        }
        left += of_level().count().saturating_sub(SHOWN);
    }
    for report in &reports {
        output.raw(&format!("{}\n", plain_line(report)));
    }
    if left > 0 {
        output.raw(&format!("{left} more are in the log above without an annotation\n"));
    }
}

fn annotation(report: &Report) -> String {
    let command = match report.level {
        Level::Error => "error",
        Level::Warning => "warning",
        Level::Advice => "notice",
    };
    let at = &report.at;
    let mut line = format!("::{command} file={},line={},", property(&at.file), at.line);
    // Columns are only understood within one line.
    let columns = if at.line == at.end_line {
        format!("endLine={},col={},endColumn={},", at.end_line, at.column, at.end_column)
    } else {
        format!("endLine={},", at.end_line)
    };
    let mut message = report.message.clone();
    if !report.help.is_empty() {
        // Writing to a string cannot fail.
        let _ = write!(message, "\n{}", report.help);
    }
    line.push_str(&columns);
    line.push_str(&format!("title={}::{}\n", property(report.rule), data(&message)));
    line
}

/// A message: `%` and line breaks escaped as the log's own commands want it.
fn data(text: &str) -> String {
    text.split('\n').map(|line| safe(line).replace('%', "%25")).collect::<Vec<_>>().join("%0A")
}

/// A property: as a message, and what parts properties too.
fn property(text: &str) -> String {
    safe(text).replace('%', "%25").replace(':', "%3A").replace(',', "%2C")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_in_a_text_ends_or_begins_a_command() {
        assert_eq!(data("5% of\r\n::error::x"), "5%25 of\\u{d}%0A::error::x");
        assert_eq!(property("a,b:c%\n"), "a%2Cb%3Ac%25\\u{a}");
    }
}
