//! From byte offsets to lines and columns and back, in the three encodings editors count in.

/// What a column counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum Encoding {
    /// Bytes.
    Utf8,
    /// UTF-16 code units.
    #[default]
    Utf16,
    /// Unicode scalar values.
    Utf32,
}

/// A place in a text; both count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub struct Position {
    /// The line.
    pub line: u32,
    /// The column, in units of an [`Encoding`].
    pub column: u32,
}

/// The line table of a text. LF, CR LF and a lone CR end a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineIndex {
    starts: Vec<usize>,
    length: usize,
}

impl LineIndex {
    /// Builds the table in one pass.
    pub fn new(text: &str) -> Self {
        let bytes = text.as_bytes();
        let mut starts = vec![0];
        for (at, byte) in bytes.iter().enumerate() {
            match byte {
                b'\n' => starts.push(at + 1),
                b'\r' if bytes.get(at + 1) != Some(&b'\n') => starts.push(at + 1),
                _ => {}
            }
        }
        Self { starts, length: bytes.len() }
    }

    /// How many lines there are; an empty text has one.
    pub fn line_count(&self) -> usize {
        self.starts.len()
    }

    /// The line an offset stands in, from 0; offsets behind the end stand in the last.
    pub fn line_of(&self, offset: usize) -> u32 {
        let line = self.starts.partition_point(|start| *start <= offset).saturating_sub(1);
        u32::try_from(line).unwrap_or(u32::MAX)
    }

    /// The bytes of a line with its line break; empty behind the last line.
    pub fn line_range(&self, line: u32) -> std::ops::Range<usize> {
        let start = self.starts.get(line as usize).copied().unwrap_or(self.length);
        let end = self.starts.get(line as usize + 1).copied().unwrap_or(self.length);
        start..end
    }

    /// The position of an offset. One inside a character counts from its start, one behind the end as the end.
    pub fn position(&self, text: &str, offset: usize, encoding: Encoding) -> Position {
        let mut offset = offset.min(self.length).min(text.len());
        while !text.is_char_boundary(offset) {
            offset -= 1;
        }
        let line = self.line_of(offset);
        let start = self.line_range(line).start;
        let before = text.get(start..offset).unwrap_or("");
        Position { line, column: width(before, encoding) }
    }

    /// The offset of a position. A column behind the line's text is its end (before the break), one inside a character
    /// its start, a line behind the last the end of the text.
    pub fn offset(&self, text: &str, position: Position, encoding: Encoding) -> usize {
        let range = self.line_range(position.line);
        let line = text.get(range.clone()).unwrap_or("").trim_end_matches(['\n', '\r']);
        let wanted = position.column;
        if encoding == Encoding::Utf8 || line.is_ascii() {
            let mut at = line.len().min(wanted as usize);
            while !line.is_char_boundary(at) {
                at -= 1;
            }
            return range.start + at;
        }
        let mut column = 0_u32;
        for (at, c) in line.char_indices() {
            let next = column.saturating_add(width_of(c, encoding));
            if next > wanted {
                return range.start + at;
            }
            column = next;
        }
        range.start + line.len()
    }
}

fn width(text: &str, encoding: Encoding) -> u32 {
    let units = match encoding {
        Encoding::Utf8 => text.len(),
        _ if text.is_ascii() => text.len(),
        Encoding::Utf16 => text.chars().map(char::len_utf16).sum(),
        Encoding::Utf32 => text.chars().count(),
    };
    u32::try_from(units).unwrap_or(u32::MAX)
}

fn width_of(c: char, encoding: Encoding) -> u32 {
    match encoding {
        Encoding::Utf8 => c.len_utf8() as u32,
        Encoding::Utf16 => c.len_utf16() as u32,
        Encoding::Utf32 => 1,
    }
}
