//! Where in the text something is being typed.

use tenter_syntax::{Block, BlockKind, Line, Span, kind_row, lookup_kind, parse_block};

use crate::file::File;
use crate::text::Range;

/// Where the caret stands.
#[derive(Clone, Debug)]
pub enum Place {
    /// In a comment: nothing is proposed.
    Comment,
    /// In the first word at the left edge.
    Edge {
        /// The word as far as it is typed.
        typed: Range,
    },
    /// Behind the word that opens a block.
    Header {
        /// The block's kind.
        kind: BlockKind,
        /// What is typed behind the word.
        typed: Range,
    },
    /// On a line of a body.
    Body(Box<Body>),
}

/// A line of a body up to the caret, read by itself.
#[derive(Clone, Debug)]
pub struct Body {
    /// Kind of the block it stands in.
    pub kind: BlockKind,
    /// Index of that block in the file.
    pub position: usize,
    /// A block of this one line, cut at the caret.
    read: Block,
    /// The line of [`Body::read`]; none when nothing is typed.
    line: Option<Line>,
    /// Where that line's text begins in [`Body::read`] and in the file, and whether it is one piece there.
    from: (usize, usize),
    /// What stands behind the caret on the line.
    pub after: String,
}

impl Place {
    /// Finds the place of an offset.
    pub fn at(file: &File, offset: usize) -> Self {
        let row = file.line_range(offset);
        let typed = file.slice(row.start..offset);
        if comment(typed) {
            return Self::Comment;
        }
        if !typed.starts_with(char::is_whitespace) {
            let word = typed.split(char::is_whitespace).next().unwrap_or("");
            let at_edge = word.len() == typed.len();
            if at_edge {
                return Self::Edge { typed: row.start..offset };
            }
            if let Some(kind) = lookup_kind(word) {
                let rest = typed.get(word.len()..).unwrap_or("");
                let start = row.start + word.len() + (rest.len() - rest.trim_start().len());
                return Self::Header { kind: kind.kind, typed: start.min(offset)..offset };
            }
        }
        Body::at(file, offset, row).map_or(Self::Edge { typed: offset..offset }, |body| Self::Body(Box::new(body)))
    }
}

fn comment(typed: &str) -> bool {
    typed.trim_start().starts_with("# ") || typed.contains(" # ") || typed.trim() == "#"
}

impl Body {
    fn at(file: &File, offset: usize, row: Range) -> Option<Self> {
        let position = file.document.block_at(offset)?;
        let placed = file.block(position)?;
        let kind = placed.block.kind;
        let row_name = kind_row(kind)?.name;
        let at = u32::try_from(offset - placed.start).ok()?;
        // The start of the line, which may be some rows up when it is continued.
        let continued = placed.block.lines.iter().find(|line| {
            !line.span.is_empty()
                && line.span.start <= at
                && offset <= file.line_range(placed.start + line.span.end as usize).end
        });
        let start = continued.map_or(row.start, |line| (placed.start + line.span.start as usize).min(offset));
        let typed = file.slice(start..offset);
        let blanks = typed.len() - typed.trim_start().len();
        let start = start + blanks;
        let typed = file.slice(start..offset);
        let head = format!("{row_name} x\n  ");
        // A break within a continued line reads as a blank of the same width.
        let flat: String = typed.chars().map(|c| if matches!(c, '\n' | '\r') { ' ' } else { c }).collect();
        let read = parse_block(&format!("{head}{flat}"));
        let line = read.lines.iter().find(|line| !line.span.is_empty()).cloned();
        let after = file.slice(offset..row.end.max(offset)).to_owned();
        Some(Self { kind, position, read, line, from: (head.len(), start), after })
    }

    /// The line, as far as it is typed.
    pub fn line(&self) -> Option<&Line> {
        self.line.as_ref()
    }

    /// The text of a span of the line.
    pub fn slice(&self, span: Span) -> &str {
        self.read.slice(span)
    }

    /// All of the line that is typed.
    pub fn typed(&self) -> &str {
        self.read.text.get(self.from.0..).unwrap_or("")
    }

    /// Text from a place of the line to the caret.
    pub fn since(&self, at: usize) -> &str {
        self.read.text.get(at..).unwrap_or("")
    }

    /// Offset in the file of a place of the line.
    pub fn offset(&self, at: usize) -> usize {
        self.from.1 + at.saturating_sub(self.from.0)
    }

    /// Where the line's text begins, as [`Body::since`] counts.
    pub fn start(&self) -> usize {
        self.from.0
    }
}
