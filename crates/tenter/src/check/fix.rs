//! The fixes findings offer, made in the text until nothing is left to make.

use std::collections::{BTreeMap, BTreeSet};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::Arc;

use tenter_resolve::Sheet;
use tenter_rules::{Checked, Finding, Fix, Levels, Scale, Verdict, check_document};
use tenter_syntax::Document;

use crate::check::one::{BROUGHT_DOWN, Run};
use crate::files::collection::Collection;
use crate::files::source::SourceFile;

/// What fixing makes of a file.
#[derive(Debug, Default)]
pub struct Fixed {
    /// The text then.
    pub text: String,
    /// How many fixes were made.
    pub made: usize,
    /// Whether it stopped before nothing was left to make.
    pub stopped: bool,
}

/// Times a text is checked anew at most. Two rounds settle nearly every file; a circle of fixes must end somewhere.
const CHECKS: usize = 40;

/// Makes the safe fixes of a file, with `suggested` the first of every finding. The file itself stays as it is.
///
/// # Errors
/// What keeps the file from being fixed.
pub fn fixed(file: &SourceFile, path: &Path, run: Run<'_>) -> Result<Fixed, String> {
    if let Some(trouble) = file.encoding_trouble() {
        return Err(format!("{trouble} Not fixed."));
    }
    let work = || {
        let (collection, inside) = run.collections.of(path);
        let config = run.configs.of(collection.root());
        let bench = Bench { inside, collection, levels: &config.levels, suggested: run.wanted.suggested };
        bench.settle(&file.text)
    };
    catch_unwind(AssertUnwindSafe(work)).map_err(|_| BROUGHT_DOWN.to_owned())
}

struct Bench<'a> {
    inside: String,
    collection: Arc<Collection>,
    levels: &'a Levels,
    suggested: bool,
}

/// A text, what it says and what is found in it.
struct State {
    text: String,
    document: Document,
    checked: Checked,
    /// Open findings of each rule.
    open: BTreeMap<&'static str, usize>,
}

/// A fix as changes of bytes.
struct Change {
    rule: &'static str,
    /// Start, end and new text, in order and apart from each other.
    edits: Vec<(usize, usize, String)>,
    /// What it is known by, should it not hold.
    known_by: (&'static str, String, String),
}

impl Bench<'_> {
    fn settle(&self, text: &str) -> Fixed {
        let mut state = self.state(text.to_owned());
        let mut made = 0;
        let mut refused = BTreeSet::new();
        let mut checks = 0;
        while checks < CHECKS {
            let mut changes = self.changes(&state, &refused);
            if changes.is_empty() {
                return Fixed { text: state.text, made, stopped: false };
            }
            checks += 1;
            let next = self.state(applied(&state.text, &changes));
            if holds(&state, &next, &changes) {
                made += changes.len();
                state = next;
                continue;
            }
            // Together they do not hold: one by one then, and what does not hold alone is not offered again.
            changes.truncate(CHECKS.saturating_sub(checks).max(1));
            for change in changes {
                let alone = [change];
                checks += 1;
                let next = self.state(applied(&state.text, &alone));
                if holds(&state, &next, &alone) {
                    made += 1;
                    state = next;
                    break;
                }
                refused.extend(alone.map(|change| change.known_by));
            }
        }
        Fixed { text: state.text, made, stopped: true }
    }

    fn state(&self, text: String) -> State {
        let document = Document::parse(&text);
        let checked = check_document(&document, &self.inside, &*self.collection, Scale::AsWritten);
        let mut open = BTreeMap::new();
        for told in checked.findings.iter().filter(|told| self.is_open(&told.finding)) {
            *open.entry(told.finding.rule).or_default() += 1;
        }
        State { text, document, checked, open }
    }

    fn is_open(&self, finding: &Finding) -> bool {
        finding.accepted.is_none() && self.levels.apply(&mut finding.clone()) == Verdict::Told
    }

    /// The fixes to make now: of each open finding the first that may be made, as long as none meets another.
    fn changes(&self, state: &State, refused: &BTreeSet<(&'static str, String, String)>) -> Vec<Change> {
        let mut taken: Vec<Change> = Vec::new();
        for told in state.checked.findings.iter().filter(|told| self.is_open(&told.finding)) {
            let Some(sheet) = state.checked.sheets.get(told.sheet) else { continue };
            let mut fixes = told.finding.fixes.iter();
            let Some(fix) = fixes.clone().find(|fix| fix.safe).or_else(|| fixes.next().filter(|_| self.suggested))
            else {
                continue;
            };
            let Some(change) = change(state, sheet, told.finding.rule, fix) else { continue };
            if !refused.contains(&change.known_by) && !taken.iter().any(|other| meet(&change, other)) {
                taken.push(change);
            }
        }
        taken
    }
}

/// The fix as changes of bytes; none if it concerns another file, for that is fixed where it is checked.
fn change(state: &State, sheet: &Sheet, rule: &'static str, fix: &Fix) -> Option<Change> {
    let text = &state.text;
    let mut edits = Vec::with_capacity(fix.edits.len());
    for edit in &fix.edits {
        let entry = sheet.blocks.get(edit.place.block as usize)?;
        if entry.file.is_some() {
            return None;
        }
        let block = state.document.blocks.get(entry.position)?.start;
        let (start, end) = (block + edit.place.start as usize, block + edit.place.end as usize);
        let old = text.get(start..end)?;
        if old == edit.new_text {
            continue;
        }
        let (start, end) = if edit.new_text.is_empty() { widened(text, start, end) } else { (start, end) };
        edits.push((start, end, with_breaks_of(text, &edit.new_text)));
    }
    edits.sort_by_key(|(start, end, _)| (*start, *end));
    let apart = edits.windows(2).all(|pair| matches!(pair, [(_, end, _), (start, _, _)] if end <= start));
    let (first, _, _) = edits.first()?;
    let line = text.get(..*first)?.rfind('\n').map_or(0, |at| at + 1);
    let line = text.get(line..)?.lines().next().unwrap_or("").to_owned();
    apart.then_some(Change { rule, edits, known_by: (rule, fix.title.clone(), line) })
}

/// What is left out takes along the line it leaves empty, or the blank it leaves double.
fn widened(text: &str, start: usize, end: usize) -> (usize, usize) {
    let blank = |c: char| c == ' ' || c == '\t';
    let (before, after) = (text.get(..start).unwrap_or(""), text.get(end..).unwrap_or(""));
    let left = before.trim_end_matches(blank);
    let right = after.trim_start_matches(blank);
    let removed = text.get(start..end).unwrap_or("");
    if removed.trim().is_empty() {
        // A character that shows nothing, or a blank: exactly that.
        return (start, end);
    }
    let rest = right.strip_prefix("\r\n").or_else(|| right.strip_prefix('\n'));
    match rest {
        Some(rest) if left.is_empty() || left.ends_with('\n') => (left.len(), text.len() - rest.len()),
        Some(_) => (left.len(), end),
        None if right.is_empty() || left.len() < before.len() && right.len() < after.len() => (left.len(), end),
        None => (start, end),
    }
}

/// New lines end as those of the file do.
fn with_breaks_of(text: &str, new: &str) -> String {
    let carriage = text.find('\n').is_some_and(|at| text.get(..at).is_some_and(|line| line.ends_with('\r')));
    if carriage { new.replace("\r\n", "\n").replace('\n', "\r\n") } else { new.to_owned() }
}

/// Whether two fixes touch each other: then one waits for the next round.
fn meet(one: &Change, other: &Change) -> bool {
    let touch = |a: &(usize, usize, String), b: &(usize, usize, String)| a.0 <= b.1 && b.0 <= a.1;
    one.edits.iter().any(|a| other.edits.iter().any(|b| touch(a, b)))
}

fn applied(text: &str, changes: &[Change]) -> String {
    let mut edits: Vec<&(usize, usize, String)> = changes.iter().flat_map(|change| &change.edits).collect();
    edits.sort_by_key(|(start, end, _)| (*start, *end));
    let mut new = String::with_capacity(text.len() + 64);
    let mut at = 0;
    for (start, end, with) in edits {
        new.push_str(text.get(at..*start).unwrap_or(""));
        new.push_str(with);
        at = *end;
    }
    new.push_str(text.get(at..).unwrap_or(""));
    new
}

/// Whether the fixes did what they promised: fewer findings of each of their rules, and no text that became unreadable.
fn holds(before: &State, after: &State, changes: &[Change]) -> bool {
    let count = |state: &State, rule: &str| state.open.get(rule).copied().unwrap_or(0);
    changes.iter().all(|change| count(after, change.rule) < count(before, change.rule))
        && count(after, "unreadable") <= count(before, "unreadable")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn change_of(edits: &[(usize, usize, &str)]) -> Change {
        let edits = edits.iter().map(|(start, end, new)| (*start, *end, (*new).to_owned())).collect();
        Change { rule: "stray-line", edits, known_by: ("stray-line", String::new(), String::new()) }
    }

    #[test]
    fn changes_are_made_at_their_own_places() {
        let changes = [change_of(&[(4, 5, "Z"), (0, 0, ">")]), change_of(&[(2, 3, "")])];
        assert_eq!(applied("abcdef", &changes), ">abdZf");
    }

    #[test]
    fn what_touches_waits() {
        let one = change_of(&[(2, 4, "x")]);
        for (start, end, meets) in [(0, 1, false), (0, 2, true), (3, 3, true), (4, 6, true), (5, 6, false)] {
            assert_eq!(meet(&one, &change_of(&[(start, end, "y")])), meets, "{start}..{end}");
        }
    }

    #[test]
    fn what_is_left_out_leaves_no_gap() {
        for (text, cut, left) in [
            ("a\n  accept x\n  b\n", "accept x", "a\n  b\n"),
            ("a\r\n  accept x\r\n  b\r\n", "accept x", "a\r\n  b\r\n"),
            ("rinse tees for ever until clear\n", "for ever", "rinse tees until clear\n"),
            ("rinse tees for ever\nx\n", "for ever", "rinse tees\nx\n"),
            ("rinse tees for ever", "for ever", "rinse tees"),
            ("a\u{200b}b c\n", "\u{200b}", "ab c\n"),
        ] {
            let start = text.find(cut).unwrap();
            let (start, end) = widened(text, start, start + cut.len());
            let mut text = text.to_owned();
            text.replace_range(start..end, "");
            assert_eq!(text, left);
        }
    }

    #[test]
    fn new_lines_end_like_the_others() {
        assert_eq!(with_breaks_of("a\r\nb\n", "x\ny"), "x\r\ny");
        assert_eq!(with_breaks_of("a\nb\r\n", "x\ny"), "x\ny");
    }
}
