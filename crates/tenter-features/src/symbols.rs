//! The outline of a file, and names across the collection.

use tenter_syntax::{BlockKind, kind_row};

use crate::file::File;
use crate::names::{SymbolKind, zone_name};
use crate::text::{Location, Range};
use crate::workspace::Snapshot;

/// A named part of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Symbol {
    /// Its name.
    pub name: String,
    /// What it is, in a word or two.
    pub detail: String,
    /// What it is.
    pub kind: SymbolKind,
    /// All of it.
    pub range: Range,
    /// Its name.
    pub name_range: Range,
    /// What it holds.
    pub children: Vec<Symbol>,
}

/// The outline of a file: recipes hold the blocks under them, layouts their zones.
pub fn document(file: &File) -> Vec<Symbol> {
    let mut top: Vec<Symbol> = Vec::new();
    let mut in_recipe = false;
    for (position, placed) in file.document.blocks.iter().enumerate() {
        let block = &placed.block;
        let Some(kind) = kind_of(block.kind) else { continue };
        let row = kind_row(block.kind).map_or("", |row| row.name);
        let written = block.slice(block.name);
        let name = if written.is_empty() { row.to_owned() } else { written.to_owned() };
        let held = block.text.trim_end().len();
        let name_range = file.range(position, if block.name.is_empty() { block.keyword } else { block.name });
        let range = placed.start..(placed.start + held).max(name_range.end);
        let children = zones(file, position);
        let symbol = Symbol { name, detail: row.to_owned(), kind, range, name_range, children };
        if block.kind == BlockKind::Recipe {
            in_recipe = true;
            top.push(symbol);
        } else if in_recipe && let Some(recipe) = top.last_mut() {
            recipe.range.end = recipe.range.end.max(symbol.range.end);
            recipe.children.push(symbol);
        } else {
            top.push(symbol);
        }
    }
    top
}

fn zones(file: &File, position: usize) -> Vec<Symbol> {
    let Some(placed) = file.block(position).filter(|placed| placed.block.kind == BlockKind::Layout) else {
        return Vec::new();
    };
    let block = &placed.block;
    block
        .lines
        .iter()
        .filter_map(|line| {
            let span = zone_name(block, line)?;
            Some(Symbol {
                name: block.slice(span).to_owned(),
                detail: "zone".to_owned(),
                kind: SymbolKind::Zone,
                range: file.range(position, line.span.cover(span)),
                name_range: file.range(position, span),
                children: Vec::new(),
            })
        })
        .collect()
}

fn kind_of(kind: BlockKind) -> Option<SymbolKind> {
    match kind {
        BlockKind::Log | BlockKind::Shelf => Some(SymbolKind::Variant),
        other => SymbolKind::of_block(other),
    }
}

/// A name of the collection.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The name.
    pub name: String,
    /// What it is.
    pub kind: SymbolKind,
    /// Where it is declared.
    pub at: Location,
}

/// The declared names of the collection that hold `query`, at most `most`.
pub fn workspace(snapshot: &Snapshot, query: &str, most: usize) -> Vec<Named> {
    let mut found = Vec::new();
    for (path, outline) in snapshot.outlines() {
        for entry in outline.named(query) {
            let Some(kind) = kind_of(entry.kind) else { continue };
            let at = Location { path: path.clone(), start: entry.at.start, end: entry.at.end };
            found.push(Named { name: entry.name.to_string(), kind, at });
            if found.len() >= most {
                return found;
            }
        }
    }
    found
}
