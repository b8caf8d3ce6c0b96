//! Which blocks a block needs: what it names, what those name, and what it takes from other files.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use tenter_syntax::BlockKind;

use crate::analysis::{FileAnalysis, SheetView};
use crate::names::SymbolKind;

/// What a block needs to mean the same elsewhere.
#[derive(Debug, Default)]
pub(super) struct Needs {
    /// Numbers of blocks of the sheet, the block itself among them, all of this file.
    pub blocks: BTreeSet<u32>,
    /// Names taken from other files, by file.
    pub taken: BTreeMap<Arc<str>, BTreeSet<String>>,
}

/// Follows the names of a block.
pub(super) fn of(view: SheetView<'_>, block: u32) -> Needs {
    let names = view.names();
    let mut needs = Needs::default();
    let mut waiting = vec![block];
    while let Some(block) = waiting.pop() {
        if !needs.blocks.insert(block) {
            continue;
        }
        for occurrence in names.occurrences.iter().filter(|it| it.place.block == block && !it.declares) {
            let Some(declared) = names.symbols.get(occurrence.symbol).and_then(|symbol| symbol.declared) else {
                continue;
            };
            let Some(entry) = view.sheet.blocks.get(declared.block as usize) else { continue };
            match &entry.file {
                None => waiting.push(declared.block),
                Some(file) => {
                    let name = entry.block.slice(entry.block.name).trim_matches('"').to_owned();
                    needs.taken.entry(Arc::clone(file)).or_default().insert(name);
                }
            }
        }
    }
    needs
}

/// The names declared in some blocks of the file (by position) that stand elsewhere in it, and whether one of them
/// stands where a `use` would not do: a variant changes lines of its own recipe only.
pub(super) fn wanted_elsewhere(analysis: &FileAnalysis, moved: &BTreeSet<usize>) -> (Vec<String>, bool) {
    let mut wanted: BTreeMap<(usize, u32), String> = BTreeMap::new();
    let mut changed = false;
    for view in analysis.sheets() {
        let position = |block: u32| {
            view.sheet
                .blocks
                .get(block as usize)
                .filter(|entry| entry.file.is_none())
                .map(|entry| (entry.position, entry.block.kind))
        };
        let names = view.names();
        for occurrence in names.occurrences.iter().filter(|it| !it.declares) {
            let Some(symbol) = names.symbols.get(occurrence.symbol) else { continue };
            let Some(declared) = symbol.declared else { continue };
            let (Some((home, _)), Some((here, kind))) = (position(declared.block), position(occurrence.place.block))
            else {
                continue;
            };
            if !moved.contains(&home) || moved.contains(&here) {
                continue;
            }
            changed |= matches!(kind, BlockKind::Variant);
            // A zone comes along with its layout.
            let owner = if symbol.kind == SymbolKind::Zone {
                analysis.file.block(home).map(|placed| placed.block.slice(placed.block.name).to_owned())
            } else {
                Some(symbol.name.clone())
            };
            wanted.extend(owner.map(|name| ((home, 0), name)));
        }
    }
    (wanted.into_values().collect(), changed)
}
