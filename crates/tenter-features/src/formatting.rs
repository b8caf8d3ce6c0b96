//! Tidy text: the whole file, some lines, or the line just left.

use tenter_syntax::format_edits;

use crate::file::File;
use crate::text::{Edit, Range, meet};

/// What tidying the whole file changes.
pub fn document(file: &File) -> Vec<Edit> {
    format_edits(&file.text).into_iter().flat_map(|(range, with)| trimmed(file, range, &with)).collect()
}

/// What tidying changes within some lines.
pub fn range(file: &File, within: &Range) -> Vec<Edit> {
    let whole = file.line_range(within.start).start..file.line_range(within.end).end;
    let here = |range: &Range| meet(range, &whole) && range.start < whole.end.max(whole.start + 1);
    format_edits(&file.text)
        .into_iter()
        .filter(|(range, _)| here(range))
        .flat_map(|(range, with)| trimmed(file, range, &with))
        .collect()
}

/// What tidying changes on the line above the one just begun. The line being typed on is left alone.
pub fn on_type(file: &File, offset: usize) -> Vec<Edit> {
    let line = file.lines.line_of(offset);
    let Some(above) = line.checked_sub(1) else { return Vec::new() };
    let lines = file.lines.line_range(above);
    format_edits(&file.text)
        .into_iter()
        // An edit that reaches beyond the line would move what is being typed.
        .filter(|(range, _)| lines.start <= range.start && range.end <= lines.end)
        .flat_map(|(range, with)| trimmed(file, range, &with))
        .filter(|edit| edit.at.end < lines.end || !edit.new_text.is_empty())
        .collect()
}

/// An edit without what stays the same at its ends, so that the caret stays where it is.
fn trimmed(file: &File, range: Range, with: &str) -> Option<Edit> {
    let old = file.slice(range.clone());
    if old == with {
        return None;
    }
    let front: usize = old.chars().zip(with.chars()).take_while(|(a, b)| a == b).map(|(a, _)| a.len_utf8()).sum();
    let (old, new) = (old.get(front..)?, with.get(front..)?);
    let back: usize =
        old.chars().rev().zip(new.chars().rev()).take_while(|(a, b)| a == b).map(|(a, _)| a.len_utf8()).sum();
    let (old, new) = (old.get(..old.len() - back)?, new.get(..new.len() - back)?);
    let start = range.start + front;
    // A carriage return must not be parted from its line feed.
    Some(Edit::new(&file.path, start..start + old.len(), new))
}
