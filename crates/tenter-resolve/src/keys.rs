//! Lines whose head is no key of their block.

use tenter_syntax::{BlockKind, fold_name, keys_of, verbs};

use crate::binder::Binder;
use crate::problem::ProblemKind;
use crate::sheet::Row;

/// Keys whose value is kept as it is and needs no reading.
fn is_prose(word: &str, kind: BlockKind) -> bool {
    keys_of(kind).any(|key| key.name == word)
}

/// Accepts a key the table knows for this block, tells of one it does not.
pub(crate) fn known_or_told(binder: &mut Binder<'_>, row: &Row<'_>, kind: BlockKind) {
    let Some(head) = &row.line.head else { return };
    if head.known || is_prose(&head.word, kind) {
        return;
    }
    let written = row.text(head.span);
    let nearest = nearest_key(&fold_name(written), kind);
    binder.problem(row.place(head.span), ProblemKind::UnknownKey { written: written.into(), block: kind, nearest });
}

/// A line without a head in a block that has only keyed lines.
pub(crate) fn stray(binder: &mut Binder<'_>, row: &Row<'_>) {
    if row.line.span.is_empty() {
        return;
    }
    binder.problem(row.place(row.line.span), ProblemKind::Unreadable { written: row.text(row.line.span).into() });
}

fn nearest_key(folded: &str, kind: BlockKind) -> Option<std::sync::Arc<str>> {
    let words = keys_of(kind).flat_map(|key| {
        std::iter::once((key.name, key.name)).chain(key.synonyms.iter().map(move |synonym| (*synonym, key.name)))
    });
    nearest(folded, words).map(|(word, _)| word.into())
}

/// The spelling a misspelt verb is nearest to, and the verb it stands for.
pub(crate) fn nearest_verb(folded: &str) -> Option<(&'static str, &'static str)> {
    let words = verbs().flat_map(|verb| {
        std::iter::once((verb.name, verb.name)).chain(verb.synonyms.iter().map(move |synonym| (*synonym, verb.name)))
    });
    nearest(folded, words)
}

fn nearest(
    folded: &str,
    words: impl Iterator<Item = (&'static str, &'static str)>,
) -> Option<(&'static str, &'static str)> {
    let mut best: Option<(f64, (&str, &str))> = None;
    for (word, meaning) in words {
        let score = strsim::normalized_damerau_levenshtein(folded, word);
        if score >= 0.6 && best.is_none_or(|(other, _)| score > other) {
            best = Some((score, (word, meaning)));
        }
    }
    best.map(|(_, found)| found)
}
