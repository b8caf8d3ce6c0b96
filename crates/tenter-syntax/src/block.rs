//! One block: header and body.

use std::sync::Arc;

use crate::chars::{is_blank, is_invisible, is_stray_control, is_variation_selector, starts_number};
use crate::kinds::kind_row;
use crate::lower::lower;
use crate::physical::{Holds, PhysicalLine, find_comment, physical_lines, trim_end};
use crate::prepare::{offset, prepare};
use crate::split::opens_first;
use crate::tree::{Block, BlockKind, Connector, Line, Oddity, OddityKind, Span};

/// Reads one block. What it says depends on nothing but this text.
pub fn parse_block(text: &str) -> Block {
    let mut oddities = Vec::new();
    notice_characters(text, &mut oddities);
    let header = header_line(text);
    let body = header.as_ref().map_or(0, |header| header.line.next);
    let kind = header.as_ref().map_or(BlockKind::Loose, |header| header.kind);
    let (keyword, name, comment) =
        header.map_or_else(Default::default, |header| read_header(text, &header, &mut oddities));
    let prepared = prepare(text, body);
    let lines = lower(text, body, &prepared, kind, &mut oddities);
    oddities.sort_by_key(|oddity| (oddity.span, oddity.kind));
    Block { text: Arc::from(text), kind, keyword, name, comment, lines, oddities }
}

struct Header {
    line: PhysicalLine,
    kind: BlockKind,
    keyword: usize,
}

/// The header, if the first line with text is one.
fn header_line(text: &str) -> Option<Header> {
    let line = physical_lines(text, 0).next()?;
    if line.holds != Holds::Text || line.indent > 0 {
        return None;
    }
    let (kind, keyword) = opens_first(text, line)?;
    Some(Header { line, kind, keyword })
}

fn read_header(text: &str, header: &Header, oddities: &mut Vec<Oddity>) -> (Span, Span, Option<Span>) {
    let line = header.line;
    let keyword_end = line.text + header.keyword;
    let whole = text.get(line.text..line.end).unwrap_or("");
    let comment_at = find_comment(whole).map_or(line.end, |at| line.text + at);
    let comment =
        (comment_at < line.end).then(|| Span::new(offset(comment_at), offset(trim_end(text, comment_at, line.end))));
    let after = text.get(keyword_end..comment_at).unwrap_or("");
    let start = keyword_end + (after.len() - after.trim_start().len());
    let end = trim_end(text, start, comment_at.max(start));
    let name = Span::new(offset(start), offset(end));
    notice_header(text, header.kind, name, oddities);
    (Span::new(offset(line.text), offset(keyword_end)), name, comment)
}

fn notice_header(text: &str, kind: BlockKind, name: Span, oddities: &mut Vec<Oddity>) {
    let words = name.of(text);
    if words.is_empty() && kind_row(kind).is_some_and(|row| row.takes_name) {
        oddities.push(Oddity { kind: OddityKind::MissingName, span: name });
    }
    if matches!(kind, BlockKind::Dye | BlockKind::Mix) && reads_as_step(words) {
        oddities.push(Oddity { kind: OddityKind::HeaderReadsAsStep, span: name });
    }
    if let Some(at) = hash_word(words) {
        let span = Span::new(name.start + offset(at), name.end);
        oddities.push(Oddity { kind: OddityKind::CommentWithoutBlank, span });
    }
}

/// `dye tees in dye bath for 1 h`: goods, then a liquor or a number behind a connecting word.
fn reads_as_step(name: &str) -> bool {
    let words: Vec<&str> = name.split(is_blank).filter(|word| !word.is_empty()).take(64).collect();
    words.windows(2).skip(1).any(|pair| match pair {
        [word, next] => Connector::from_word(word).is_some_and(|connector| {
            next.chars().next().is_some_and(starts_number) || matches!(connector, Connector::In | Connector::Into)
        }),
        _ => false,
    })
}

/// Where a word that begins with `#` but is neither comment nor number stands.
fn hash_word(name: &str) -> Option<usize> {
    let mut before = ' ';
    for (at, c) in name.char_indices() {
        if c == '#' && is_blank(before) {
            let word = name.get(at + 1..).and_then(|rest| rest.split(is_blank).next()).unwrap_or("");
            let number = (1..=3).contains(&word.len()) && word.bytes().all(|b| b.is_ascii_digit());
            if !number {
                return Some(at);
            }
        }
        before = c;
    }
    None
}

/// Characters a reader cannot see. Those in a row are told once.
fn notice_characters(text: &str, oddities: &mut Vec<Oddity>) {
    let plain = |b: u8| matches!(b, b'\t' | b'\n' | b'\r' | b' '..=b'~');
    if text.bytes().all(plain) {
        return;
    }
    let mut last: Option<Oddity> = None;
    for (at, c) in text.char_indices() {
        let kind = if at == 0 && c == '\u{feff}' || is_variation_selector(c) {
            None
        } else if is_invisible(c) {
            Some(OddityKind::InvisibleCharacter)
        } else if is_stray_control(c) {
            Some(OddityKind::ControlCharacter)
        } else {
            None
        };
        let span = Span::new(offset(at), offset(at + c.len_utf8()));
        match (&mut last, kind) {
            (Some(run), Some(kind)) if run.kind == kind => run.span.end = span.end,
            (_, kind) => {
                oddities.extend(last.take());
                last = kind.map(|kind| Oddity { kind, span });
            }
        }
    }
    oddities.extend(last);
}

impl Block {
    /// The text after a line's head as one run of words: comments left out, breaks and blanks in a row made one.
    pub fn prose(&self, line: &Line) -> String {
        let mut words = Vec::new();
        let mut from = line.rest.start;
        let ends = line.inner_comments.iter().map(|comment| (comment.start, comment.end));
        for (start, next) in ends.chain(std::iter::once((line.rest.end, line.rest.end))) {
            words.extend(self.slice(Span::new(from, start)).split_whitespace());
            from = next;
        }
        words.join(" ")
    }
}
