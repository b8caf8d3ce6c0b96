//! Physical lines: where they begin and end, how far they are indented, and where a comment opens.

use crate::chars::{is_blank, is_word_char};

/// One physical line; all fields are byte offsets into the text it was taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct PhysicalLine {
    /// First byte.
    pub start: usize,
    /// First byte that is no indentation (a byte order mark counts as none).
    pub text: usize,
    /// One past the last byte before the line break.
    pub end: usize,
    /// First byte of the next line.
    pub next: usize,
    /// Width of the indentation in columns.
    pub indent: u32,
    /// What it holds.
    pub holds: Holds,
}

/// What a physical line holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Holds {
    /// Nothing but blanks.
    Nothing,
    /// Only a comment.
    Comment,
    /// Text, perhaps with a comment behind.
    Text,
}

/// The physical lines of a text from an offset on; LF, CR LF and a lone CR end a line.
pub(crate) fn physical_lines(text: &str, from: usize) -> impl Iterator<Item = PhysicalLine> + '_ {
    let mut at = from;
    std::iter::from_fn(move || {
        if at >= text.len() {
            return None;
        }
        let line = physical_line(text, at);
        at = line.next;
        Some(line)
    })
}

/// The physical line that starts at `start`.
pub(crate) fn physical_line(text: &str, start: usize) -> PhysicalLine {
    let bytes = text.as_bytes();
    let rest = bytes.get(start..).unwrap_or(&[]);
    let length = rest.iter().position(|b| *b == b'\n' || *b == b'\r').unwrap_or(rest.len());
    let end = start + length;
    let next = match (bytes.get(end), bytes.get(end + 1)) {
        (Some(b'\r'), Some(b'\n')) => end + 2,
        (Some(_), _) => end + 1,
        (None, _) => end,
    };
    let line = text.get(start..end).unwrap_or("");
    let mut indent = 0_u32;
    let mut text_at = end;
    for (offset, c) in line.char_indices() {
        match c {
            '\t' => indent = indent.saturating_add(4 - indent % 4),
            '\u{feff}' if offset == 0 => {}
            c if is_blank(c) => indent = indent.saturating_add(1),
            _ => {
                text_at = start + offset;
                break;
            }
        }
    }
    let holds = if text_at == end {
        Holds::Nothing
    } else if opens_comment(text.get(text_at..end).unwrap_or("")) {
        Holds::Comment
    } else {
        Holds::Text
    };
    PhysicalLine { start, text: text_at, end, next, indent, holds }
}

/// Whether a text that begins with `#` there opens a comment: `#` alone or before a blank.
fn opens_comment(text: &str) -> bool {
    let mut chars = text.chars();
    chars.next() == Some('#') && chars.next().is_none_or(is_blank)
}

/// Where the comment of a physical line opens, as an offset into `line`; `#` inside closed quotes opens none.
pub(crate) fn find_comment(line: &str) -> Option<usize> {
    let mut hashes = line.match_indices('#').map(|(at, _)| at).peekable();
    hashes.peek()?;
    let mut before = None;
    let mut quote_closes_at = 0;
    let mut quotes_open = true;
    for (at, c) in line.char_indices() {
        if at >= quote_closes_at {
            if quotes_open && is_quote(c) {
                let inside = at + c.len_utf8();
                match line.get(inside..).and_then(|rest| rest.find(is_quote)) {
                    Some(length) => quote_closes_at = inside + length + 1,
                    // No quote closes from here on, so none needs looking for again.
                    None => quotes_open = false,
                }
            } else if c == '#' && !before.is_some_and(is_word_char) && line.get(at..).is_some_and(opens_comment) {
                return Some(at);
            }
        }
        before = Some(c);
    }
    None
}

/// Whether a character opens or closes a quoted name.
pub(crate) fn is_quote(c: char) -> bool {
    matches!(c, '"' | '“' | '”' | '„')
}

/// The end of `text[start..end]` without trailing blanks.
pub(crate) fn trim_end(text: &str, start: usize, end: usize) -> usize {
    text.get(start..end).map_or(end, |part| start + part.trim_end().len())
}
