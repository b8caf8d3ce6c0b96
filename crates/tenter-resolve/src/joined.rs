//! Two steps on a line: `add 20 g salt and stir`. Both are carried out, in that order.

use tenter_syntax::{Clause, Connector, Head, Item, Line, Span, Verb, fold_name, verbs};

use crate::sheet::Row;

/// The steps of a line that holds more than one; `None` for all others.
pub(crate) fn parts(row: &Row<'_>) -> Option<Vec<Line>> {
    row.line.head.as_ref()?;
    let cuts: Vec<(usize, Head, Option<Item>)> =
        (0..row.line.clauses.len()).filter_map(|at| opening(row, at).map(|(head, rest)| (at, head, rest))).collect();
    let first = cuts.first()?.0;
    let mut lines = vec![part(row.line, row.line.span.start, row.line.head.clone(), &row.line.items, 0, first)];
    for (number, (at, head, rest)) in cuts.iter().enumerate() {
        let end = cuts.get(number + 1).map_or(row.line.clauses.len(), |(next, ..)| *next);
        let clause = row.line.clauses.get(*at)?;
        let items: Vec<Item> = rest.iter().cloned().chain(clause.items.iter().skip(1).cloned()).collect();
        lines.push(part(row.line, head.span.start, Some(head.clone()), &items, at + 1, end));
    }
    Some(lines)
}

/// The verb that an `and` opens, and what is left of its words. After `until` and `because` the words are prose.
fn opening(row: &Row<'_>, at: usize) -> Option<(Head, Option<Item>)> {
    let clause = row.line.clauses.get(at).filter(|clause| clause.connector == Connector::And)?;
    let before = row.line.clauses.get(..at)?.iter().rev().find(|clause| clause.connector != Connector::And);
    if before.is_some_and(|clause| matches!(clause.connector, Connector::Until | Connector::Because)) {
        return None;
    }
    let Some(Item::Words(words)) = clause.items.first() else {
        return None;
    };
    let text = row.text(*words);
    let (verb, end) = word_ends(text)
        .take(LONGEST_VERB)
        .filter_map(|end| text.get(..end).and_then(named).map(|verb| (verb, end)))
        .last()?;
    let span = Span::new(words.start, words.start + end as u32);
    let tail = text.get(end..).unwrap_or("");
    let start = words.end - tail.trim_start().len() as u32;
    let rest = (start < words.end).then(|| Item::Words(Span::new(start, words.end)));
    Some((Head { span, word: verb.name.into(), known: true }, rest))
}

/// Where the words of a text end, first to last.
fn word_ends(text: &str) -> impl Iterator<Item = usize> + '_ {
    let after = text.char_indices().map(|(at, character)| (at, character.is_whitespace()));
    let mut inside = false;
    after.chain(std::iter::once((text.len(), true))).filter_map(move |(at, blank)| {
        let ends = inside && blank;
        inside = !blank;
        ends.then_some(at)
    })
}

/// Words of the longest verb.
const LONGEST_VERB: usize = 2;

fn named(words: &str) -> Option<&'static Verb> {
    let folded = fold_name(words);
    verbs().find(|verb| verb.name == folded || verb.synonyms.contains(&folded.as_str()))
}

/// A line of its own made of a stretch of another.
fn part(whole: &Line, start: u32, head: Option<Head>, items: &[Item], from: usize, to: usize) -> Line {
    let clauses: Vec<Clause> = whole.clauses.get(from..to).unwrap_or(&[]).to_vec();
    let last = clauses.last().map(|clause| clause.span.end).or_else(|| items.last().map(|item| item.span().end));
    let end = last.or_else(|| head.as_ref().map(|head| head.span.end)).unwrap_or(start);
    let ends_line = to == whole.clauses.len();
    let end = if ends_line { whole.span.end } else { end };
    let rest = Span::new(head.as_ref().map_or(start, |head| head.span.end).min(end), end);
    Line {
        span: Span::new(start, end),
        indent: whole.indent,
        head,
        items: items.to_vec(),
        clauses,
        rest,
        unread: whole.unread.filter(|_| ends_line),
        comment: None,
        inner_comments: Vec::new(),
    }
}
