//! One file as read: its text, its lines, its document.

#![allow(clippy::disallowed_methods, reason = "files are read here")]

use std::io::Read;
use std::path::Path;
use std::sync::Arc;

use tenter_account::Source;
use tenter_syntax::{Document, Encoding, LineIndex, Oddity, OddityKind, Span};

/// A file that was read.
#[derive(Debug)]
pub struct SourceFile {
    /// The name to show.
    pub name: String,
    /// Its text; bytes that are no UTF-8 replaced by `�`.
    pub text: String,
    /// Its lines.
    pub lines: LineIndex,
    /// What the text says.
    pub document: Arc<Document>,
    /// Where the first byte stands that is no UTF-8, if there is one.
    pub not_utf8: Option<BadByte>,
}

/// A byte that is no UTF-8.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadByte {
    /// Bytes before it.
    pub offset: usize,
    /// Its value.
    pub value: u8,
}

/// A place for people: both counted from 1, columns in characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Spot {
    /// The line.
    pub line: u32,
    /// The column.
    pub column: u32,
}

impl SourceFile {
    /// Takes over the bytes of a file.
    pub fn from_bytes(name: String, bytes: Vec<u8>) -> Self {
        let (text, not_utf8) = match String::from_utf8(bytes) {
            Ok(text) => (text, None),
            Err(error) => {
                let offset = error.utf8_error().valid_up_to();
                let value = error.as_bytes().get(offset).copied().unwrap_or_default();
                (String::from_utf8_lossy(error.as_bytes()).into_owned(), Some(BadByte { offset, value }))
            }
        };
        let lines = LineIndex::new(&text);
        let mut document = Document::parse(&text);
        if let Some(bad) = not_utf8 {
            mark_not_utf8(&mut document, bad.offset);
        }
        Self { name, text, lines, document: Arc::new(document), not_utf8 }
    }

    /// Reads a file from the disk.
    ///
    /// # Errors
    /// Whatever the disk says.
    pub fn read(path: &Path, name: String) -> std::io::Result<Self> {
        Ok(Self::from_bytes(name, std::fs::read(path)?))
    }

    /// Reads standard input to its end.
    ///
    /// # Errors
    /// Whatever the stream says.
    pub fn standard_input(name: String) -> std::io::Result<Self> {
        let mut bytes = Vec::new();
        std::io::stdin().lock().read_to_end(&mut bytes)?;
        Ok(Self::from_bytes(name, bytes))
    }

    /// The line and column of a byte.
    pub fn spot(&self, offset: usize) -> Spot {
        let position = self.lines.position(&self.text, offset, Encoding::Utf32);
        Spot { line: position.line.saturating_add(1), column: position.column.saturating_add(1) }
    }

    /// What to say about bytes that are no text, if there are any.
    pub fn encoding_trouble(&self) -> Option<String> {
        self.not_utf8.map(|bad| {
            // Up to the first bad byte nothing was replaced: offsets in the text and in the file agree.
            let spot = self.spot(bad.offset);
            format!(
                "line {}, column {}: the byte 0x{:02x} (the {}. of the file) is no UTF-8 text; \
                 save the file as UTF-8. Read with � in its place.",
                spot.line,
                spot.column,
                bad.value,
                bad.offset + 1
            )
        })
    }
}

impl Source for SourceFile {
    fn name(&self) -> &str {
        &self.name
    }

    fn line(&self, block: usize, byte: u32) -> Option<u32> {
        let start = self.document.blocks.get(block)?.start;
        Some(self.spot(start + byte as usize).line)
    }
}

/// Notes in the document where text was lost, for the rule book to tell. The document cannot see it from the text.
fn mark_not_utf8(document: &mut Document, offset: usize) {
    let Some(placed) = document.block_at(offset).and_then(|index| document.blocks.get_mut(index)) else {
        return;
    };
    let start = u32::try_from(offset - placed.start).unwrap_or(u32::MAX);
    let end = start.saturating_add(char::REPLACEMENT_CHARACTER.len_utf8() as u32);
    let mut block = (*placed.block).clone();
    block.oddities.push(Oddity { kind: OddityKind::NotUtf8, span: Span::new(start, end) });
    block.oddities.sort_by_key(|oddity| (oddity.span, oddity.kind));
    placed.block = Arc::new(block);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_bad_byte_is_named() {
        let file = SourceFile::from_bytes("a.dye".into(), b"recipe A\n  by caf\xe9 \xff\n".to_vec());
        assert_eq!(file.not_utf8, Some(BadByte { offset: 17, value: 0xe9 }));
        let said = file.encoding_trouble().unwrap_or_default();
        assert!(said.starts_with("line 2, column 9: the byte 0xe9 (the 18. of the file)"), "{said}");
    }

    #[test]
    fn columns_count_characters() {
        let file = SourceFile::from_bytes("a.dye".into(), "# é小👩 x\n".as_bytes().to_vec());
        let at = file.text.find('x').unwrap();
        assert_eq!(file.spot(at), Spot { line: 1, column: 7 });
    }
}
