//! The first word of a line: a verb or a key, if the tables know it. Nowhere else is it one.

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

use crate::fold::fold_name_cow;
use crate::keys::{self, KEYS};
use crate::tree::{BlockKind, Clause, Head, Item, Line, Span};
use crate::verbs::verbs;

/// How the rest of a line is to be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Opening {
    /// Items and clauses.
    Read,
    /// The value is prose.
    Prose,
}

/// What a head stands for.
#[derive(Clone, Debug)]
struct Entry {
    word: Arc<str>,
    prose: bool,
}

type Table = BTreeMap<&'static str, Entry>;

static VERB_TABLE: LazyLock<Table> = LazyLock::new(|| {
    let mut table = Table::new();
    for verb in verbs() {
        enter(&mut table, verb.name, verb.synonyms, false);
    }
    table
});

static KEY_TABLES: LazyLock<BTreeMap<BlockKind, Table>> = LazyLock::new(|| {
    let mut tables: BTreeMap<BlockKind, Table> = BTreeMap::new();
    for key in KEYS {
        for kind in key.kinds {
            enter(tables.entry(*kind).or_default(), key.name, key.synonyms, key.prose);
        }
    }
    // A variant's line stands for a line of any block.
    let mut any = tables.get(&BlockKind::Variant).cloned().unwrap_or_default();
    for table in tables.values() {
        for (name, entry) in table {
            any.entry(name).or_insert_with(|| entry.clone());
        }
    }
    tables.insert(BlockKind::Variant, any);
    tables
});

fn enter(table: &mut Table, name: &'static str, synonyms: &'static [&'static str], prose: bool) {
    let word: Arc<str> = Arc::from(name);
    for spelling in std::iter::once(name).chain(synonyms.iter().copied()) {
        table.entry(spelling).or_insert_with(|| Entry { word: word.clone(), prose });
    }
}

/// The longest head at the front of `words`: its entry and its length in bytes.
fn longest(words: &str, kind: BlockKind) -> Option<(&'static Entry, usize)> {
    let mut ends = [0_usize; 3];
    let mut found = 0;
    let mut inside = false;
    for (at, c) in words.char_indices().chain(std::iter::once((words.len(), ' '))) {
        if c.is_whitespace() {
            if inside && found < ends.len() {
                ends[found] = at;
                found += 1;
            }
            inside = false;
            if found == ends.len() {
                break;
            }
        } else {
            inside = true;
        }
        if at > 96 {
            break;
        }
    }
    ends.iter().take(found).rev().find_map(|end| {
        let folded = fold_name_cow(words.get(..*end)?);
        lookup(&folded, kind).map(|entry| (entry, *end))
    })
}

fn lookup(folded: &str, kind: BlockKind) -> Option<&'static Entry> {
    let verb = || VERB_TABLE.get(folded);
    let key = || KEY_TABLES.get(&kind).and_then(|table| table.get(folded));
    match kind {
        BlockKind::Steps | BlockKind::Variant => key_first(folded, kind).or_else(verb).or_else(key),
        _ => key(),
    }
}

/// In steps a few words are keys of the block and no verbs.
fn key_first(folded: &str, kind: BlockKind) -> Option<&'static Entry> {
    if kind == BlockKind::Variant && !keys::belongs_to_variant(folded) {
        return None;
    }
    KEY_TABLES.get(&kind).and_then(|table| table.get(folded))
}

/// Whether words open with a verb of the table.
pub(crate) fn opens_with_verb(words: &str) -> bool {
    longest(words, BlockKind::Steps).is_some_and(|(entry, _)| VERB_TABLE.contains_key(&*entry.word))
}

/// Whether a physical line would make sense as a line of its own in this kind of block.
pub(crate) fn reads_as_line(text: &str, kind: BlockKind) -> bool {
    let number = text.chars().next().is_some_and(crate::chars::starts_number);
    match kind {
        BlockKind::Mix | BlockKind::Shelf if number => true,
        _ => longest(text, kind).is_some_and(|(entry, end)| {
            // A connecting word that is a key too (`for`, `by`) goes on with the line more often than not.
            crate::tree::Connector::from_word(&entry.word).is_none()
                && text.get(end..).is_some_and(|rest| !rest.is_empty())
        }),
    }
}

/// Whether a left-edge line would make sense in a block of this kind.
pub(crate) fn belongs_in(text: &str, kind: BlockKind) -> bool {
    longest(text, kind).is_some()
}

/// Takes the head off the front of a line and says where its value begins.
pub(crate) fn take_head(block: &str, kind: BlockKind, line: &mut Line) -> Opening {
    line.rest = line.span;
    if let Some(opening) = take_head_to_connector(block, kind, line) {
        return opening;
    }
    match line.items.first() {
        Some(Item::Words(words)) => {
            let words = *words;
            let text = words.of(block);
            let (word, end, known, prose) = match longest(text, kind) {
                Some((entry, end)) => (entry.word.clone(), end, true, entry.prose),
                None => {
                    let end = text.find(char::is_whitespace).unwrap_or(text.len());
                    let first = text.get(..end).unwrap_or("");
                    (Arc::from(&*fold_name_cow(first)), end, false, false)
                }
            };
            let span = Span::new(words.start, words.start + crate::prepare::offset(end));
            let tail = text.get(end..).unwrap_or("");
            let start = span.end + crate::prepare::offset(tail.len() - tail.trim_start().len());
            if start < words.end {
                if let Some(first) = line.items.first_mut() {
                    *first = Item::Words(Span::new(start, words.end));
                }
            } else {
                line.items.remove(0);
            }
            set_head(block, line, Head { span, word, known });
            if prose { Opening::Prose } else { Opening::Read }
        }
        None => take_connector(block, kind, line),
        Some(Item::Number(number)) if number.qualifier.is_some() => take_qualifier(block, kind, line),
        Some(_) => Opening::Read,
    }
}

/// `about 280 mL fits in the bottle` in a recipe is prose that happens to open with a number. In a mix, and in a variant
/// that may speak of one, it is an amount.
fn take_qualifier(block: &str, kind: BlockKind, line: &mut Line) -> Opening {
    if kind == BlockKind::Variant {
        return Opening::Read;
    }
    let text = line.span.of(block);
    let end = text.find(char::is_whitespace).unwrap_or(text.len());
    let Some(entry) = text.get(..end).and_then(|word| lookup(&fold_name_cow(word), kind)).filter(|entry| entry.prose)
    else {
        return Opening::Read;
    };
    let span = Span::new(line.span.start, line.span.start + crate::prepare::offset(end));
    set_head(block, line, Head { span, word: entry.word.clone(), known: true });
    Opening::Prose
}

/// A head whose last word connects elsewhere: `put on`, `turn over`.
fn take_head_to_connector(block: &str, kind: BlockKind, line: &mut Line) -> Option<Opening> {
    let ([Item::Words(words)], Some(clause)) = (line.items.as_slice(), line.clauses.first()) else { return None };
    let span = Span::new(words.start, clause.word.end);
    let (entry, end) = longest(span.of(block), kind)?;
    if end != span.of(block).len() {
        return None;
    }
    let Clause { items, .. } = line.clauses.remove(0);
    line.items = items;
    set_head(block, line, Head { span, word: entry.word.clone(), known: true });
    Some(if entry.prose { Opening::Prose } else { Opening::Read })
}

/// `by`, `for` and `in` open clauses, but at the front of a line they are keys where the table says so.
fn take_connector(block: &str, kind: BlockKind, line: &mut Line) -> Opening {
    let Some(first) = line.clauses.first() else {
        return Opening::Read;
    };
    let span = first.word;
    let Some((entry, _)) = longest(span.of(block), kind) else {
        return Opening::Read;
    };
    let Clause { items, .. } = line.clauses.remove(0);
    line.items = items;
    set_head(block, line, Head { span, word: entry.word.clone(), known: true });
    if entry.prose { Opening::Prose } else { Opening::Read }
}

fn set_head(block: &str, line: &mut Line, head: Head) {
    let after = Span::new(head.span.end, line.span.end);
    let text = after.of(block);
    let start = after.start + crate::prepare::offset(text.len() - text.trim_start().len());
    line.rest = Span::new(start.min(line.span.end), line.span.end);
    line.head = Some(head);
}
