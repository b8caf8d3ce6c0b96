//! What is wrong with a file, as the command line tells it.

use tenter_rules::{Level, Told};

use crate::analysis::FileAnalysis;
use crate::text::{Location, Range};

/// A finding, placed.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagnostic {
    /// Where.
    pub range: Range,
    /// The rule.
    pub rule: &'static str,
    /// How bad.
    pub level: Level,
    /// What is wrong, and what to do about it on the next line.
    pub message: String,
    /// The other numbers and where they are written.
    pub related: Vec<(Location, String)>,
    /// Whether the text does nothing.
    pub idle: bool,
}

/// The findings of a file that nobody accepted, at most `most` of them, the worst kept.
pub fn diagnostics(analysis: &FileAnalysis, most: usize) -> Vec<Diagnostic> {
    let mut open: Vec<&Told> = analysis.findings.iter().filter(|told| told.finding.accepted.is_none()).collect();
    if open.len() > most {
        open.sort_by_key(|told| told.finding.level);
        open.truncate(most);
    }
    let mut found: Vec<Diagnostic> = open.into_iter().filter_map(|told| diagnostic(analysis, told)).collect();
    found.sort_by_key(|diagnostic| (diagnostic.range.start, diagnostic.range.end, diagnostic.rule));
    found
}

fn diagnostic(analysis: &FileAnalysis, told: &Told) -> Option<Diagnostic> {
    let sheet = analysis.sheet(told.sheet)?.sheet;
    let finding = &told.finding;
    let range = analysis.locate_here(sheet, finding.place)?;
    let message = match finding.help.as_str() {
        "" => finding.message.clone(),
        help => format!("{}\n{help}", finding.message),
    };
    let related = finding
        .notes
        .iter()
        .filter_map(|note| Some((analysis.locate(sheet, note.place)?, note.text.clone())))
        .collect();
    let idle = finding.rule == "unused-accept";
    Some(Diagnostic { range, rule: finding.rule, level: finding.level, message, related, idle })
}
