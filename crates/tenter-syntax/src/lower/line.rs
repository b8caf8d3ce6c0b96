//! One logical line from its pair.

use pest::iterators::Pair;

use crate::grammar::Rule;
use crate::heads::{self, Opening};
use crate::lower::items::{clause, item, span_of};
use crate::physical::physical_line;
use crate::prepare::{Prepared, offset};
use crate::tree::{BlockKind, Clause, Connector, Head, Item, Line, Oddity, OddityKind, Span};

/// Reads lines in order; the notes of the preparation are taken up as their lines come by.
pub(super) struct LineReader<'a> {
    block: &'a str,
    kind: BlockKind,
    prepared: &'a Prepared<'a>,
    inner_comments: usize,
    joins: usize,
    cuts: usize,
    oddities: &'a mut Vec<Oddity>,
    lines: Vec<Line>,
}

impl<'a> LineReader<'a> {
    pub(super) fn new(
        block: &'a str,
        prepared: &'a Prepared<'a>,
        kind: BlockKind,
        oddities: &'a mut Vec<Oddity>,
    ) -> Self {
        let lines = Vec::with_capacity(prepared.line_starts.len().min(4096));
        Self { block, kind, prepared, inner_comments: 0, joins: 0, cuts: 0, oddities, lines }
    }

    pub(super) fn finish(self) -> Vec<Line> {
        self.lines
    }

    /// Reads a `line` pair; blank lines leave nothing.
    pub(super) fn read(&mut self, pair: Pair<'_, Rule>, base: usize) {
        let pair_start = base + pair.as_span().start();
        let mut line = empty_line();
        for part in pair.into_inner() {
            match part.as_rule() {
                Rule::clause => line.clauses.extend(clause(part, base)),
                Rule::comment => line.comment = Some(self.trimmed(span_of(&part, base))),
                Rule::unread => line.unread = Some(self.trimmed(span_of(&part, base))),
                _ => line.items.extend(item(part, base)),
            }
        }
        let Some(span) = written(&line) else {
            if let Some(comment) = line.comment {
                line.span = Span::new(comment.start, comment.start);
                line.rest = line.span;
                line.indent = physical_line(self.block, pair_start).indent;
                self.lines.push(line);
            }
            return;
        };
        line.span = span;
        let physical = physical_line(self.block, pair_start);
        line.indent = physical.indent;
        self.take_cut(&mut line);
        self.take_inner_comments(&mut line);
        if !line.inner_comments.is_empty() {
            self.part_words(&mut line);
        }
        self.finish_line(line);
    }

    /// Keeps a text the grammar has failed on.
    pub(super) fn unreadable(&mut self, span: Span) {
        if !span.is_empty() {
            let mut line = empty_line();
            line.span = span;
            line.rest = span;
            line.unread = Some(span);
            self.lines.push(line);
        }
    }

    fn trimmed(&self, span: Span) -> Span {
        let text = span.of(self.block);
        Span::new(span.start, span.start + offset(text.trim_end().len()))
    }

    fn finish_line(&mut self, mut line: Line) {
        let opening = heads::take_head(self.block, self.kind, &mut line);
        if line.indent == 0 {
            self.note(OddityKind::StrayLine, line.span);
        }
        let prose = opening == Opening::Prose;
        if prose {
            line.items.clear();
            line.clauses.clear();
            line.unread = None;
        } else {
            self.settle_hashes(&mut line);
            self.notice(&line);
        }
        self.take_joins(&line, prose);
        self.lines.push(line);
    }

    /// `#` and six hex digits is a colour where a colour is expected, or when a digit shows that it is no word.
    fn settle_hashes(&mut self, line: &mut Line) {
        let expected = line.head.as_ref().is_some_and(|head| &*head.word == "colour");
        let wrong = |item: &Item| match item {
            Item::Colour(span) if !expected && !span.of(self.block).bytes().any(|b| b.is_ascii_digit()) => {
                Some(span.start)
            }
            _ => None,
        };
        let items = line.items.iter().chain(line.clauses.iter().flat_map(|clause| clause.items.iter()));
        if let Some(from) = items.filter_map(wrong).next() {
            leave_unread(line, from);
        }
        // `colour #add` is a colour that went wrong, not a comment.
        if let Some(unread) = line.unread
            && !expected
            && unread.of(self.block).starts_with('#')
        {
            self.note(OddityKind::CommentWithoutBlank, unread);
        }
    }

    fn notice(&mut self, line: &Line) {
        for clause in &line.clauses {
            if clause.connector == Connector::And
                && matches!(self.kind, BlockKind::Steps | BlockKind::Variant)
                && let Some(Item::Words(words)) = clause.items.first()
                && heads::opens_with_verb(words.of(self.block))
            {
                self.note(OddityKind::TwoSteps, clause.span);
            }
        }
        let items = line.items.iter().chain(line.clauses.iter().flat_map(|clause| clause.items.iter()));
        let mut open = Vec::new();
        for item in items {
            match item {
                Item::Quoted(span) if !closed_quote(span.of(self.block)) => open.push((OddityKind::OpenQuote, *span)),
                Item::Aside(span) if !span.of(self.block).ends_with(')') => open.push((OddityKind::OpenBracket, *span)),
                _ => {}
            }
        }
        for (kind, span) in open {
            self.note(kind, span);
        }
    }

    fn note(&mut self, kind: OddityKind, span: Span) {
        self.oddities.push(Oddity { kind, span });
    }

    fn take_cut(&mut self, line: &mut Line) {
        while let Some(cut) = self.prepared.cuts.get(self.cuts)
            && cut.line <= line.span.start
        {
            self.cuts += 1;
            if line.span.end > cut.unread.start {
                continue;
            }
            line.unread = Some(line.unread.map_or(cut.unread, |unread| unread.cover(cut.unread)));
            line.span = line.span.cover(cut.unread);
            line.comment = cut.comment;
        }
    }

    fn take_inner_comments(&mut self, line: &mut Line) {
        while let Some(comment) = self.prepared.inner_comments.get(self.inner_comments)
            && comment.start < line.span.end
        {
            self.inner_comments += 1;
            line.inner_comments.push(*comment);
        }
    }

    /// Words with a comment among them become two items, so that no slice of the text holds the comment.
    fn part_words(&self, line: &mut Line) {
        let comments = std::mem::take(&mut line.inner_comments);
        let part = |items: &mut Vec<Item>| {
            *items = items.drain(..).flat_map(|item| self.parted(item, &comments)).collect();
        };
        part(&mut line.items);
        for clause in &mut line.clauses {
            part(&mut clause.items);
        }
        line.inner_comments = comments;
    }

    fn parted(&self, item: Item, comments: &[Span]) -> Vec<Item> {
        let Item::Words(span) = item else { return vec![item] };
        let first = comments.partition_point(|comment| comment.start < span.start);
        let mut parts = Vec::new();
        let mut from = span.start;
        let inside = comments.get(first..).unwrap_or(&[]).iter().take_while(|comment| comment.start < span.end);
        for (start, next) in inside.map(|comment| (comment.start, comment.end)).chain([(span.end, span.end)]) {
            let text = Span::new(from, start).of(self.block);
            let skipped = offset(text.len() - text.trim_start().len());
            let trimmed = self.trimmed(Span::new((from + skipped).min(start), start));
            if !trimmed.is_empty() {
                parts.push(Item::Words(trimmed));
            }
            from = next;
        }
        parts
    }

    fn take_joins(&mut self, line: &Line, prose: bool) {
        while let Some(join) = self.prepared.joins.get(self.joins)
            && *join < line.span.end
        {
            self.joins += 1;
            let rest = physical_line(self.block, *join as usize);
            let text = self.block.get(rest.text..rest.end).unwrap_or("");
            if !prose && heads::reads_as_line(text, self.kind) {
                let end = line.span.end.min(offset(rest.end));
                self.note(OddityKind::LooksLikeOwnLine, self.trimmed(Span::new(*join, end)));
            }
        }
    }
}

fn empty_line() -> Line {
    Line {
        span: Span::default(),
        indent: 0,
        head: None::<Head>,
        items: Vec::new(),
        clauses: Vec::new(),
        rest: Span::default(),
        unread: None,
        comment: None,
        inner_comments: Vec::new(),
    }
}

/// From the first to the last thing that was written in the line.
fn written(line: &Line) -> Option<Span> {
    let first = line.items.first().map(Item::span);
    let last = line.items.last().map(Item::span);
    let clauses = (line.clauses.first().map(|c| c.span), line.clauses.last().map(|c| c.span));
    [first, last, clauses.0, clauses.1, line.unread].into_iter().flatten().reduce(Span::cover)
}

/// Takes everything from an offset on out of the readable part.
fn leave_unread(line: &mut Line, from: u32) {
    line.items.retain(|item| item.span().start < from);
    line.clauses.retain(|clause| clause.word.start < from);
    for clause in &mut line.clauses {
        clause.items.retain(|item| item.span().start < from);
        clause.span = clause_span(clause);
    }
    line.unread = Some(Span::new(from, line.span.end));
}

fn clause_span(clause: &Clause) -> Span {
    clause.items.last().map_or(clause.word, |last| clause.word.cover(last.span()))
}

fn closed_quote(text: &str) -> bool {
    text.chars().count() > 1 && text.chars().next_back().is_some_and(crate::physical::is_quote)
}
