//! Writes a recipe tidily: spacing, columns and unit spelling. What a line means never changes; a line that
//! would not read the same afterwards stays as it is.
//!
//! The shape: bodies indented by two columns; heads, and amounts in mixes, padded so that what follows stands in a
//! column; continuations under that column; one blank line between blocks; comments and order kept.

mod columns;
mod meaning;
mod pieces;
mod plan;
mod units;

use std::ops::Range;

use crate::tree::Document;

/// One replacement: a range of whole lines of the text, and what stands there instead.
pub type LineEdit = (Range<usize>, String);

/// The text, tidied. Formatting twice gives what formatting once gives.
pub fn format(text: &str) -> String {
    apply(text, &edits(text))
}

/// What [`format`] changes, line by line, in order and without overlap; lines that are tidy already are left out.
pub fn edits(text: &str) -> Vec<LineEdit> {
    let document = Document::parse(text);
    let meant = meaning::document(&document);
    let mut keep = Vec::new();
    // Most texts are done in one round. A block that would read differently is left alone in the next.
    for _ in 0..3 {
        let edits = plan::edits(text, &document, &keep);
        let after = Document::parse(&apply(text, &edits));
        let means = meaning::document(&after);
        if means == meant {
            return edits;
        }
        if means.len() != meant.len() {
            break;
        }
        keep.extend((0..meant.len()).filter(|index| means.get(*index) != meant.get(*index)));
    }
    Vec::new()
}

fn apply(text: &str, edits: &[LineEdit]) -> String {
    let mut out = String::with_capacity(text.len() + text.len() / 8);
    let mut from = 0;
    for (range, with) in edits {
        out.push_str(text.get(from..range.start).unwrap_or(""));
        out.push_str(with);
        from = range.end;
    }
    out.push_str(text.get(from..).unwrap_or(""));
    out
}
