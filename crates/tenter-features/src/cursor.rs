//! What stands around a place of a line: its words, the clause they are in, the kinds of name expected there.

use tenter_quantity::{Token as UnitToken, read_unit};
use tenter_syntax::{Block, BlockKind, ClauseUse, Connector, Expect, Item, Line, Span, key_row, verb_row};

use crate::names::SymbolKind;

/// A word of a line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Word {
    pub span: Span,
    /// Words of one run may form one name.
    pub run: u32,
    /// The connecting word that opens its clause.
    pub clause: Option<Connector>,
    /// Whether it is part of a unit behind a number.
    pub unit: bool,
    /// Whether a name may begin here.
    pub names: bool,
}

impl Word {
    /// Its text.
    pub fn text<'a>(&self, block: &'a Block) -> &'a str {
        block.slice(self.span)
    }
}

/// Where a name stands.
#[derive(Clone, Copy)]
pub(crate) struct Context<'a> {
    pub kind: BlockKind,
    pub line: &'a Line,
    pub clause: Option<Connector>,
}

/// The words of a line behind its head that may be names; none where the value is prose.
pub(crate) fn words(block: &Block, line: &Line) -> Vec<Word> {
    if is_prose(block.kind, line) {
        return Vec::new();
    }
    let mut words = Vec::new();
    let mut run = 0;
    let head = line.head.as_ref().filter(|head| !head.known);
    if let (Some(head), BlockKind::Mix | BlockKind::Shelf | BlockKind::Log) = (head, block.kind) {
        words.push(Word { span: head.span, run, clause: None, unit: false, names: true });
    }
    gather(block, &line.items, None, &mut run, &mut words);
    for clause in &line.clauses {
        if matches!(clause.connector, Connector::Until | Connector::Because) {
            run += 1;
            continue;
        }
        // A connecting word may stand inside a name (`salt and soda`), so it belongs to the run before it.
        words.push(Word { span: clause.word, run, clause: Some(clause.connector), unit: false, names: false });
        gather(block, &clause.items, Some(clause.connector), &mut run, &mut words);
    }
    words
}

fn gather(block: &Block, items: &[Item], clause: Option<Connector>, run: &mut u32, words: &mut Vec<Word>) {
    let mut counted = false;
    for item in items {
        match item {
            Item::Words(span) => {
                let start = words.len();
                split(block, *span, *run, clause, words);
                if counted {
                    mark_unit(block, words.get_mut(start..).unwrap_or(&mut []));
                }
                counted = false;
            }
            Item::Quoted(span) => {
                *run += 1;
                words.push(Word { span: *span, run: *run, clause, unit: false, names: true });
                *run += 1;
            }
            Item::Number(number) => {
                words.push(Word { span: number.span, run: *run, clause, unit: false, names: false });
                counted = true;
            }
            _ => {
                *run += 1;
                counted = false;
            }
        }
    }
}

fn split(block: &Block, span: Span, run: u32, clause: Option<Connector>, words: &mut Vec<Word>) {
    let text = block.slice(span);
    let mut at = 0;
    for part in text.split(char::is_whitespace) {
        if !part.is_empty() {
            let start = span.start + at as u32;
            let span = Span::new(start, start + part.len() as u32);
            words.push(Word { span, run, clause, unit: false, names: true });
        }
        at += part.len() + text.get(at + part.len()..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
    }
}

fn mark_unit(block: &Block, words: &mut [Word]) {
    let tokens: Vec<UnitToken<'_>> = words.iter().take(6).map(|word| UnitToken::Word(word.text(block))).collect();
    let used = match read_unit(&tokens, None) {
        Ok(Some(unit)) => unit.words_used,
        Ok(None) => 0,
        Err(_) => 1,
    };
    for word in words.iter_mut().take(used) {
        word.unit = true;
        word.names = false;
    }
}

/// Whether what follows the head is prose.
pub(crate) fn is_prose(kind: BlockKind, line: &Line) -> bool {
    let Some(head) = &line.head else { return false };
    if &*head.word == "accept" || &*head.word == "zone" {
        return true;
    }
    key_row(kind, &head.word).is_some_and(|key| key.prose)
}

/// Whether a line opens with a verb: among steps any, in a variant one that is no key of a variant.
pub(crate) fn opens_with_verb(kind: BlockKind, head: &str) -> bool {
    let verb = verb_row(head).is_some();
    match kind {
        BlockKind::Steps => verb,
        BlockKind::Variant => verb && key_row(kind, head).is_none(),
        _ => false,
    }
}

/// What a verb takes behind a connecting word; none stands for right behind the verb.
pub(crate) fn taken(verb: &str, connector: Option<Connector>) -> impl Iterator<Item = &'static ClauseUse> {
    verb_row(verb).into_iter().flat_map(|verb| verb.takes).filter(move |take| take.connector == connector)
}

/// The kinds of name that fit at a place, the likeliest first.
pub(crate) fn wanted(block: &Block, context: &Context<'_>) -> Vec<SymbolKind> {
    let head = context.line.head.as_ref().map_or("", |head| &*head.word);
    let _ = block;
    match context.kind {
        BlockKind::Mix if context.clause.is_none() => vec![SymbolKind::Mix, SymbolKind::Dye, SymbolKind::Chemical],
        BlockKind::Mix => vec![SymbolKind::Goods, SymbolKind::Mix],
        BlockKind::Shelf => vec![SymbolKind::Dye, SymbolKind::Chemical],
        BlockKind::Layout => vec![SymbolKind::Zone],
        _ => taken(head, context.clause).flat_map(|take| kinds(take.what)).copied().collect(),
    }
}

/// The kinds of name that stand for what is expected.
pub(crate) const fn kinds(what: Expect) -> &'static [SymbolKind] {
    match what {
        Expect::Goods => &[SymbolKind::Goods],
        Expect::Zone => &[SymbolKind::Zone],
        Expect::Liquor => &[SymbolKind::Mix, SymbolKind::Vessel],
        Expect::Vessel => &[SymbolKind::Vessel, SymbolKind::Mix],
        Expect::Material => &[SymbolKind::Dye, SymbolKind::Chemical, SymbolKind::Mix],
        Expect::Layout => &[SymbolKind::Layout],
        Expect::Steps => &[SymbolKind::Steps],
        _ => &[],
    }
}
