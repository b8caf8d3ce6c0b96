//! Selections that grow: word, phrase, clause, line, block, file.

use tenter_syntax::Span;

use crate::file::File;
use crate::text::Range;

/// The stretches around an offset, the smallest first, each inside the next.
pub fn selections(file: &File, offset: usize) -> Vec<Range> {
    let offset = file.clamp(offset);
    let mut ranges = vec![word(&file.text, offset)];
    if let Some(position) = file.document.block_at(offset)
        && let Some(placed) = file.block(position)
    {
        let at = u32::try_from(offset - placed.start).unwrap_or(u32::MAX);
        let mut spans: Vec<Span> = vec![placed.block.name, placed.block.keyword];
        for line in placed.block.lines.iter().filter(|line| line.span.touches(at)) {
            spans.extend(line.head.as_ref().map(|head| head.span));
            spans.extend(line.items.iter().map(tenter_syntax::Item::span));
            for clause in &line.clauses {
                spans.extend(clause.items.iter().map(tenter_syntax::Item::span));
                let last = clause.items.last().map(tenter_syntax::Item::span);
                let first = clause.items.first().map(tenter_syntax::Item::span);
                spans.extend(first.zip(last).map(|(first, last)| first.cover(last)));
                spans.push(clause.span);
            }
            spans.push(line.rest);
            spans.push(line.span);
        }
        let around = spans.into_iter().filter(|span| span.touches(at) && !span.is_empty());
        ranges.extend(around.map(|span| file.range(position, span)));
        let held = placed.block.text.trim_end().len();
        ranges.push(placed.start..placed.start + held);
    }
    ranges.push(0..file.text.len());
    ranges.sort_by_key(|range| range.end - range.start);
    let mut nested: Vec<Range> = Vec::new();
    for range in ranges {
        let holds = range.start <= offset && offset <= range.end;
        let grows =
            nested.last().is_none_or(|inner| range.start <= inner.start && inner.end <= range.end && *inner != range);
        if holds && grows {
            nested.push(range);
        }
    }
    nested
}

/// The word around an offset; empty between words.
pub(crate) fn word(text: &str, offset: usize) -> Range {
    let part = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '\'' | '%' | '°' | '.');
    let before = text.get(..offset).unwrap_or("");
    let after = text.get(offset..).unwrap_or("");
    let start = offset - before.chars().rev().take_while(|c| part(*c)).map(char::len_utf8).sum::<usize>();
    let end = offset + after.chars().take_while(|c| part(*c)).map(char::len_utf8).sum::<usize>();
    start..end
}
