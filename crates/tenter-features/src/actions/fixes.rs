//! The fixes of the rule book.

use tenter_rules::{Fix, Told};

use crate::actions::{Action, ActionKind};
use crate::analysis::FileAnalysis;
use crate::text::{Edit, Range, meet};

/// Offers the fixes of the findings on a stretch.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    for told in open(analysis) {
        let Some(sheet) = analysis.sheet(told.sheet) else { continue };
        let Some(place) = analysis.locate_here(sheet.sheet, told.finding.place) else { continue };
        if !meet(&place, range) {
            continue;
        }
        for (index, fix) in told.finding.fixes.iter().enumerate() {
            if let Some(edits) = edits(analysis, told, fix) {
                found.push(Action {
                    title: fix.title.clone(),
                    kind: ActionKind::Fix,
                    settles: Some((told.finding.rule, place.clone())),
                    preferred: index == 0 && fix.safe,
                    edits,
                    creates: None,
                });
            }
        }
    }
    let all = fix_all(analysis);
    if !all.is_empty() {
        found.push(Action {
            title: "make all certain fixes".to_owned(),
            kind: ActionKind::FixAll,
            settles: None,
            preferred: false,
            edits: all,
            creates: None,
        });
    }
}

fn open(analysis: &FileAnalysis) -> impl Iterator<Item = &Told> {
    analysis.findings.iter().filter(|told| told.finding.accepted.is_none())
}

/// The edits of a fix; none when one of them would touch another file.
fn edits(analysis: &FileAnalysis, told: &Told, fix: &Fix) -> Option<Vec<Edit>> {
    let sheet = analysis.sheet(told.sheet)?.sheet;
    fix.edits
        .iter()
        .map(|edit| {
            let at = analysis.locate_here(sheet, edit.place)?;
            Some(Edit::new(&analysis.file.path, at, edit.new_text.as_str()))
        })
        .collect()
}

/// All safe fixes of a file that do not get in each other's way.
pub fn fix_all(analysis: &FileAnalysis) -> Vec<Edit> {
    let mut taken: Vec<Edit> = Vec::new();
    for told in open(analysis) {
        let Some(fix) = told.finding.fixes.first().filter(|fix| fix.safe) else { continue };
        let Some(new) = edits(analysis, told, fix) else { continue };
        let clear = new.iter().all(|edit| taken.iter().all(|have| !meet(&have.at.range(), &edit.at.range())));
        if clear {
            taken.extend(new);
        }
    }
    taken.sort();
    taken
}
