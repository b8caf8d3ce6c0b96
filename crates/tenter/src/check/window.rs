//! The few lines of a file that a report shows: made safe, cut to a readable width, with their true numbers.
//!
//! Only these lines are handed to the renderer, so that a report costs the same wherever in a file it stands.

use miette::{MietteError, MietteSpanContents, SourceCode, SourceSpan, SpanContents};

use crate::files::source::SourceFile;
use crate::text::safe::{steers, visible};

/// Characters shown of a line; of longer ones the part around what is pointed at.
const LONGEST: usize = 66;
/// Characters shown in front of what is pointed at, in a line that is cut.
const BEFORE: usize = 20;

/// Some lines of a file.
#[derive(Debug)]
pub struct Window {
    name: String,
    text: String,
    lines: Vec<Shown>,
}

#[derive(Debug)]
struct Shown {
    /// Number in the file, from 0.
    number: u32,
    /// Where it starts in the window's text.
    start: usize,
    /// Where it ends there, line feed included.
    end: usize,
    /// For every byte of the file's line that is shown: first the byte in the file, then that in the window.
    map: Vec<(usize, usize)>,
    /// Where the line starts in the file, and the text of it.
    file_start: usize,
    /// Characters of the file's line in front of a given byte are counted here.
    raw: String,
}

impl Window {
    /// The lines of these stretches (in bytes of the file), and the line above each that has text.
    pub fn new(file: &SourceFile, stretches: &[(usize, usize)]) -> Self {
        let mut wanted: Vec<(u32, usize)> = Vec::new();
        for &(start, end) in stretches {
            let first = file.lines.line_of(start);
            // A stretch over many lines is shown by its first ones.
            let last = file.lines.line_of(end.max(start)).min(first.saturating_add(5));
            if let Some(above) = first.checked_sub(1)
                && file.text.get(file.lines.line_range(above)).is_some_and(|text| !text.trim().is_empty())
            {
                wanted.push((above, file.lines.line_range(above).start));
            }
            wanted.extend((first..=last).map(|line| (line, start.max(file.lines.line_range(line).start))));
        }
        // Where a line is wanted twice, what points into it decides which part of it is shown.
        wanted.sort_by_key(|(line, at)| (*line, std::cmp::Reverse(*at)));
        wanted.dedup_by_key(|(line, _)| *line);
        let mut window =
            Self { name: crate::text::safe::safe(&file.name).into_owned(), text: String::new(), lines: Vec::new() };
        for (line, at) in wanted {
            window.add(file, line, at);
        }
        window
    }

    fn add(&mut self, file: &SourceFile, line: u32, at: usize) {
        let range = file.lines.line_range(line);
        let raw = file.text.get(range.clone()).unwrap_or("").trim_end_matches(['\n', '\r']);
        let skipped = match raw.char_indices().nth(LONGEST) {
            None => 0,
            Some(_) => {
                let ahead =
                    raw.get(..at.saturating_sub(range.start).min(raw.len())).map_or(0, |text| text.chars().count());
                ahead.saturating_sub(BEFORE)
            }
        };
        let start = self.text.len();
        let mut map = Vec::new();
        if skipped > 0 {
            self.text.push('…');
        }
        let mut end_of_shown = range.start + raw.len();
        for (shown, (offset, c)) in raw.char_indices().skip(skipped).enumerate() {
            if shown >= LONGEST {
                self.text.push('…');
                end_of_shown = range.start + offset;
                break;
            }
            map.push((range.start + offset, self.text.len()));
            if c == '\r' || (steers(c)) {
                self.text.push_str(&visible(c));
            } else {
                self.text.push(c);
            }
        }
        map.push((end_of_shown, self.text.len()));
        self.text.push('\n');
        self.lines.push(Shown {
            number: line,
            start,
            end: self.text.len(),
            map,
            file_start: range.start,
            raw: raw.to_owned(),
        });
    }

    /// The stretch of the window that shows a stretch of the file, as much of it as is shown.
    pub fn span(&self, (start, end): (usize, usize)) -> (usize, usize) {
        let from = self.place(start);
        let to = self.place(end.max(start));
        (from, to.max(from) - from)
    }

    fn place(&self, byte: usize) -> usize {
        let line = self.lines.iter().rev().find(|line| line.file_start <= byte).or(self.lines.first());
        line.map_or(0, |line| {
            let after = line.map.partition_point(|(file, _)| *file <= byte);
            let entry = line.map.get(after.saturating_sub(1)).or(line.map.first());
            entry.map_or(line.start, |(_, shown)| *shown)
        })
    }

    /// Columns left of a byte of the window on its line.
    pub fn columns_before(&self, offset: usize) -> usize {
        let line = self.lines.iter().rev().find(|line| line.start <= offset);
        let text = line.and_then(|line| self.text.get(line.start..offset)).unwrap_or("");
        crate::text::wrap::width(text) + 3 * text.matches('\t').count()
    }
}

impl SourceCode for Window {
    /// The run of lines of the file, one after another, that holds the span; an error when no single run does.
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        before: usize,
        after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let (start, end) = (span.offset(), span.offset() + span.len());
        let holds = |at: usize| self.lines.iter().position(|line| line.start <= at && at < line.end);
        let first = holds(start).ok_or(MietteError::OutOfBounds)?;
        let last = if end == start { first } else { holds(end.saturating_sub(1)).ok_or(MietteError::OutOfBounds)? };
        let follows = |pair: &[Shown]| matches!(pair, [a, b] if a.number + 1 == b.number);
        let lines = &self.lines;
        if !lines.get(first..=last).is_some_and(|run| run.windows(2).all(follows)) {
            return Err(MietteError::OutOfBounds);
        }
        let mut top = first;
        while before > 0 && top > 0 && lines.get(top - 1..=top).is_some_and(follows) {
            top -= 1;
        }
        let mut bottom = last;
        while after > 0 && lines.get(bottom..=bottom + 1).is_some_and(follows) {
            bottom += 1;
        }
        let (Some(head), Some(tail), Some(line)) = (lines.get(top), lines.get(bottom), lines.get(first)) else {
            return Err(MietteError::OutOfBounds);
        };
        // Asked without context only for the column of the heading: told in characters of the file's line.
        let (number, column) = if before == 0 && after == 0 {
            let byte =
                line.map.iter().rev().find(|(_, shown)| *shown <= start).map_or(line.file_start, |(file, _)| *file);
            let column = line.raw.get(..byte - line.file_start).map_or(0, |text| text.chars().count());
            (line.number, column)
        } else {
            (head.number, 0)
        };
        let data = self.text.get(head.start..tail.end).ok_or(MietteError::OutOfBounds)?.as_bytes();
        Ok(Box::new(MietteSpanContents::new_named(
            self.name.clone(),
            data,
            (head.start, tail.end - head.start).into(),
            number as usize,
            column,
            bottom - top + 1,
        )))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(text: &str) -> SourceFile {
        SourceFile::from_bytes("a.dye".into(), text.as_bytes().to_vec())
    }

    fn cut(window: &Window, stretch: (usize, usize)) -> &str {
        let (start, length) = window.span(stretch);
        window.text.get(start..start + length).unwrap()
    }

    #[test]
    fn a_stretch_is_found_again_whatever_stands_before_it() {
        for before in ["", "é小👩 ", "\u{1b}[31m\u{202e}", "\t", &"x".repeat(5_000)] {
            let text = format!("first\n  {before}soda ash  # rest\nlast\n");
            let file = file(&text);
            let at = text.find("soda").unwrap();
            let window = Window::new(&file, &[(at, at + 8)]);
            assert_eq!(cut(&window, (at, at + 8)), "soda ash", "{before:?}");
            assert!(window.text.lines().all(|line| line.chars().count() <= LONGEST + 40), "{:?}", window.text);
            assert!(!window.text.contains('\u{1b}'));
        }
    }

    #[test]
    fn the_heading_counts_characters_of_the_file() {
        let text = "a\n\nb é小 soda\n";
        let file = file(text);
        let at = text.find("soda").unwrap();
        let window = Window::new(&file, &[(at, at + 4)]);
        let span = window.span((at, at + 4));
        let told = window.read_span(&span.into(), 0, 0).unwrap();
        assert_eq!((told.line(), told.column()), (2, 5));
    }

    #[test]
    fn lines_far_apart_are_separate_runs() {
        let text = "one\ntwo\n\nfour\nfive\n";
        let file = file(text);
        let window = Window::new(&file, &[(0, 3), (14, 18)]);
        let whole = (0, window.text.len());
        assert!(window.read_span(&whole.into(), 1, 1).is_err());
        let last = window.read_span(&window.span((14, 18)).into(), 1, 1).unwrap();
        assert_eq!((last.line(), last.data()), (3, "four\nfive\n".as_bytes()));
    }

    #[test]
    fn stretches_at_the_very_end_or_beyond_are_clamped() {
        for text in ["", "x", "x\n", "é"] {
            let file = file(text);
            let window = Window::new(&file, &[(text.len(), text.len())]);
            let span = window.span((text.len() + 5, text.len() + 9));
            assert!(span.0 + span.1 <= window.text.len(), "{text:?}");
        }
    }
}
