//! Findings as JSON: the published interface of `spec/check.schema.json`.

use serde::Serialize;

use crate::check::locate::Stretch;
use crate::check::one::Result;
use crate::check::report::{FixReport, Report};
use crate::output::Output;

#[derive(Serialize)]
struct Finding<'a> {
    rule: &'a str,
    level: &'a str,
    #[serde(flatten)]
    at: &'a Stretch,
    message: &'a str,
    help: &'a str,
    notes: Vec<Note<'a>>,
    fixes: &'a [FixReport],
    accepted: Option<&'a Stretch>,
}

#[derive(Serialize)]
struct Note<'a> {
    #[serde(flatten)]
    at: Option<&'a Stretch>,
    text: &'a str,
}

/// Writes one array over all files.
pub fn show(results: &[Result], output: &mut Output) {
    let findings: Vec<Finding<'_>> = results.iter().flat_map(|result| &result.reports).map(finding).collect();
    output.json(&findings);
}

fn finding(report: &Report) -> Finding<'_> {
    Finding {
        rule: report.rule,
        level: report.level.word(),
        at: &report.at,
        message: &report.message,
        help: &report.help,
        notes: report.notes.iter().map(|(at, text)| Note { at: at.as_ref(), text }).collect(),
        fixes: &report.fixes,
        accepted: report.accepted.as_ref(),
    }
}
