//! From the grammar's pairs to the lines of the tree.

mod items;
mod line;
mod number;

use crate::grammar::{Rule, run};
use crate::prepare::{Prepared, offset};
use crate::tree::{BlockKind, Line, Oddity, Span};

use line::LineReader;

/// The grammar gets at most about this much at once, which keeps its memory flat.
const CHUNK: usize = 64 * 1024;

/// Reads a prepared body that begins at `body` in `block`.
pub(crate) fn lower(
    block: &str,
    body: usize,
    prepared: &Prepared<'_>,
    kind: BlockKind,
    oddities: &mut Vec<Oddity>,
) -> Vec<Line> {
    let mut reader = LineReader::new(block, prepared, kind, oddities);
    let end = body + prepared.text.len();
    let mut starts = prepared.line_starts.iter().copied().peekable();
    let mut cuts = prepared.cuts.iter().peekable();
    let mut from = body;
    while from < end {
        let mut to = end;
        while let Some(start) = starts.next_if(|start| *start <= from + CHUNK) {
            if start > from {
                to = start;
            }
        }
        if to == end && end - from > CHUNK {
            // Nothing to break at within the measure: up to the next line start, however far.
            to = starts.next().unwrap_or(end);
        }
        let mut next = to;
        if let Some(cut) = cuts.next_if(|cut| (cut.unread.start as usize) < to) {
            to = cut.unread.start as usize;
            next = cut.resume;
        }
        if let Some(chunk) = prepared.text.get(from - body..to.saturating_sub(body)) {
            read_chunk(chunk, from, &mut reader);
        }
        from = next.max(from + 1);
    }
    reader.finish()
}

fn read_chunk(chunk: &str, base: usize, reader: &mut LineReader<'_>) {
    if let Some(pairs) = run(chunk) {
        for pair in pairs.flat_map(pest::iterators::Pair::into_inner).filter(|pair| pair.as_rule() == Rule::line) {
            reader.read(pair, base);
        }
        return;
    }
    // The grammar has a catch-all for every text, so this is a second net: line by line, a line it cannot read stays unread.
    let mut at = 0;
    for line in chunk.split_inclusive(['\n', '\r']) {
        match run(line) {
            Some(pairs) => {
                for pair in
                    pairs.flat_map(pest::iterators::Pair::into_inner).filter(|pair| pair.as_rule() == Rule::line)
                {
                    reader.read(pair, base + at);
                }
            }
            None => {
                let text = line.trim();
                let start = base + at + (line.len() - line.trim_start().len());
                reader.unreadable(Span::new(offset(start), offset(start + text.len())));
            }
        }
        at += line.len();
    }
}
