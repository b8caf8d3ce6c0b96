//! All findings of one file.

use std::collections::BTreeSet;

use tenter_quantity::Place;
use tenter_resolve::{Library, Scale, Sheet, sheets};
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

/// Reads the recipes of a file and checks each, as written or scaled. `path` is the file's path inside its collection,
/// for `use` lines.
pub fn check_document(document: &Document, path: &str, library: &dyn Library, scale: Scale) -> Checked {
    let sheets = sheets(document, path, library);
    let results: Vec<SheetFindings> = sheets.iter().map(|sheet| check_sheet(sheet, scale)).collect();
    let parts: Vec<Part<'_>> = sheets.iter().zip(&results).collect();
    let findings = gather(&parts);
    Checked { sheets, results, findings }
}

/// A sheet and what checking it gave.
pub type Part<'a> = (&'a Sheet, &'a SheetFindings);

/// Puts the results of a file's sheets together: in order of their places in the file, then by rule. What several
/// sheets tell of a part they share is told once.
pub fn gather(parts: &[Part<'_>]) -> Vec<Told> {
    let mut met = BTreeSet::new();
    let mut found: Vec<(Key, Told)> = Vec::new();
    for (index, (sheet, result)) in parts.iter().enumerate() {
        let mut add = |recipe: usize, finding: &Finding| {
            if let Some(finding) = own(sheet, finding)
                && let Some(key) = key(sheet, &finding)
                && met.insert(key)
            {
                found.push((key, Told { sheet: index, recipe, finding }));
            }
        };
        for (recipe, finding) in &result.findings {
            add(*recipe, finding);
        }
        for place in result.unused.iter().filter(|place| unused_everywhere(parts, sheet, **place)) {
            if let Some(recipe) = result.recipes.first() {
                add(0, &unused_accept::finding(recipe, *place));
            }
        }
    }
    found.sort_by_key(|(key, _)| *key);
    found.into_iter().map(|(_, told)| told).collect()
}

/// Position of the block in the file, the stretch within it, the rule.
type Key = (usize, u32, u32, &'static str);

fn key(sheet: &Sheet, finding: &Finding) -> Option<Key> {
    let position = sheet.blocks.get(finding.place.block as usize)?.position;
    Some((position, finding.place.start, finding.place.end, finding.rule))
}

/// An `accept` in a part all recipes of the file share is unused only if none of them uses it.
fn unused_everywhere(parts: &[Part<'_>], sheet: &Sheet, place: Place) -> bool {
    let Some(entry) = sheet.blocks.get(place.block as usize) else { return false };
    !entry.shared
        || parts.iter().all(|(other, result)| {
            result.unused.iter().any(|unused| {
                (unused.start, unused.end) == (place.start, place.end)
                    && other
                        .blocks
                        .get(unused.block as usize)
                        .is_some_and(|block| block.position == entry.position && block.file == entry.file)
            })
        })
}

/// What concerns this file. How another file is written is told where that file is checked; what comes of it here is
/// told on the `use` line.
fn own(sheet: &Sheet, finding: &Finding) -> Option<Finding> {
    let block = finding.place.block as usize;
    let entry = sheet.blocks.get(block)?;
    if entry.file.is_none() {
        return Some(finding.clone());
    }
    if rule(finding.rule)?.group == Group::Writing {
        return None;
    }
    let (index, bring) = sheet
        .blocks
        .iter()
        .enumerate()
        .take(block)
        .rev()
        .find(|(_, entry)| entry.file.is_none() && entry.block.kind == BlockKind::Use)?;
    let mut told = finding.clone();
    told.place = Place {
        block: u32::try_from(index).ok()?,
        start: bring.block.keyword.start,
        end: bring.block.name.end.max(bring.block.keyword.end),
    };
    Some(told.note(finding.place, "written here"))
}
