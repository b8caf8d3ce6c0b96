//! What counts as caught and what as a false alarm.

use tenter_rules::{Finding, Level};

use crate::good::Good;
use crate::mutant::{Mutant, Operator};

/// A finding with its line, where the recipe is told off: warnings and errors nobody accepted.
pub struct Told<'a> {
    /// Line, from 1; 0 in another file.
    pub line: usize,
    /// Sheet of the finding.
    pub sheet: usize,
    /// What.
    pub finding: &'a Finding,
}

/// The warnings and errors of a file that nobody accepted.
pub fn told(good: &Good) -> Vec<Told<'_>> {
    good.checked
        .findings
        .iter()
        .filter(|told| told.finding.accepted.is_none() && told.finding.level != Level::Advice)
        .map(|told| Told {
            line: good.line(told.sheet, told.finding.place).unwrap_or(0),
            sheet: told.sheet,
            finding: &told.finding,
        })
        .collect()
}

/// The rule that catches a mutant, if one does: something new, and about what was changed.
pub fn caught(before: &Good, after: &Good, operator: &Operator, mutant: &Mutant) -> Option<&'static str> {
    let known: Vec<(&str, String)> =
        told(before).iter().map(|have| (have.finding.rule, before.text_of(have.line).to_owned())).collect();
    told(after)
        .iter()
        .filter(|new| !known.iter().any(|(rule, line)| *rule == new.finding.rule && line == after.text_of(new.line)))
        .find(|new| about(after, operator, mutant, new))
        .map(|new| new.finding.rule)
}

fn about(after: &Good, operator: &Operator, mutant: &Mutant, told: &Told<'_>) -> bool {
    if operator.answers.contains(&told.finding.rule) {
        return true;
    }
    let notes = told.finding.notes.iter().map(|note| note.place);
    let figures = told.finding.figures.iter().flat_map(tenter_quantity::Figure::places);
    let mut lines =
        std::iter::once(told.line).chain(notes.chain(figures).filter_map(|place| after.line(told.sheet, place)));
    if lines.any(|line| mutant.lines.contains(&line)) {
        return true;
    }
    // A step that uses what was changed: the mix, dye, vessel or layout by its name.
    let words = after.text_of(told.line);
    mutant.lines.iter().any(|line| {
        let header = after.text_of(after.header(*line));
        let name =
            header.split_once(' ').filter(|(kind, _)| ["mix", "dye", "vessel", "layout", "chemical"].contains(kind));
        name.is_some_and(|(_, name)| words.contains(name.trim()))
    })
}
