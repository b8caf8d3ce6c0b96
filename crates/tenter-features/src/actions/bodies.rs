//! Blocks as stretches of a file that can be moved: what belongs to one, and what stays when it goes.

use tenter_syntax::{Block, BlockKind};

use crate::file::File;
use crate::text::Range;

/// The text of a block from its first word to the end of its last line; comments at the left edge below it belong to
/// what follows.
pub(super) fn text(block: &Block) -> &str {
    let start = block.keyword.start as usize;
    block.text.get(start..end(block)).unwrap_or("")
}

fn end(block: &Block) -> usize {
    let mut at = 0;
    let mut end = block.keyword.end as usize;
    for row in block.text.split_inclusive('\n') {
        let held = row.trim_end();
        let inside = at <= block.keyword.start as usize || row.starts_with([' ', '\t']);
        if inside && !held.is_empty() {
            end = at + held.len();
        }
        at += row.len();
    }
    end
}

/// What goes when the block goes: its text and the blank lines below it.
pub(super) fn whole(file: &File, position: usize) -> Option<Range> {
    let placed = file.block(position)?;
    let start = placed.start + placed.block.keyword.start as usize;
    let mut to = placed.start + end(&placed.block);
    while file.text.as_bytes().get(to).is_some_and(|byte| matches!(byte, b'\n' | b'\r' | b' ' | b'\t')) {
        to += 1;
    }
    // The indentation of what follows is its own.
    let line = file.lines.line_range(file.lines.line_of(to)).start;
    Some(start..if to == file.text.len() { to } else { line.max(start) })
}

/// The same text whatever its blanks, case and comments.
pub(super) fn folded(block: &Block) -> String {
    let rows = text(block).lines().map(|row| row.split('#').next().unwrap_or(""));
    let words = rows.map(|row| row.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase());
    words.filter(|row| !row.is_empty()).collect::<Vec<_>>().join("\n")
}

/// Where a block that all recipes of the file share is put: before the first of them, behind what stands there.
pub(super) fn preamble_end(file: &File) -> usize {
    let first = file.document.blocks.iter().find(|placed| placed.block.kind == BlockKind::Recipe);
    first.map_or(file.text.len(), |placed| placed.start + placed.block.keyword.start as usize)
}

/// How the file breaks its lines.
pub(super) fn line_break(file: &File) -> &'static str {
    if file.text.contains("\r\n") { "\r\n" } else { "\n" }
}
