//! A block moved to a file of its own, for other recipes to take: with what it names, and a `use` line in its place.

use std::collections::BTreeSet;

use tenter_syntax::BlockKind;

use crate::actions::{Action, ActionKind, NewFile, bodies, needs};
use crate::analysis::FileAnalysis;
use crate::file::File;
use crate::renamed_files::relative;
use crate::text::{Edit, Range};
use crate::workspace::Snapshot;

/// On the line that opens a block other files could take, offers to give it a file of its own.
pub(super) fn offer(snapshot: &Snapshot, analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    found.extend(split(snapshot, analysis, range.start));
}

fn split(snapshot: &Snapshot, analysis: &FileAnalysis, offset: usize) -> Option<Action> {
    let file = &analysis.file;
    let (view, number, at) = analysis.home_at(offset)?;
    let entry = view.sheet.blocks.get(number as usize).filter(|entry| entry.file.is_none())?;
    let block = &entry.block;
    // Steps stay: where they stand is when they are done.
    let shareable = matches!(
        block.kind,
        BlockKind::Goods
            | BlockKind::Dye
            | BlockKind::Chemical
            | BlockKind::Mix
            | BlockKind::Layout
            | BlockKind::Vessel
    );
    // A file without a recipe is a shared one already.
    let in_recipe = view.sheet.recipe_block().is_some();
    if !shareable || !in_recipe || at > block.name.end || block.name.is_empty() {
        return None;
    }
    let needs = needs::of(view, number);
    let moved: BTreeSet<usize> =
        needs.blocks.iter().filter_map(|block| Some(view.sheet.blocks.get(*block as usize)?.position)).collect();
    let kinds = || moved.iter().filter_map(|position| Some(file.block(*position)?.block.kind));
    // Goods are what a recipe is about: they go only when they are meant.
    if block.kind != BlockKind::Goods && kinds().any(|kind| kind == BlockKind::Goods) {
        return None;
    }
    if kinds().any(|kind| {
        matches!(kind, BlockKind::Steps | BlockKind::Recipe | BlockKind::Variant | BlockKind::Log | BlockKind::Shelf)
    }) {
        return None;
    }
    let (mut wanted, changed) = needs::wanted_elsewhere(analysis, &moved);
    if changed {
        return None;
    }
    let name = block.slice(block.name).trim_matches('"').to_owned();
    if wanted.is_empty() {
        wanted.push(name.clone());
    }
    let target = free_path(snapshot, &file.path, &name);
    let written = relative(&file.path, &target);
    let line_break = bodies::line_break(file);
    let mut edits: Vec<Edit> =
        moved.iter().filter_map(|position| Some(Edit::new(&file.path, bodies::whole(file, *position)?, ""))).collect();
    edits.push(use_line(file, &format!("use {} from \"{written}\"", wanted.join(", ")), line_break, &moved)?);
    let text = new_text(file, &moved, &needs, &target, line_break)?;
    let others: Vec<&str> = moved
        .iter()
        .filter(|position| **position != entry.position)
        .filter_map(|position| file.block(*position))
        .map(|placed| placed.block.slice(placed.block.name))
        .collect();
    let along = if others.is_empty() { String::new() } else { format!(" with {}", others.join(", ")) };
    Some(Action {
        title: format!("move `{name}`{along} to a file of its own, `{written}`"),
        kind: ActionKind::Extract,
        settles: None,
        preferred: false,
        edits,
        creates: Some(NewFile { path: target.into(), text }),
    })
}

/// A path beside the file that nobody has yet.
fn free_path(snapshot: &Snapshot, beside: &str, name: &str) -> String {
    let folder = beside.rfind('/').map_or("", |at| beside.get(..=at).unwrap_or(""));
    let mut stem = String::new();
    for c in name.to_lowercase().chars() {
        if c.is_alphanumeric() {
            stem.push(c);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = match stem.trim_end_matches('-') {
        "" => "shared",
        stem => stem,
    };
    let plain = format!("{folder}{stem}.dye");
    if !snapshot.has(&plain) {
        return plain;
    }
    (2..).map(|number: u32| format!("{folder}{stem}-{number}.dye")).find(|path| !snapshot.has(path)).unwrap_or(plain)
}

/// The `use` line, behind those there are, else in front of the first block.
fn use_line(file: &File, line: &str, line_break: &str, moved: &BTreeSet<usize>) -> Option<Edit> {
    let blocks = &file.document.blocks;
    let first = blocks.iter().position(|placed| placed.block.kind == BlockKind::Recipe).unwrap_or(blocks.len());
    let last_use = (0..first).rev().find(|index| blocks.get(*index).is_some_and(|it| it.block.kind == BlockKind::Use));
    if let Some(placed) = last_use.and_then(|index| blocks.get(index)) {
        let end = placed.start + bodies::text(&placed.block).len() + placed.block.keyword.start as usize;
        return Some(Edit::new(&file.path, end..end, format!("{line_break}{line}")));
    }
    let quiet = |kind| matches!(kind, BlockKind::Edition | BlockKind::Loose);
    let (index, next) = blocks.iter().enumerate().find(|(_, placed)| !quiet(placed.block.kind))?;
    let at = next.start + next.block.keyword.start as usize;
    // Where the first block is one that goes, the line takes its place.
    let end = if moved.contains(&index) { bodies::whole(file, index)?.end } else { at };
    Some(Edit::new(&file.path, at..end, format!("{line}{line_break}{line_break}")))
}

/// What the new file says: the edition, what it takes from others, the blocks in their order.
fn new_text(
    file: &File,
    moved: &BTreeSet<usize>,
    needs: &needs::Needs,
    target: &str,
    line_break: &str,
) -> Option<String> {
    let mut parts: Vec<String> = Vec::new();
    let edition = file.document.blocks.iter().find(|placed| placed.block.kind == BlockKind::Edition);
    parts.extend(edition.map(|placed| bodies::text(&placed.block).to_owned()));
    let uses: Vec<String> = needs
        .taken
        .iter()
        .map(|(from, names)| {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            format!("use {} from \"{}\"", names.join(", "), relative(target, from))
        })
        .collect();
    if !uses.is_empty() {
        parts.push(uses.join(line_break));
    }
    for position in moved {
        parts.push(bodies::text(&file.block(*position)?.block).to_owned());
    }
    Some(parts.join(&format!("{line_break}{line_break}")) + line_break)
}
