//! Texts with a caret or a range drawn in them, and answers drawn back into the text.

use std::collections::BTreeMap;

use tenter_features::{Edit, Location, Range, Snapshot, Workspace, apply};

/// The caret in a drawn text.
pub const CARET: char = '‸';

/// Files, one of them with a caret.
pub struct Scene {
    pub snapshot: Snapshot,
    pub path: String,
    pub offset: usize,
    pub texts: BTreeMap<String, String>,
}

impl Scene {
    /// One file.
    pub fn new(drawn: &str) -> Self {
        Self::of(&[("a.dye", drawn)])
    }

    /// Several files; the caret stands in one of them.
    pub fn of(files: &[(&str, &str)]) -> Self {
        let mut workspace = Workspace::new();
        let (mut path, mut offset) = (files[0].0.to_owned(), 0);
        let mut texts = BTreeMap::new();
        for (name, drawn) in files {
            if let Some(at) = drawn.find(CARET) {
                (path, offset) = ((*name).to_owned(), at);
            }
            let text = drawn.replace(CARET, "");
            workspace.open(name, &text);
            texts.insert((*name).to_owned(), text);
        }
        Self { snapshot: workspace.snapshot(), path, offset, texts }
    }

    /// The text with marks around ranges: `⟦…⟧`.
    pub fn mark(&self, path: &str, ranges: &[Range]) -> String {
        let mut text = self.texts[path].clone();
        let mut sorted = ranges.to_vec();
        sorted.sort_by_key(|range| std::cmp::Reverse(range.start));
        for range in sorted {
            text.insert(range.end, '⟧');
            text.insert(range.start, '⟦');
        }
        text
    }

    /// Every file that holds one of the places, marked.
    pub fn mark_all(&self, places: &[Location]) -> String {
        let mut by_path: BTreeMap<&str, Vec<Range>> = BTreeMap::new();
        for place in places {
            by_path.entry(&place.path).or_default().push(place.range());
        }
        let parts: Vec<String> =
            by_path.iter().map(|(path, ranges)| format!("── {path}\n{}", self.mark(path, ranges))).collect();
        parts.join("\n")
    }

    /// Every file that edits change, after them.
    pub fn edited(&self, edits: &[Edit]) -> String {
        let mut parts = Vec::new();
        for (path, text) in &self.texts {
            let after = apply(path, text, edits);
            if after != *text {
                let lines: Vec<String> = similar_lines(text, &after);
                parts.push(format!("── {path}\n{}", lines.join("\n")));
            }
        }
        parts.join("\n")
    }
}

/// Lines that differ, before and after.
fn similar_lines(before: &str, after: &str) -> Vec<String> {
    let (old, new): (Vec<&str>, Vec<&str>) = (before.lines().collect(), after.lines().collect());
    let front = old.iter().zip(&new).take_while(|(a, b)| a == b).count();
    let left = old.len().min(new.len()) - front;
    let back = old.iter().rev().zip(new.iter().rev()).take(left).take_while(|(a, b)| a == b).count();
    let mut lines = Vec::new();
    let show = |sign: char, line: &str| format!("{sign} {line}");
    let (old, new) = (&old[front..old.len() - back], &new[front..new.len() - back]);
    if old.len() == new.len() {
        for (a, b) in old.iter().zip(new).filter(|(a, b)| a != b) {
            lines.extend([show('-', a), show('+', b)]);
        }
    } else {
        lines.extend(old.iter().map(|line| show('-', line)));
        lines.extend(new.iter().map(|line| show('+', line)));
    }
    lines
}
