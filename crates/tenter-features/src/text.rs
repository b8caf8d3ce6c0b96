//! Places in files, and changes of them.

use std::sync::Arc;

/// A stretch of bytes of a file.
pub type Range = std::ops::Range<usize>;

/// A stretch of a file of the collection.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Location {
    /// The file's path inside the collection.
    pub path: Arc<str>,
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Location {
    /// The bytes.
    pub fn range(&self) -> Range {
        self.start..self.end
    }

    /// Whether an offset lies inside or just behind.
    pub fn touches(&self, offset: usize) -> bool {
        self.start <= offset && offset <= self.end
    }
}

/// A stretch of a file replaced.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Edit {
    /// What is replaced; empty to insert.
    pub at: Location,
    /// What stands there then.
    pub new_text: String,
}

impl Edit {
    /// Replaces bytes of a file.
    pub fn new(path: &Arc<str>, range: Range, new_text: impl Into<String>) -> Self {
        Self { at: Location { path: Arc::clone(path), start: range.start, end: range.end }, new_text: new_text.into() }
    }
}

/// Whether two stretches share a byte, or one is empty and lies within or at the edge of the other.
pub(crate) fn meet(a: &Range, b: &Range) -> bool {
    a.start <= b.end && b.start <= a.end
}

/// The text with edits made; those of other files, and those that overlap an earlier one, are passed over.
pub fn apply(path: &str, text: &str, edits: &[Edit]) -> String {
    let mut own: Vec<&Edit> = edits.iter().filter(|edit| &*edit.at.path == path).collect();
    own.sort_by_key(|edit| edit.at.range().start);
    let mut out = String::with_capacity(text.len() + 64);
    let mut from = 0;
    for edit in own {
        if edit.at.start < from {
            continue;
        }
        out.push_str(text.get(from..edit.at.start).unwrap_or(""));
        out.push_str(&edit.new_text);
        from = edit.at.end;
    }
    out.push_str(text.get(from..).unwrap_or(""));
    out
}
