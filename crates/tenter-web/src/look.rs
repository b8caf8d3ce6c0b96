//! What is found in a text, and how it is to be coloured, folded and noted.

use serde::Serialize;
use tenter_features::actions::{Action, settling};
use tenter_features::diagnostics::{Diagnostic, diagnostics};
use tenter_features::tokens::{Token, TokenKind, tokens};
use tenter_features::{Edit, FileAnalysis, Snapshot, colours, folding, hints};

use crate::offsets::Offsets;

/// More findings than these are not told.
const MOST: usize = 500;

/// Everything about a text but what it comes to.
#[derive(Debug, Serialize)]
pub struct Look {
    findings: Vec<Finding>,
    /// Start, end, class of each token, in order.
    tokens: Vec<(usize, usize, String)>,
    /// Start, end, colour of each colour written.
    colours: Vec<(usize, usize, String)>,
    /// Where a few words stand at the end of a line, and the words.
    hints: Vec<(usize, String)>,
    /// First and last line of what can be folded away, from 1.
    folds: Vec<(u32, u32)>,
}

#[derive(Debug, Serialize)]
struct Finding {
    rule: &'static str,
    level: &'static str,
    from: usize,
    to: usize,
    line: u32,
    column: u32,
    message: String,
    help: String,
    notes: Vec<Note>,
    fixes: Vec<Fix>,
}

#[derive(Debug, Serialize)]
struct Note {
    file: String,
    /// In the text being written only.
    line: Option<u32>,
    text: String,
}

#[derive(Debug, Serialize)]
struct Fix {
    title: String,
    changes: Vec<Change>,
}

/// A stretch replaced.
#[derive(Debug, Serialize)]
pub struct Change {
    from: usize,
    to: usize,
    insert: String,
}

impl Change {
    /// An edit in the page's units.
    pub fn of(edit: &Edit, offsets: &Offsets<'_>) -> Self {
        let (from, to) = offsets.units(&edit.at.range());
        Self { from, to, insert: edit.new_text.clone() }
    }
}

/// Looks through the text called `path`.
pub fn look(snapshot: &Snapshot, path: &str) -> Option<Look> {
    let analysis = snapshot.analyse(path)?;
    let file = &analysis.file;
    let offsets = Offsets::new(file);
    let whole = 0..file.text.len();
    let findings = diagnostics(&analysis, MOST).into_iter().map(|found| finding(&analysis, &offsets, found));
    let token = |token: Token| {
        let (from, to) = offsets.units(&token.range);
        (from, to, class(&token))
    };
    let colour = |colour: colours::Colour| {
        let (from, to) = offsets.units(&colour.range);
        (from, to, colours::hex(colour.rgb))
    };
    Some(Look {
        findings: findings.collect(),
        tokens: tokens(&analysis, &whole).into_iter().map(token).collect(),
        colours: colours::colours(file).into_iter().map(colour).collect(),
        hints: hints::hints(&analysis, &whole, &|_| true)
            .into_iter()
            .map(|hint| (offsets.unit(hint.offset), hint.label))
            .collect(),
        folds: folding::folds(file).iter().map(|fold| (fold.first + 1, fold.last + 1)).collect(),
    })
}

fn finding(analysis: &FileAnalysis, offsets: &Offsets<'_>, found: Diagnostic) -> Finding {
    let file = &analysis.file;
    let (from, to) = offsets.units(&found.range);
    let (line, column) = offsets.spot(found.range.start);
    let (message, help) = found.message.split_once('\n').unwrap_or((&found.message, ""));
    let settles = |action: &Action| action.settles.as_ref() == Some(&(found.rule, found.range.clone()));
    let fixes = settling(analysis, &found.range).into_iter().filter(settles).map(|action| Fix {
        changes: action.edits.iter().map(|edit| Change::of(edit, offsets)).collect(),
        title: action.title,
    });
    let notes = found.related.iter().map(|(at, text)| Note {
        file: at.path.to_string(),
        line: (at.path == file.path).then(|| file.line_number(at.start)),
        text: text.clone(),
    });
    Finding {
        rule: found.rule,
        level: found.level.word(),
        from,
        to,
        line,
        column,
        message: message.to_owned(),
        help: help.to_owned(),
        notes: notes.collect(),
        fixes: fixes.collect(),
    }
}

/// What a token is, for the style sheet.
fn class(token: &Token) -> String {
    let kind = match token.kind {
        TokenKind::Keyword => "keyword",
        TokenKind::Verb => "verb",
        TokenKind::Key => "key",
        TokenKind::Connector => "connector",
        TokenKind::Number => "number",
        TokenKind::Unit => "unit",
        TokenKind::Goods => "goods",
        TokenKind::Mix => "mix",
        TokenKind::Material => "material",
        TokenKind::Layout => "layout",
        TokenKind::Zone => "zone",
        TokenKind::Vessel => "vessel",
        TokenKind::Steps => "steps",
        TokenKind::Title => "title",
        TokenKind::Text => "text",
        TokenKind::Colour => "colour",
        TokenKind::Comment => "comment",
    };
    if token.declares { format!("dye-{kind} dye-declares") } else { format!("dye-{kind}") }
}
