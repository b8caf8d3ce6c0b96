//! Columns that stood stay standing: what is written anew is longer or shorter than what was there.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_syntax::{format, format_edits};

use crate::file::File;
use crate::text::{Edit, Range, apply};

/// Edits of a file, with what keeps the blocks they touch tidy; a block that was not tidy is left as it is.
pub(super) fn kept(file: &File, edits: Vec<Edit>) -> Vec<Edit> {
    let mut by_block: BTreeMap<Option<usize>, Vec<Edit>> = BTreeMap::new();
    for edit in edits {
        let within = block_of(file, &edit).filter(|_| !edit.new_text.contains(['\n', '\r']));
        by_block.entry(within).or_default().push(edit);
    }
    let mut found = Vec::new();
    for (position, edits) in by_block {
        found.extend(position.and_then(|position| tidied(file, position, &edits)).unwrap_or(edits));
    }
    found.sort();
    found
}

fn block_of(file: &File, edit: &Edit) -> Option<usize> {
    let position = file.document.block_at(edit.at.start).filter(|_| edit.at.path == file.path)?;
    let placed = file.block(position)?;
    (edit.at.end <= placed.start + placed.block.text.len()).then_some(position)
}

/// The same edits and the blanks that change with them, line by line; none when nothing else has to change.
fn tidied(file: &File, position: usize, edits: &[Edit]) -> Option<Vec<Edit>> {
    let placed = file.block(position)?;
    let held = placed.block.text.trim_end().len();
    let before = file.slice(placed.start..placed.start + held);
    let ended = |text: &str| format!("{text}{}", if file.text.contains("\r\n") { "\r\n" } else { "\n" });
    if !format_edits(&ended(before)).is_empty() {
        return None;
    }
    let own: Vec<Edit> = edits
        .iter()
        .map(|edit| Some(Edit::new(&file.path, within(edit, placed.start)?, edit.new_text.as_str())))
        .collect::<Option<_>>()?;
    let after = ended(&apply(&file.path, before, &own));
    let tidy = format(&after);
    if tidy == after || tidy.split('\n').count() != after.split('\n').count() {
        return None;
    }
    let mut found = Vec::new();
    let mut at = placed.start;
    for (old, new) in before.split_inclusive('\n').zip(tidy.split_inclusive('\n')) {
        found.extend(changed(&file.path, at, old.trim_end_matches(['\n', '\r']), new.trim_end_matches(['\n', '\r'])));
        at += old.len();
    }
    Some(found)
}

fn within(edit: &Edit, start: usize) -> Option<Range> {
    Some(edit.at.start.checked_sub(start)?..edit.at.end.checked_sub(start)?)
}

/// What makes one line of another, without what stays the same at its ends.
fn changed(path: &Arc<str>, at: usize, old: &str, new: &str) -> Option<Edit> {
    if old == new {
        return None;
    }
    let same = |(a, b): &(char, char)| a == b;
    let front: usize = old.chars().zip(new.chars()).take_while(same).map(|(a, _)| a.len_utf8()).sum();
    let (old, new) = (old.get(front..)?, new.get(front..)?);
    let back: usize = old.chars().rev().zip(new.chars().rev()).take_while(same).map(|(a, _)| a.len_utf8()).sum();
    let (old, new) = (old.get(..old.len() - back)?, new.get(..new.len() - back)?);
    Some(Edit::new(path, at + front..at + front + old.len(), new))
}
