//! Makes one text line of each continued line before the grammar runs, without moving a byte.
//!
//! The copy has the length of the original, so every offset stays true. It is only made when something has to change.

use std::borrow::Cow;
use std::ops::Range;

use crate::chars::{is_blank, is_invisible};
use crate::physical::{Holds, PhysicalLine, find_comment, physical_lines, trim_end};
use crate::tree::Span;

/// A longer logical line is read up to about here; the rest stays in the tree as unread.
pub(crate) const LONGEST_LINE: usize = 16 * 1024;

/// A body ready for the grammar.
#[derive(Debug)]
pub(crate) struct Prepared<'a> {
    /// The body, from the offset it was prepared from to its end.
    pub text: Cow<'a, str>,
    /// Comments in front of a continuation, in order.
    pub inner_comments: Vec<Span>,
    /// Where the text of each continuing physical line begins, in order.
    pub joins: Vec<u32>,
    /// Ends of lines that are too long to be read, in order.
    pub cuts: Vec<Cut>,
    /// Offsets at which a chunk for the grammar may begin: starts of logical lines, ascending.
    pub line_starts: Vec<usize>,
}

/// The end of a line the grammar does not get to see.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cut {
    /// Where the line begins.
    pub line: u32,
    /// The text left unread.
    pub unread: Span,
    /// The comment behind it.
    pub comment: Option<Span>,
    /// Where the grammar goes on: the line break.
    pub resume: usize,
}

/// Offsets beyond four gigabytes are all the same to a span.
pub(crate) fn offset(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

/// Prepares `block[body..]`. All spans count from the start of `block`.
pub(crate) fn prepare(block: &str, body: usize) -> Prepared<'_> {
    let mut plan = Plan { block, ..Plan::default() };
    for line in physical_lines(block, body) {
        plan.take(line);
    }
    plan.close();
    plan.find_odd_blanks(body);
    let original = block.get(body..).unwrap_or("");
    let text = if plan.erase.is_empty() { Cow::Borrowed(original) } else { erased(original, body, &plan.erase) };
    Prepared {
        text,
        inner_comments: plan.inner_comments,
        joins: plan.joins,
        cuts: plan.cuts,
        line_starts: plan.line_starts,
    }
}

#[derive(Default)]
struct Plan<'a> {
    block: &'a str,
    /// The logical line in work.
    open: Option<Open>,
    /// Comment-only lines seen since; they belong to the logical line if it goes on after them.
    pending: Vec<PhysicalLine>,
    /// Indentation of the last body line that was no stray.
    body_indent: u32,
    erase: Vec<Range<usize>>,
    inner_comments: Vec<Span>,
    joins: Vec<u32>,
    cuts: Vec<Cut>,
    line_starts: Vec<usize>,
}

#[derive(Clone, Copy)]
struct Open {
    start: usize,
    indent: u32,
    last: PhysicalLine,
}

impl Plan<'_> {
    fn take(&mut self, line: PhysicalLine) {
        match line.holds {
            Holds::Nothing => {
                self.close();
                self.line_starts.push(line.start);
            }
            Holds::Comment => {
                if self.open.is_some() {
                    self.pending.push(line);
                } else {
                    self.line_starts.push(line.start);
                }
            }
            Holds::Text => match self.open {
                Some(open) if line.indent > 0 && line.indent >= open.indent.saturating_add(4) => self.join(open, line),
                _ => self.begin(line),
            },
        }
    }

    fn begin(&mut self, line: PhysicalLine) {
        self.close();
        self.line_starts.push(line.start);
        // A stray line at the left edge stands for one of the body, so its continuation is measured from there.
        let indent = if line.indent == 0 { self.body_indent } else { line.indent };
        self.body_indent = indent;
        self.open = Some(Open { start: line.text, indent, last: line });
    }

    fn join(&mut self, open: Open, line: PhysicalLine) {
        let mut from = open.last.end;
        if let Some(at) = self.comment_of(open.last) {
            self.inner_comments.push(Span::new(offset(at), offset(trim_end(self.block, at, open.last.end))));
            from = at;
        }
        for comment in self.pending.drain(..) {
            let end = trim_end(self.block, comment.text, comment.end);
            self.inner_comments.push(Span::new(offset(comment.text), offset(end)));
        }
        self.erase.push(from..line.text);
        self.joins.push(offset(line.text));
        self.open = Some(Open { last: line, ..open });
    }

    fn comment_of(&self, line: PhysicalLine) -> Option<usize> {
        self.block.get(line.text..line.end).and_then(find_comment).map(|at| line.text + at)
    }

    fn close(&mut self) {
        if let Some(open) = self.open.take() {
            if open.last.end.saturating_sub(open.start) > LONGEST_LINE {
                self.cut(open);
            }
            for comment in &self.pending {
                self.line_starts.push(comment.start);
            }
        }
        self.pending.clear();
    }

    fn cut(&mut self, open: Open) {
        let comment_at = self.comment_of(open.last);
        let comment = comment_at.map(|at| Span::new(offset(at), offset(trim_end(self.block, at, open.last.end))));
        let end = trim_end(self.block, open.start, comment_at.unwrap_or(open.last.end));
        let mut from = open.start + LONGEST_LINE;
        if from >= end {
            return;
        }
        while !self.block.is_char_boundary(from) {
            from -= 1;
        }
        // Rather in front of a whole word, if one begins not far back.
        let near = self.block.get(from.saturating_sub(256)..from).unwrap_or("");
        if let Some(at) = near.rfind(is_blank) {
            let blank = near.get(at..).and_then(|rest| rest.chars().next()).map_or(1, char::len_utf8);
            from = from.saturating_sub(256) + at + blank;
        }
        let unread = Span::new(offset(from), offset(end));
        self.cuts.push(Cut { line: offset(open.start), unread, comment, resume: open.last.end });
    }

    /// Blanks beyond ASCII, and invisible characters at the edge of a word, reach the grammar as plain blanks.
    fn find_odd_blanks(&mut self, body: usize) {
        let text = self.block.get(body..).unwrap_or("");
        if text.is_ascii() && !text.bytes().any(|b| b == 0x0b || b == 0x0c) {
            return;
        }
        let mut before = None;
        let mut chars = text.char_indices().peekable();
        while let Some((at, c)) = chars.next() {
            let range = body + at..body + at + c.len_utf8();
            if is_blank(c) && c != ' ' && c != '\t' {
                self.erase.push(range);
            } else if is_invisible(c) {
                let after = chars.peek().map(|(_, next)| *next);
                if !inside_word(before) || !inside_word(after) {
                    self.erase.push(range);
                    continue;
                }
            }
            before = Some(c);
        }
    }
}

fn inside_word(c: Option<char>) -> bool {
    c.is_some_and(|c| c.is_alphabetic() || is_invisible(c) || (!c.is_ascii() && !is_blank(c)))
}

fn erased<'a>(original: &'a str, base: usize, ranges: &[Range<usize>]) -> Cow<'a, str> {
    let mut bytes = original.as_bytes().to_vec();
    for range in ranges {
        if let Some(part) = bytes.get_mut(range.start.saturating_sub(base)..range.end.saturating_sub(base)) {
            part.fill(b' ');
        }
    }
    String::from_utf8(bytes).map_or(Cow::Borrowed(original), Cow::Owned)
}
