//! One file: its text, read, with its line table.

use std::sync::Arc;

use tenter_syntax::{Document, LineIndex, PlacedBlock, Span};

use crate::text::{Location, Range};

/// A file and what it reads as. Never changes; an edit makes a new one that shares the blocks left alone.
#[derive(Clone, Debug)]
pub struct File {
    /// Path inside the collection, with `/`.
    pub path: Arc<str>,
    /// The text.
    pub text: Arc<str>,
    /// The text, read.
    pub document: Arc<Document>,
    /// Where its lines begin.
    pub lines: Arc<LineIndex>,
}

impl File {
    /// Reads a file.
    pub fn new(path: Arc<str>, text: impl Into<Arc<str>>) -> Self {
        let text = text.into();
        let document = Arc::new(Document::parse(&text));
        let lines = Arc::new(LineIndex::new(&text));
        Self { path, text, document, lines }
    }

    /// The file with another text; blocks whose text stayed are kept.
    pub fn with_text(&self, text: impl Into<Arc<str>>) -> Self {
        let text = text.into();
        let document = Arc::new(self.document.reparse(&text));
        let lines = Arc::new(LineIndex::new(&text));
        Self { path: Arc::clone(&self.path), text, document, lines }
    }

    /// The block at an index.
    pub fn block(&self, position: usize) -> Option<&PlacedBlock> {
        self.document.blocks.get(position)
    }

    /// A span of a block as bytes of the file.
    pub fn range(&self, position: usize, span: Span) -> Range {
        let start = self.block(position).map_or(0, |placed| placed.start);
        start + span.start as usize..start + span.end as usize
    }

    /// A range as a place of the collection.
    pub fn at(&self, range: Range) -> Location {
        Location { path: Arc::clone(&self.path), start: range.start, end: range.end }
    }

    /// The number of the line an offset stands on, from 1.
    pub fn line_number(&self, offset: usize) -> u32 {
        self.lines.line_of(offset) + 1
    }

    /// The bytes of the line an offset stands on, its break left out.
    pub fn line_range(&self, offset: usize) -> Range {
        let range = self.lines.line_range(self.lines.line_of(offset));
        let text = self.text.get(range.clone()).unwrap_or("");
        range.start..range.start + text.trim_end_matches(['\n', '\r']).len()
    }

    /// The text of a range; empty when it does not fit.
    pub fn slice(&self, range: Range) -> &str {
        self.text.get(range).unwrap_or("")
    }

    /// The offset itself, or the start of the character it lies in, or the end of the text.
    pub fn clamp(&self, offset: usize) -> usize {
        let mut offset = offset.min(self.text.len());
        while !self.text.is_char_boundary(offset) {
            offset -= 1;
        }
        offset
    }
}
