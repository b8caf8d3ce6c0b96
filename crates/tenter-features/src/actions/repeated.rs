//! A mix that several recipes of a file write alike, written once for all of them.

use std::collections::BTreeSet;

use tenter_syntax::BlockKind;

use crate::actions::{Action, ActionKind, bodies, needs};
use crate::analysis::FileAnalysis;
use crate::text::{Edit, Range};

/// On the line that opens a mix, offers to keep one of those that say the same, before the first recipe.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    found.extend(extract(analysis, range.start));
}

fn extract(analysis: &FileAnalysis, offset: usize) -> Option<Action> {
    let file = &analysis.file;
    let (view, number, at) = analysis.home_at(offset)?;
    let entry = view.sheet.blocks.get(number as usize).filter(|entry| entry.file.is_none())?;
    let block = &entry.block;
    if block.kind != BlockKind::Mix || at > block.name.end {
        return None;
    }
    let told = bodies::folded(block);
    let blocks = &file.document.blocks;
    let alike: BTreeSet<usize> = blocks
        .iter()
        .enumerate()
        .filter(|(_, placed)| placed.block.kind == BlockKind::Mix && bodies::folded(&placed.block) == told)
        .map(|(position, _)| position)
        .collect();
    let first_recipe = blocks.iter().position(|placed| placed.block.kind == BlockKind::Recipe)?;
    if alike.len() < 2 {
        return None;
    }
    // What each of them names must be the same thing: something all recipes share, or of the reference data.
    for position in &alike {
        let (view, number) = analysis.home(*position)?;
        let needs = needs::of(view, number);
        let own = |block: &u32| {
            let entry = view.sheet.blocks.get(*block as usize);
            *block != number && entry.is_none_or(|entry| !entry.shared)
        };
        if needs.blocks.iter().any(own) {
            return None;
        }
    }
    let (_, changed) = needs::wanted_elsewhere(analysis, &alike);
    if changed {
        return None;
    }
    let kept = alike.iter().copied().find(|position| *position < first_recipe);
    let gone = alike.iter().filter(|position| Some(**position) != kept);
    let mut edits: Vec<Edit> =
        gone.filter_map(|position| Some(Edit::new(&file.path, bodies::whole(file, *position)?, ""))).collect();
    if kept.is_none() {
        let line_break = bodies::line_break(file);
        let at = bodies::preamble_end(file);
        let text = format!("{}{line_break}{line_break}", bodies::text(block));
        edits.push(Edit::new(&file.path, at..at, text));
    }
    let name = block.slice(block.name).trim_matches('"');
    Some(Action {
        title: format!("write `{name}` once for all recipes of this file (it stands here {} times)", alike.len()),
        kind: ActionKind::Extract,
        settles: None,
        preferred: false,
        edits,
        creates: None,
    })
}
