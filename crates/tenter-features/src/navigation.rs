//! From a name to its declaration and to every place it stands.

use std::sync::Arc;

use tenter_reference::Entry;
use tenter_resolve::inside_collection;
use tenter_resolve::usage::read_use;
use tenter_syntax::BlockKind;

use crate::analysis::{FileAnalysis, SheetView};
use crate::names::{Occurrence, Symbol, SymbolKind};
use crate::text::{Location, Range};
use crate::workspace::Snapshot;

/// A name at a place, and what it stands for.
pub(crate) struct Found<'a> {
    pub view: SheetView<'a>,
    pub occurrence: &'a Occurrence,
    pub symbol: &'a Symbol,
    /// Where it is declared.
    pub declared: Option<Location>,
}

/// The name at an offset.
pub(crate) fn name_at(analysis: &FileAnalysis, offset: usize) -> Option<Found<'_>> {
    let (view, block, at) = analysis.home_at(offset)?;
    let (occurrence, symbol) = view.names().at(block, at)?;
    let declared = symbol.declared.and_then(|place| analysis.locate(view.sheet, place));
    Some(Found { view, occurrence, symbol, declared })
}

/// Where the name at an offset is declared; on the path of a `use` line, that file.
pub fn definition(snapshot: &Snapshot, path: &str, offset: usize) -> Vec<Location> {
    let Some(analysis) = snapshot.analyse(path) else { return Vec::new() };
    if let Some(target) = used_file(&analysis, offset) {
        let there = snapshot.has(&target);
        let start = Location { path: target, start: 0, end: 0 };
        return if there { vec![start] } else { Vec::new() };
    }
    name_at(&analysis, offset).and_then(|found| found.declared).into_iter().collect()
}

/// The file a `use` line names, when the offset is on its path.
fn used_file(analysis: &FileAnalysis, offset: usize) -> Option<Arc<str>> {
    let position = analysis.file.document.block_at(offset)?;
    let placed = analysis.file.block(position).filter(|placed| placed.block.kind == BlockKind::Use)?;
    let request = read_use(placed.block.slice(placed.block.name), placed.block.name.start).ok()?;
    let at = u32::try_from(offset - placed.start).ok()?;
    if !request.path.1.touches(at) {
        return None;
    }
    inside_collection(&analysis.file.path, request.path.0).ok().map(Arc::from)
}

/// The reference entry behind the name at an offset.
pub fn reference_entry(snapshot: &Snapshot, path: &str, offset: usize) -> Option<Entry<'static>> {
    let analysis = snapshot.analyse(path)?;
    let found = name_at(&analysis, offset)?;
    found.symbol.entry.or_else(|| {
        let recipe = found.view.recipe()?;
        let declared = found.symbol.declared?;
        let material = recipe.materials.iter().find(|material| material.declared == Some(declared))?;
        material.reference.map(Entry::Material).or(material.dye.map(Entry::Dye)).or(material.class.map(Entry::Class))
    })
}

/// Every place of this file where the name at an offset stands; the declarations marked.
pub fn highlights(snapshot: &Snapshot, path: &str, offset: usize) -> Vec<(Range, bool)> {
    let Some(analysis) = snapshot.analyse(path) else { return Vec::new() };
    let Some(found) = name_at(&analysis, offset) else { return Vec::new() };
    let target = Target::of(&found);
    let mut places = Vec::new();
    occurrences(&analysis, &target, &mut |location, declares| {
        if location.path == analysis.file.path {
            places.push((location.range(), declares));
        }
    });
    places.sort_by_key(|(range, declares)| (range.start, range.end, !declares));
    places.dedup_by_key(|(range, _)| range.clone());
    places
}

/// Every place of the collection where the name at an offset stands.
pub fn references(snapshot: &Snapshot, path: &str, offset: usize, declaration: bool) -> Vec<Location> {
    let Some(analysis) = snapshot.analyse(path) else { return Vec::new() };
    let Some(found) = name_at(&analysis, offset) else { return Vec::new() };
    let mut places: Vec<Location> = Vec::new();
    everywhere(snapshot, &analysis, &Target::of(&found), &mut |location, declares| {
        if declaration || !declares {
            places.push(location);
        }
    });
    places.sort();
    places.dedup();
    places
}

/// What is looked for: a declaration, or a name of the reference data within one file.
pub(crate) struct Target {
    declared: Option<Location>,
    kind: SymbolKind,
    key: String,
}

impl Target {
    pub fn of(found: &Found<'_>) -> Self {
        Self { declared: found.declared.clone(), kind: found.symbol.kind, key: found.symbol.key.clone() }
    }

    fn is(&self, analysis: &FileAnalysis, view: SheetView<'_>, symbol: &Symbol) -> bool {
        if symbol.kind != self.kind || symbol.key != self.key {
            return false;
        }
        match (&self.declared, symbol.declared) {
            (Some(wanted), Some(place)) => analysis.locate(view.sheet, place).as_ref() == Some(wanted),
            (None, None) => true,
            _ => false,
        }
    }
}

/// Gives every place the target stands, in this file and in those that use the file it is declared in.
pub(crate) fn everywhere(
    snapshot: &Snapshot,
    analysis: &FileAnalysis,
    target: &Target,
    give: &mut dyn FnMut(Location, bool),
) {
    let Some(declared) = &target.declared else {
        occurrences(analysis, target, give);
        return;
    };
    let mut paths = snapshot.users(&declared.path);
    paths.push(Arc::clone(&declared.path));
    for path in paths {
        if path == analysis.file.path {
            occurrences(analysis, target, give);
        } else if let Some(other) = snapshot.analyse(&path) {
            occurrences(&other, target, give);
        }
    }
}

fn occurrences(analysis: &FileAnalysis, target: &Target, give: &mut dyn FnMut(Location, bool)) {
    for view in analysis.sheets() {
        let names = view.names();
        let wanted: Vec<bool> = names.symbols.iter().map(|symbol| target.is(analysis, view, symbol)).collect();
        for occurrence in &names.occurrences {
            if wanted.get(occurrence.symbol) == Some(&true)
                && let Some(location) = analysis.locate(view.sheet, occurrence.place)
                && location.path == analysis.file.path
            {
                give(location, occurrence.declares);
            }
        }
    }
}
