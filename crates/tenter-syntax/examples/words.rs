//! Prints the words an editor's grammar colours, as JSON: kinds of block, verbs, keys of each kind, connecting words, units.
#![allow(clippy::print_stdout)]

use std::collections::{BTreeMap, BTreeSet};

use serde_json::json;
use tenter_quantity::table;
use tenter_syntax::{BlockKind, Connector, KINDS, keys_of, verbs};

/// Every spelling of the keys a kind of block may have, either those whose value is prose or the others.
fn keys(kind: BlockKind, prose: bool) -> BTreeSet<&'static str> {
    let among_steps = (kind == BlockKind::Steps && !prose).then_some("accept");
    keys_of(kind)
        .filter(|key| key.prose == prose)
        .flat_map(|key| std::iter::once(key.name).chain(key.synonyms.iter().copied()))
        .chain(among_steps)
        .collect()
}

/// `accept` and `note` may stand among steps and are no steps.
const NO_STEPS: [&str; 2] = ["accept", "note"];

fn units() -> BTreeSet<&'static str> {
    let doubtful =
        table::DOUBTFUL.iter().map(|row| row.spelling).filter(|spelling| Connector::from_word(spelling).is_none());
    table::all().flat_map(|unit| unit.spellings.iter().copied()).chain(doubtful).collect()
}

fn main() {
    let kinds: Vec<_> = KINDS
        .iter()
        .map(|row| {
            json!({
                "name": row.name,
                "synonyms": row.synonyms,
                "keys": keys(row.kind, false),
                "prose": keys(row.kind, true),
            })
        })
        .collect();
    let verbs: BTreeSet<_> = verbs()
        .filter(|verb| !NO_STEPS.contains(&verb.name))
        .flat_map(|verb| std::iter::once(verb.name).chain(verb.synonyms.iter().copied()))
        .collect();
    let all: BTreeMap<_, _> = BTreeMap::from([
        ("kinds", json!(kinds)),
        ("verbs", json!(verbs)),
        ("connectors", json!(Connector::all().map(Connector::word).collect::<Vec<_>>())),
        ("units", json!(units())),
    ]);
    println!("{:#}", json!(all));
}
