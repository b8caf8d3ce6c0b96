//! Between bytes of a text and the units a browser counts in.

use tenter_features::{File, Range};
use tenter_syntax::{Encoding, Position};

/// A text with the number of UTF-16 units before each of its lines.
pub struct Offsets<'a> {
    file: &'a File,
    before: Vec<usize>,
}

impl<'a> Offsets<'a> {
    /// Counts a text.
    pub fn new(file: &'a File) -> Self {
        let mut units = 0;
        let before = (0..u32::try_from(file.lines.line_count()).unwrap_or(u32::MAX))
            .map(|line| {
                let start = units;
                units += file.slice(file.lines.line_range(line)).chars().map(char::len_utf16).sum::<usize>();
                start
            })
            .collect();
        Self { file, before }
    }

    /// Units before a byte.
    pub fn unit(&self, byte: usize) -> usize {
        let byte = self.file.clamp(byte);
        let line = self.file.lines.line_of(byte);
        let start = self.file.lines.line_range(line).start;
        let inside: usize = self.file.slice(start..byte).chars().map(char::len_utf16).sum();
        self.before.get(line as usize).copied().unwrap_or(0) + inside
    }

    /// Units before the ends of a stretch of bytes.
    pub fn units(&self, range: &Range) -> (usize, usize) {
        (self.unit(range.start), self.unit(range.end))
    }

    /// Bytes before a unit; the end of the text where it has fewer.
    pub fn byte(&self, unit: usize) -> usize {
        let line = self.before.partition_point(|before| *before <= unit).saturating_sub(1);
        let Some(before) = self.before.get(line) else { return 0 };
        let range = self.file.lines.line_range(u32::try_from(line).unwrap_or(u32::MAX));
        let mut left = unit - before;
        let mut byte = range.start;
        for c in self.file.slice(range).chars() {
            if left < c.len_utf16() {
                break;
            }
            left -= c.len_utf16();
            byte += c.len_utf8();
        }
        byte
    }

    /// Line and column of a byte, both from 1, the column in characters.
    pub fn spot(&self, byte: usize) -> (u32, u32) {
        let Position { line, column } = self.file.lines.position(&self.file.text, byte, Encoding::Utf32);
        (line.saturating_add(1), column.saturating_add(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_on_every_character() {
        let file = File::new("a.dye".into(), "é小\n👩‍🎨 x\n\n½");
        let offsets = Offsets::new(&file);
        let mut units = 0;
        for (byte, c) in file.text.char_indices() {
            assert_eq!(offsets.unit(byte), units, "{byte}");
            assert_eq!(offsets.byte(units), byte, "{units}");
            units += c.len_utf16();
        }
        assert_eq!(offsets.unit(file.text.len()), units);
        assert_eq!(offsets.byte(units + 9), file.text.len());
        assert_eq!(offsets.spot(file.text.find('x').unwrap()), (2, 5));
    }
}
