//! What kind of thing each stretch of text is, for colouring.

use tenter_syntax::{Block, BlockKind, Item, Line, Span};

use crate::analysis::FileAnalysis;
use crate::cursor::{is_prose, opens_with_verb, words};
use crate::names::SymbolKind;
use crate::text::Range;

/// Kinds of token.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum TokenKind {
    Keyword,
    Verb,
    Key,
    Connector,
    Number,
    Unit,
    Goods,
    Mix,
    Material,
    Layout,
    Zone,
    Vessel,
    Steps,
    Title,
    Text,
    Colour,
    Comment,
}

/// A stretch of one line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Token {
    /// Where.
    pub range: Range,
    /// What.
    pub kind: TokenKind,
    /// Whether it declares the name.
    pub declares: bool,
    /// Whether the name is one of the reference data.
    pub known: bool,
}

/// The tokens of a stretch of a file: in order, none over another, none over a line break.
pub fn tokens(analysis: &FileAnalysis, within: &Range) -> Vec<Token> {
    let file = &analysis.file;
    let mut found = Vec::new();
    for (position, placed) in file.document.blocks.iter().enumerate() {
        if placed.start > within.end || placed.start + placed.block.text.len() < within.start {
            continue;
        }
        let mut spans: Vec<(Span, TokenKind, bool, bool)> = Vec::new();
        names(analysis, position, &mut spans);
        of_block(&placed.block, &mut spans);
        // A name goes before what it is made of: gathered first, it wins where two begin together.
        spans.sort_by_key(|(span, ..)| span.start);
        let mut end = 0;
        for (span, kind, declares, known) in spans {
            if span.is_empty() || span.start < end {
                continue;
            }
            end = span.end;
            split(&placed.block, span, &mut |part| {
                let range = file.range(position, part);
                if range.end > within.start && range.start < within.end {
                    found.push(Token { range, kind, declares, known });
                }
            });
        }
    }
    found
}

fn names(analysis: &FileAnalysis, position: usize, spans: &mut Vec<(Span, TokenKind, bool, bool)>) {
    let Some((view, number)) = analysis.home(position) else { return };
    let names = view.names();
    let from = names.occurrences.partition_point(|occurrence| occurrence.place.block < number);
    for occurrence in names.occurrences.iter().skip(from).take_while(|occurrence| occurrence.place.block == number) {
        let Some(symbol) = names.symbols.get(occurrence.symbol) else { continue };
        let kind = match symbol.kind {
            SymbolKind::Goods => TokenKind::Goods,
            SymbolKind::Mix => TokenKind::Mix,
            SymbolKind::Dye | SymbolKind::Chemical | SymbolKind::Reference => TokenKind::Material,
            SymbolKind::Layout => TokenKind::Layout,
            SymbolKind::Zone => TokenKind::Zone,
            SymbolKind::Vessel => TokenKind::Vessel,
            SymbolKind::Steps => TokenKind::Steps,
            SymbolKind::Recipe | SymbolKind::Variant => TokenKind::Title,
        };
        let span = Span::new(occurrence.place.start, occurrence.place.end);
        spans.push((span, kind, occurrence.declares, symbol.kind == SymbolKind::Reference));
    }
}

fn of_block(block: &Block, spans: &mut Vec<(Span, TokenKind, bool, bool)>) {
    let mut add = |span: Span, kind: TokenKind| spans.push((span, kind, false, false));
    add(block.keyword, TokenKind::Keyword);
    if block.kind != BlockKind::Use {
        add(block.name, TokenKind::Title);
    }
    block.comment.iter().for_each(|span| add(*span, TokenKind::Comment));
    for line in &block.lines {
        line.comment.iter().chain(&line.inner_comments).for_each(|span| add(*span, TokenKind::Comment));
        of_line(block, line, &mut add);
    }
}

fn of_line(block: &Block, line: &Line, add: &mut dyn FnMut(Span, TokenKind)) {
    if let Some(head) = line.head.as_ref().filter(|head| head.known) {
        add(head.span, if opens_with_verb(block.kind, &head.word) { TokenKind::Verb } else { TokenKind::Key });
        if is_prose(block.kind, line) && &*head.word != "zone" {
            add(line.rest, TokenKind::Text);
            return;
        }
    }
    for word in words(block, line).iter().filter(|word| word.unit) {
        add(word.span, TokenKind::Unit);
    }
    for clause in &line.clauses {
        add(clause.word, TokenKind::Connector);
    }
    let items = line.items.iter().chain(line.clauses.iter().flat_map(|clause| &clause.items));
    for item in items {
        match item {
            Item::Number(number) => add(number.span, TokenKind::Number),
            Item::Colour(span) => add(*span, TokenKind::Colour),
            Item::Quoted(span) | Item::Aside(span) => add(*span, TokenKind::Text),
            _ => {}
        }
    }
}

/// The parts of a span on each line it reaches over.
fn split(block: &Block, span: Span, give: &mut dyn FnMut(Span)) {
    let text = block.slice(span);
    if !text.contains(['\n', '\r']) {
        give(span);
        return;
    }
    let mut at = span.start;
    for part in text.split_inclusive(['\n', '\r']) {
        let held = part.trim();
        let start = at + (part.len() - part.trim_start().len()) as u32;
        if !held.is_empty() {
            give(Span::new(start, start + held.len() as u32));
        }
        at += part.len() as u32;
    }
}
