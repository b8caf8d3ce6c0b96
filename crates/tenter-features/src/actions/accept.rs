//! Accepting a finding: the line is written, the reason is left to the dyer.

use tenter_rules::{Group, rule};

use crate::actions::{Action, ActionKind};
use crate::analysis::FileAnalysis;
use crate::text::{Edit, Range, meet};

/// Offers to accept the findings on a stretch. Without a reason nothing is accepted, so the line asks for one.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let file = &analysis.file;
    for told in analysis.findings.iter().filter(|told| told.finding.accepted.is_none()) {
        let name = told.finding.rule;
        if rule(name).is_none_or(|rule| rule.group == Group::Writing) {
            continue;
        }
        let Some(view) = analysis.sheet(told.sheet) else { continue };
        let Some(place) = analysis.locate_here(view.sheet, told.finding.place).filter(|at| meet(at, range)) else {
            continue;
        };
        // Under a line of a body at its indentation; under a header as the first line of its block.
        let row = file.line_range(place.end);
        let first = file.slice(file.line_range(place.start));
        let blanks = first.get(..first.len() - first.trim_start().len()).unwrap_or("");
        let indent = if blanks.is_empty() { "  " } else { blanks };
        let line_break = if file.text.contains("\r\n") { "\r\n" } else { "\n" };
        let line = format!("{line_break}{indent}accept   {name} because ");
        found.push(Action {
            title: format!("accept `{name}`, with a reason"),
            kind: ActionKind::Fix,
            settles: Some((name, place)),
            preferred: false,
            edits: vec![Edit::new(&file.path, row.end..row.end, line)],
            creates: None,
        });
    }
}
