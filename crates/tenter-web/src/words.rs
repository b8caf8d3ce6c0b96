//! Help while writing: proposals, what stands under the pointer, a recipe for another number of pieces.

use serde::Serialize;
use tenter_features::actions::scale;
use tenter_features::completion::{ItemKind, complete as proposals, documentation};
use tenter_features::{Snapshot, hover as under};

use crate::look::Change;
use crate::offsets::Offsets;

/// A proposal.
#[derive(Debug, Serialize)]
pub struct Proposal {
    from: usize,
    to: usize,
    label: String,
    kind: &'static str,
    detail: String,
    insert: String,
    snippet: bool,
}

/// The proposals at a byte of a text, the likeliest first.
pub fn complete(snapshot: &Snapshot, path: &str, at: usize) -> Vec<Proposal> {
    let Some(file) = snapshot.file(path) else { return Vec::new() };
    let offsets = Offsets::new(&file);
    let proposal = |item: tenter_features::completion::Completion| {
        let (from, to) = offsets.units(&item.range);
        Proposal {
            from,
            to,
            kind: word(item.kind),
            label: item.label,
            detail: item.detail,
            insert: item.insert,
            snippet: item.snippet,
        }
    };
    proposals(snapshot, path, at).into_iter().map(proposal).collect()
}

/// The kinds of proposals that have words of their own, with their names.
const DESCRIBED: [ItemKind; 5] = [ItemKind::Block, ItemKind::Verb, ItemKind::Material, ItemKind::Value, ItemKind::Rule];

/// The words beside a proposal, in Markdown; empty where there is nothing to say.
pub fn describe(kind: &str, label: &str) -> String {
    let kind = DESCRIBED.into_iter().find(|known| word(*known) == kind);
    kind.map(|kind| documentation(kind, label)).unwrap_or_default()
}

const fn word(kind: ItemKind) -> &'static str {
    match kind {
        ItemKind::Block => "block",
        ItemKind::Verb => "verb",
        ItemKind::Key => "key",
        ItemKind::Clause => "clause",
        ItemKind::Goods => "goods",
        ItemKind::Mix => "mix",
        ItemKind::Material => "material",
        ItemKind::Layout => "layout",
        ItemKind::Zone => "zone",
        ItemKind::Vessel => "vessel",
        ItemKind::Steps => "steps",
        ItemKind::Unit => "unit",
        ItemKind::Value => "value",
        ItemKind::Rule => "rule",
        ItemKind::File => "file",
    }
}

/// What stands under the pointer.
#[derive(Debug, Serialize)]
pub struct Under {
    from: usize,
    to: usize,
    markdown: String,
}

/// What stands at a byte of a text.
pub fn hover(snapshot: &Snapshot, path: &str, at: usize) -> Option<Under> {
    let file = snapshot.file(path)?;
    let found = under::hover(snapshot, path, at)?;
    let (from, to) = Offsets::new(&file).units(&found.range);
    Some(Under { from, to, markdown: found.markdown })
}

/// The changes that make the recipe at a byte one for so many pieces.
pub fn scaled(snapshot: &Snapshot, path: &str, at: usize, pieces: f64) -> Option<Vec<Change>> {
    let analysis = snapshot.analyse(path)?;
    let offsets = Offsets::new(&analysis.file);
    Some(scale(&analysis, at, pieces)?.iter().map(|edit| Change::of(edit, &offsets)).collect())
}
