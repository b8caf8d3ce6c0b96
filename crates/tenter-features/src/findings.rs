//! The findings of a file from those of its sheets, put together as [`tenter_rules::check_document`] does, without
//! checking again what did not change.

use std::collections::BTreeSet;

use tenter_quantity::Place;
use tenter_resolve::Sheet;
use tenter_rules::{Context, Finding, Group, Note, SheetFindings, Told, check, rule};
use tenter_syntax::BlockKind;

type Key = (usize, u32, u32, &'static str);

/// A sheet and what checking it gave.
pub(crate) type Part<'a> = (&'a Sheet, &'a SheetFindings);

/// Puts the results of a file's sheets together: in order of their places in the file, then by rule.
pub(crate) fn gather(parts: &[Part<'_>]) -> Vec<Told> {
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
        for finding in unused(parts, sheet, result) {
            add(0, &finding);
        }
    }
    found.sort_by_key(|(key, _)| *key);
    found.into_iter().map(|(_, told)| told).collect()
}

fn key(sheet: &Sheet, finding: &Finding) -> Option<Key> {
    let position = sheet.blocks.get(finding.place.block as usize)?.position;
    Some((position, finding.place.start, finding.place.end, finding.rule))
}

/// `accept` lines that accept nothing. One in a part all recipes share is unused only if none of them uses it.
fn unused(parts: &[Part<'_>], sheet: &Sheet, result: &SheetFindings) -> Vec<Finding> {
    let places: Vec<Place> =
        result.unused.iter().copied().filter(|place| unused_everywhere(parts, sheet, *place)).collect();
    match (result.recipes.first(), result.rehearsals.first()) {
        (Some(recipe), Some(rehearsal)) if !places.is_empty() => check(&Context { sheet, recipe, rehearsal })
            .into_iter()
            .filter(|finding| finding.rule == "unused-accept" && places.contains(&finding.place))
            .collect(),
        _ => Vec::new(),
    }
}

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

/// What concerns this file: how another file is written is told where that file is checked; what comes of it here is
/// told on the `use` line.
fn own(sheet: &Sheet, finding: &Finding) -> Option<Finding> {
    let block = finding.place.block as usize;
    if sheet.blocks.get(block)?.file.is_none() {
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
    let end = bring.block.name.end.max(bring.block.keyword.end);
    told.place = Place { block: u32::try_from(index).ok()?, start: bring.block.keyword.start, end };
    told.notes.push(Note { place: finding.place, text: "written here".to_owned() });
    Some(told)
}
