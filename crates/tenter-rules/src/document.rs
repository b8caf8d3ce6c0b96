//! All findings of one file.

use tenter_resolve::{Library, Sheet, sheets};
use tenter_syntax::{BlockKind, Document};

use crate::finding::Finding;
use crate::registry::rule;
use crate::rule::Group;
use crate::rules::unused_accept;
use crate::sheet::{SheetFindings, check_sheet};

/// A file checked: its sheets, what is made of them, and the findings about this file.
#[derive(Clone, Debug, Default)]
pub struct Checked {
    /// The sheets.
    pub sheets: Vec<Sheet>,
    /// What each sheet gave, in the same order.
    pub results: Vec<SheetFindings>,
    /// The findings, in order of their places in the file, then by rule.
    pub findings: Vec<Told>,
}

/// A finding and what it was found in.
#[derive(Clone, Debug)]
pub struct Told {
    /// Index of the sheet; its blocks are what the finding's places refer to.
    pub sheet: usize,
    /// Index of the recipe within the sheet's result: 0 as written, then its variants.
    pub recipe: usize,
    /// What is told.
    pub finding: Finding,
}

/// Reads the recipes of a file and checks each. `path` is the file's path inside its collection, for `use` lines.
pub fn check_document(document: &Document, path: &str, library: &dyn Library) -> Checked {
    let sheets = sheets(document, path, library);
    let results = sheets.iter().map(check_sheet).collect();
    gather(sheets, results)
}

/// Puts the results of a file's sheets together.
pub(crate) fn gather(sheets: Vec<Sheet>, results: Vec<SheetFindings>) -> Checked {
    let mut findings: Vec<(Key, Told)> = Vec::new();
    let mut add = |told: Told, sheets: &[Sheet]| {
        let Some(sheet) = sheets.get(told.sheet) else { return };
        let Some(told) = own(sheet, told) else { return };
        let key = key(sheet, &told.finding);
        if !findings.iter().any(|(have, _)| *have == key) {
            findings.push((key, told));
        }
    };
    for (sheet, result) in results.iter().enumerate() {
        for (recipe, finding) in &result.findings {
            add(Told { sheet, recipe: *recipe, finding: finding.clone() }, &sheets);
        }
        for place in &result.unused {
            // An `accept` in a part all recipes of the file share is unused only if none of them uses it.
            let entry = sheets.get(sheet).and_then(|sheet| sheet.blocks.get(place.block as usize));
            let everywhere = entry.is_some_and(|entry| {
                !entry.shared
                    || results.iter().zip(&sheets).all(|(other, sheet)| {
                        other.unused.iter().any(|unused| {
                            (unused.start, unused.end) == (place.start, place.end)
                                && sheet
                                    .blocks
                                    .get(unused.block as usize)
                                    .is_some_and(|block| block.position == entry.position && block.file == entry.file)
                        })
                    })
            });
            if let (true, Some(recipe)) = (everywhere, result.recipes.first()) {
                add(Told { sheet, recipe: 0, finding: unused_accept::finding(recipe, *place) }, &sheets);
            }
        }
    }
    findings.sort_by(|a, b| a.0.cmp(&b.0));
    let findings = findings.into_iter().map(|(_, told)| told).collect();
    Checked { sheets, results, findings }
}

type Key = (usize, u32, u32, &'static str);

fn key(sheet: &Sheet, finding: &Finding) -> Key {
    let position = sheet.blocks.get(finding.place.block as usize).map_or(0, |entry| entry.position);
    (position, finding.place.start, finding.place.end, finding.rule)
}

/// What concerns this file. How another file is written is told where that file is checked; what comes of it here is
/// told on the `use` line.
fn own(sheet: &Sheet, mut told: Told) -> Option<Told> {
    let block = told.finding.place.block as usize;
    let entry = sheet.blocks.get(block)?;
    if entry.file.is_none() {
        return Some(told);
    }
    if rule(told.finding.rule)?.group == Group::Writing {
        return None;
    }
    let (index, bring) = sheet
        .blocks
        .iter()
        .enumerate()
        .take(block)
        .rev()
        .find(|(_, entry)| entry.file.is_none() && entry.block.kind == BlockKind::Use)?;
    let there = told.finding.place;
    told.finding.place = tenter_quantity::Place {
        block: index as u32,
        start: bring.block.keyword.start,
        end: bring.block.name.end.max(bring.block.keyword.end),
    };
    told.finding = told.finding.note(there, "written here");
    Some(told)
}
