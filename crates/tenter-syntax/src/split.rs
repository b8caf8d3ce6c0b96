//! Where blocks begin: one pass over the physical lines, by hand.

use crate::chars::{is_blank, starts_number};
use crate::heads;
use crate::kinds::lookup_kind;
use crate::physical::{Holds, PhysicalLine, physical_line, physical_lines};
use crate::tree::BlockKind;

/// The byte ranges of the blocks of a text, in order and without gaps. `None` of them is empty.
pub(crate) fn split(text: &str) -> Vec<(usize, usize)> {
    let mut starts = Vec::new();
    let mut above = BlockKind::Loose;
    for line in physical_lines(text, 0) {
        if line.holds != Holds::Text || line.indent > 0 {
            continue;
        }
        if let Some(kind) = opens(text, line, above) {
            starts.push(line.start);
            above = kind;
        }
    }
    if starts.first() != Some(&0) && !text.is_empty() {
        starts.insert(0, 0);
    }
    let ends = starts.iter().skip(1).copied().chain(std::iter::once(text.len()));
    starts.iter().copied().zip(ends).collect()
}

/// The kind of block a left-edge line opens below a block of kind `above`; none for a stray line.
fn opens(text: &str, line: PhysicalLine, above: BlockKind) -> Option<BlockKind> {
    let words = text.get(line.text..line.end)?;
    let word = first_word(words);
    if let Some(kind) = lookup_kind(word) {
        return Some(kind.kind);
    }
    let first = words.chars().next()?;
    if starts_number(first) || !first.is_alphabetic() || heads::belongs_in(words, above) {
        return None;
    }
    next_is_indented(text, line.next).then_some(BlockKind::Unknown)
}

/// The kind of the block whose header a line would be if it stood first, and the length of the word that says so.
pub(crate) fn opens_first(text: &str, line: PhysicalLine) -> Option<(BlockKind, usize)> {
    let kind = opens(text, line, BlockKind::Loose)?;
    let words = text.get(line.text..line.end)?;
    Some((kind, first_word(words).len()))
}

fn first_word(words: &str) -> &str {
    words.split(is_blank).next().unwrap_or("")
}

fn next_is_indented(text: &str, mut at: usize) -> bool {
    while at < text.len() {
        let line = physical_line(text, at);
        if line.holds == Holds::Text {
            return line.indent > 0;
        }
        at = line.next;
    }
    false
}
