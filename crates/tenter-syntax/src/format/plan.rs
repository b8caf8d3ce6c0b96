//! Which line becomes which: the whole file, physical line by physical line.

use crate::format::LineEdit;
use crate::format::columns::{leading, shown, width};
use crate::format::pieces::{Piece, gap, pieces};
use crate::physical::{Holds, PhysicalLine, find_comment, physical_lines};
use crate::tree::{Block, BlockKind, Document, Line};

/// Indentation of a body line.
const BODY: usize = 2;
/// A continuation stands at least here.
const CONTINUED: usize = BODY + 4;

/// The edits that tidy `text`; blocks whose index is in `keep` stay as they are.
pub(super) fn edits(text: &str, document: &Document, keep: &[usize]) -> Vec<LineEdit> {
    let mut writer = Writer {
        text,
        line_end: line_end(text),
        last: text.trim_end().len(),
        edits: Vec::new(),
        blank_before: true,
        above: Above::Start,
    };
    let mut index = 0;
    for placed in &document.blocks {
        let block = &placed.block;
        let hollow = block.text.trim_matches(|c: char| c.is_whitespace() || c == '\u{feff}').is_empty();
        writer.block(block, placed.start, keep.contains(&index) && !hollow);
        if !hollow {
            index += 1;
        }
    }
    writer.finish()
}

/// The line end most lines have; LF when they are even.
fn line_end(text: &str) -> &'static str {
    let windows = text.matches("\r\n").count();
    if windows * 2 > text.matches('\n').count() { "\r\n" } else { "\n" }
}

/// What was written last.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Above {
    Start,
    /// A block header that has no body yet, of a kind that may stand line under line.
    Short,
    Other,
    /// A comment at the left edge.
    Comment,
}

struct Writer<'a> {
    text: &'a str,
    line_end: &'static str,
    /// Offset of the last character that is no blank.
    last: usize,
    edits: Vec<LineEdit>,
    /// Whether the last line written is blank, or none is written yet.
    blank_before: bool,
    above: Above,
}

impl Writer<'_> {
    fn block(&mut self, block: &Block, start: usize, keep: bool) {
        let layout = Layout::of(block);
        let mut lines = block.lines.iter().peekable();
        let physical: Vec<PhysicalLine> = physical_lines(&block.text, 0).collect();
        for here in &physical {
            let range = start + here.start..start + here.next;
            match here.holds {
                Holds::Nothing => self.blank(range),
                Holds::Comment if here.indent == 0 => {
                    let heads_a_block = self.above != Above::Comment && self.comment_heads_a_block(start + here.next);
                    self.space_before(&range, heads_a_block);
                    self.put(range, trimmed(block, here.text, here.end), Above::Comment);
                }
                _ => {
                    let header = !block.keyword.is_empty()
                        && here.start <= block.keyword.start as usize
                        && (block.keyword.start as usize) < here.end;
                    if header {
                        let short = matches!(block.kind, BlockKind::Use | BlockKind::Edition);
                        let together = short && self.above == Above::Short;
                        self.space_before(&range, !together);
                        let written = if keep { kept(block, here) } else { header_text(block) };
                        self.put(range, written, if short { Above::Short } else { Above::Other });
                        continue;
                    }
                    while lines.next_if(|line| last_byte(line) <= here.text).is_some() {}
                    let line = lines.peek().copied();
                    let written = if keep { kept(block, here) } else { layout.write(block, line, here) };
                    self.put(range, written, Above::Other);
                }
            }
        }
    }

    /// Whether only comments at the left edge stand between an offset and the next block's header.
    fn comment_heads_a_block(&self, from: usize) -> bool {
        for line in physical_lines(self.text, from) {
            match line.holds {
                Holds::Comment if line.indent == 0 => {}
                Holds::Text if line.indent == 0 => {
                    let word = self.text.get(line.text..line.end).and_then(|words| words.split_whitespace().next());
                    return word.is_some_and(|word| crate::kinds::lookup_kind(word).is_some());
                }
                _ => return false,
            }
        }
        false
    }

    /// One blank line, unless one stands there, or this is the first line, or a comment above belongs to it.
    fn space_before(&mut self, range: &std::ops::Range<usize>, wanted: bool) {
        if wanted && !self.blank_before && self.above != Above::Comment && self.above != Above::Start {
            self.edits.push((range.start..range.start, self.line_end.to_owned()));
            self.blank_before = true;
        }
    }

    /// A blank line is kept if none stands above it and anything stands below.
    fn blank(&mut self, range: std::ops::Range<usize>) {
        if self.blank_before || range.end > self.last {
            self.edits.push((range, String::new()));
        } else {
            self.put(range, String::new(), Above::Other);
            self.blank_before = true;
        }
    }

    fn put(&mut self, range: std::ops::Range<usize>, mut line: String, above: Above) {
        self.blank_before = false;
        self.above = above;
        line.push_str(self.line_end);
        if self.text.get(range.clone()) != Some(line.as_str()) {
            self.edits.push((range, line));
        }
    }

    /// An insertion in front of a line that changes too becomes one edit with it.
    fn finish(self) -> Vec<LineEdit> {
        let mut merged: Vec<LineEdit> = Vec::with_capacity(self.edits.len());
        for (range, with) in self.edits {
            match merged.last_mut() {
                Some((last, text)) if last.end == range.start && last.start == last.end => {
                    last.end = range.end;
                    text.push_str(&with);
                }
                _ => merged.push((range, with)),
            }
        }
        merged
    }
}

fn last_byte(line: &Line) -> usize {
    let ends = [line.span.end, line.comment.map_or(0, |comment| comment.end)];
    ends.into_iter().max().unwrap_or(0) as usize
}

fn trimmed(block: &Block, from: usize, to: usize) -> String {
    block.text.get(from..to).unwrap_or("").trim_end().to_owned()
}

/// A physical line as it is, without trailing blanks.
fn kept(block: &Block, here: &PhysicalLine) -> String {
    trimmed(block, here.start, here.end).trim_start_matches('\u{feff}').to_owned()
}

fn header_text(block: &Block) -> String {
    let mut line = block.slice(block.keyword).to_owned();
    let name = block.slice(block.name);
    if !name.is_empty() {
        line.push(' ');
        line.push_str(name);
    }
    if let Some(comment) = block.comment {
        line.push_str("  ");
        line.push_str(block.slice(comment));
    }
    line
}

/// How the lines of a block are laid out.
struct Layout {
    kind: BlockKind,
    /// Width of the column of heads and amounts.
    column: usize,
}

impl Layout {
    fn of(block: &Block) -> Self {
        let leads = block.lines.iter().filter(|line| line.indent > 0).filter_map(|line| {
            let pieces = pieces(block, line);
            let known = line.head.as_ref().is_some_and(|head| head.known);
            let count = leading(block.kind, known, &pieces)?;
            let more = pieces.len() > count || !line.rest.is_empty();
            more.then(|| shown(&joined(pieces.get(..count).unwrap_or(&[]))))
        });
        Self { kind: block.kind, column: width(block.kind, leads) }
    }

    fn write(&self, block: &Block, line: Option<&Line>, here: &PhysicalLine) -> String {
        if matches!(self.kind, BlockKind::Loose | BlockKind::Unknown) {
            return kept(block, here);
        }
        let Some(line) = line.filter(|line| here.text >= line.span.start as usize || here.holds == Holds::Comment)
        else {
            return at_column(BODY, &trimmed(block, here.text, here.end));
        };
        let first = here.text <= line.span.start as usize;
        let inside = !first && here.text < line.span.end as usize;
        let indent = match (inside, here.indent) {
            (true, _) => CONTINUED.max(BODY + self.column + 1),
            (false, 0) => 0,
            (false, _) => BODY,
        };
        if here.holds == Holds::Comment {
            return at_column(indent, &trimmed(block, here.text, here.end));
        }
        let written = if first { self.first(block, line, here) } else { rest_of(block, line, here) };
        at_column(indent, &written)
    }

    /// The first physical line of a logical one.
    fn first(&self, block: &Block, line: &Line, here: &PhysicalLine) -> String {
        if hidden(block, here) || line.unread.is_some() {
            return trimmed(block, here.text, here.end);
        }
        let all = pieces(block, line);
        let pieces: Vec<Piece> = all.into_iter().filter(|piece| (piece.end as usize) <= here.end).collect();
        let known = line.head.as_ref().is_some_and(|head| head.known);
        let prose = line.items.is_empty() && line.clauses.is_empty();
        let count = leading(self.kind, known, &pieces).unwrap_or(usize::from(prose));
        let lead = joined(pieces.get(..count).unwrap_or(&[]));
        let (text, comment) = parts(block, here);
        let mut rest = if prose {
            let from = (line.rest.start as usize).clamp(here.text, text);
            block.text.get(from..text).unwrap_or("").trim().to_owned()
        } else {
            joined(pieces.get(count..).unwrap_or(&[]))
        };
        if count > 0 && !rest.is_empty() {
            let touching = !prose
                && matches!((pieces.get(count - 1), pieces.get(count)), (Some(a), Some(b)) if gap(a, b).is_empty());
            let pad = if touching { 0 } else { self.column.saturating_sub(shown(&lead)) + 1 };
            rest.insert_str(0, &" ".repeat(pad));
        }
        with_comment(lead + &rest, comment)
    }
}

/// A continuing physical line.
fn rest_of(block: &Block, line: &Line, here: &PhysicalLine) -> String {
    let prose = line.items.is_empty() && line.clauses.is_empty();
    if prose || hidden(block, here) || line.unread.is_some() {
        return trimmed(block, here.text, here.end);
    }
    let (_, comment) = parts(block, here);
    let pieces: Vec<Piece> = pieces(block, line)
        .into_iter()
        .filter(|piece| (piece.start as usize) >= here.text && (piece.end as usize) <= here.end)
        .collect();
    with_comment(joined(&pieces), comment)
}

/// Where the text of a physical line ends, and the comment behind it.
fn parts<'a>(block: &'a Block, here: &PhysicalLine) -> (usize, Option<&'a str>) {
    let whole = block.text.get(here.text..here.end).unwrap_or("");
    match find_comment(whole) {
        Some(at) => (here.text + at, whole.get(at..).map(str::trim_end)),
        None => (here.end, None),
    }
}

/// Characters nobody sees are left where they are.
fn hidden(block: &Block, here: &PhysicalLine) -> bool {
    let text = block.text.get(here.text..here.end).unwrap_or("");
    text.chars().any(|c| crate::chars::is_invisible(c) || crate::chars::is_stray_control(c))
}

fn joined(pieces: &[Piece]) -> String {
    let mut out = String::new();
    let mut before: Option<&Piece> = None;
    for piece in pieces {
        if let Some(before) = before {
            out.push_str(gap(before, piece));
        }
        out.push_str(&piece.text);
        before = Some(piece);
    }
    out
}

fn with_comment(mut text: String, comment: Option<&str>) -> String {
    if let Some(comment) = comment {
        text.push_str("  ");
        text.push_str(comment);
    }
    text
}

fn at_column(indent: usize, text: &str) -> String {
    format!("{}{text}", " ".repeat(indent))
}
