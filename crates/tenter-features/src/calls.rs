//! Who draws on whom: steps and mixes on mixes, files on files.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_syntax::BlockKind;

use crate::names::SymbolKind;
use crate::navigation::{name_at, references};
use crate::text::{Location, Range};
use crate::workspace::Snapshot;

/// A mix, a group of steps, or a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Party {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: PartyKind,
    /// The file it stands in.
    pub path: Arc<str>,
    /// All of it.
    pub range: Range,
    /// Its name.
    pub name_range: Range,
}

/// Files meet as wholes: no place in them is to be shown.
const NOWHERE: Range = 0..0;

/// Kinds of party.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum PartyKind {
    Mix,
    Steps,
    File,
}

/// The party at an offset: the mix whose name stands there, the group of steps there, else the file on its `use` line.
pub fn prepare(snapshot: &Snapshot, path: &str, offset: usize) -> Option<Party> {
    let analysis = snapshot.analyse(path)?;
    if let Some(found) = name_at(&analysis, offset)
        && matches!(found.symbol.kind, SymbolKind::Mix | SymbolKind::Steps)
        && let Some(declared) = &found.declared
    {
        return block_party(snapshot, declared);
    }
    let position = analysis.file.document.block_at(offset)?;
    let placed = analysis.file.block(position)?;
    match placed.block.kind {
        BlockKind::Use | BlockKind::Edition | BlockKind::Recipe
            if placed.block.keyword.touches(u32::try_from(offset - placed.start).ok()?) =>
        {
            Some(file_party(&analysis.file.path))
        }
        _ => None,
    }
}

fn file_party(path: &Arc<str>) -> Party {
    Party { name: path.to_string(), kind: PartyKind::File, path: Arc::clone(path), range: 0..0, name_range: 0..0 }
}

/// The mix or group of steps whose block holds a place.
fn block_party(snapshot: &Snapshot, at: &Location) -> Option<Party> {
    let file = snapshot.file_once(&at.path)?;
    let position = file.document.block_at(at.start)?;
    let placed = file.block(position)?;
    let kind = match placed.block.kind {
        BlockKind::Mix => PartyKind::Mix,
        BlockKind::Steps => PartyKind::Steps,
        _ => return None,
    };
    let named = if placed.block.name.is_empty() { placed.block.keyword } else { placed.block.name };
    let held = placed.block.text.trim_end().len();
    Some(Party {
        name: placed.block.slice(named).to_owned(),
        kind,
        path: Arc::clone(&at.path),
        range: placed.start..placed.start + held,
        name_range: file.range(position, named),
    })
}

/// Who draws on a party, and where.
pub fn incoming(snapshot: &Snapshot, party: &Party) -> Vec<(Party, Vec<Range>)> {
    if party.kind == PartyKind::File {
        let mut found = Vec::new();
        for (path, outline) in snapshot.outlines() {
            if outline.uses.contains(&party.path) {
                found.push((file_party(&path), vec![NOWHERE]));
            }
        }
        return found;
    }
    let mut by_block: BTreeMap<(Arc<str>, usize), (Party, Vec<Range>)> = BTreeMap::new();
    for place in references(snapshot, &party.path, party.name_range.start, false) {
        if let Some(user) = block_party(snapshot, &place) {
            let key = (Arc::clone(&user.path), user.range.start);
            by_block.entry(key).or_insert_with(|| (user, Vec::new())).1.push(place.range());
        }
    }
    by_block.into_values().collect()
}

/// What a party draws on, and where in it.
pub fn outgoing(snapshot: &Snapshot, party: &Party) -> Vec<(Party, Vec<Range>)> {
    if party.kind == PartyKind::File {
        let outlines = snapshot.outlines().find(|(path, _)| *path == party.path);
        let uses = outlines.map(|(_, outline)| outline.uses.clone()).unwrap_or_default();
        return uses.iter().filter(|path| snapshot.has(path)).map(|path| (file_party(path), vec![NOWHERE])).collect();
    }
    let Some(analysis) = snapshot.analyse(&party.path) else { return Vec::new() };
    let mut found: BTreeMap<(Arc<str>, usize), (Party, Vec<Range>)> = BTreeMap::new();
    let Some(position) = analysis.file.document.block_at(party.range.start) else { return Vec::new() };
    let Some((view, number)) = analysis.home(position) else { return Vec::new() };
    let names = view.names();
    for occurrence in names.occurrences.iter().filter(|it| it.place.block == number && !it.declares) {
        let Some(symbol) = names.symbols.get(occurrence.symbol) else { continue };
        let mixes = matches!(symbol.kind, SymbolKind::Mix | SymbolKind::Steps);
        if let (true, Some(declared)) = (mixes, symbol.declared)
            && let Some(at) = analysis.locate(view.sheet, declared)
            && let Some(target) = block_party(snapshot, &at)
            && let Some(range) = analysis.locate_here(view.sheet, occurrence.place)
        {
            let key = (Arc::clone(&target.path), target.range.start);
            found.entry(key).or_insert_with(|| (target, Vec::new())).1.push(range);
        }
    }
    found.into_values().collect()
}
