//! Which blocks of which files make up one recipe.
//!
//! A `recipe` block owns the blocks after it until the next `recipe`. Blocks before the first one, and what
//! `use` takes from other files, are shared. A file without a `recipe` block is one sheet of definitions.

use std::sync::Arc;

use tenter_quantity::Place;
use tenter_syntax::{Block, BlockKind, Document, Line, Span};

use crate::problem::{Problem, ProblemKind};
use crate::usage::{self, Library};

/// The blocks of one recipe, in reading order.
#[derive(Clone, Debug, Default)]
pub struct Sheet {
    /// The blocks; [`Place::block`] is an index into this list.
    pub blocks: Vec<SheetBlock>,
    /// Troubles met while following `use` lines.
    pub problems: Vec<Problem>,
}

/// A block of a sheet and where it comes from.
#[derive(Clone, Debug)]
pub struct SheetBlock {
    /// The file it stands in: `None` for the file being read, else the path inside the collection.
    pub file: Option<Arc<str>>,
    /// Index among the blocks of that file.
    pub position: usize,
    /// The block.
    pub block: Arc<Block>,
    /// Shared with other recipes (before the first `recipe`, or taken by `use`).
    pub shared: bool,
}

impl Sheet {
    /// The text at a place; empty when the place is not of this sheet.
    pub fn text(&self, place: Place) -> &str {
        self.blocks
            .get(place.block as usize)
            .map_or("", |entry| Span::new(place.start, place.end).of(&entry.block.text))
    }

    /// Whether the sheet is a recipe and not only definitions.
    pub fn recipe_block(&self) -> Option<usize> {
        self.blocks.iter().position(|entry| entry.block.kind == BlockKind::Recipe && !entry.shared)
    }
}

/// Splits a file into its sheets. `path` is the file's path inside its collection, for `use` lines.
pub fn sheets(document: &Document, path: &str, library: &dyn Library) -> Vec<Sheet> {
    let own = |position: usize, shared: bool| SheetBlock {
        file: None,
        position,
        block: Arc::clone(&document.blocks[position].block),
        shared,
    };
    let starts: Vec<usize> =
        (0..document.blocks.len()).filter(|&index| document.blocks[index].block.kind == BlockKind::Recipe).collect();
    let preamble_end = starts.first().copied().unwrap_or(document.blocks.len());
    let mut preamble = Sheet::default();
    for position in 0..preamble_end {
        let entry = own(position, !starts.is_empty());
        usage::follow(&entry, preamble.blocks.len(), path, library, &mut preamble);
    }
    if starts.is_empty() {
        return vec![preamble];
    }
    starts
        .iter()
        .enumerate()
        .map(|(number, &start)| {
            let end = starts.get(number + 1).copied().unwrap_or(document.blocks.len());
            let mut sheet = preamble.clone();
            for position in start..end {
                let entry = own(position, false);
                usage::follow(&entry, sheet.blocks.len(), path, library, &mut sheet);
            }
            sheet
        })
        .collect()
}

/// A line of a body with the block whose text it indexes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row<'a> {
    /// Index of the block the line stands in.
    pub block: u32,
    /// That block.
    pub owner: &'a Block,
    /// The line.
    pub line: &'a Line,
}

impl<'a> Row<'a> {
    /// A place on this line's block.
    pub fn place(&self, span: Span) -> Place {
        Place { block: self.block, start: span.start, end: span.end }
    }

    /// The text of a span.
    pub fn text(&self, span: Span) -> &'a str {
        span.of(&self.owner.text)
    }
}

/// A block with the lines that count for it, after a variant has had its say.
#[derive(Clone, Debug)]
pub(crate) struct Body<'a> {
    /// Index in the sheet.
    pub index: u32,
    /// The block.
    pub block: &'a Block,
    /// Shared with other recipes.
    pub shared: bool,
    /// Its lines in order.
    pub rows: Vec<Row<'a>>,
}

impl<'a> Body<'a> {
    /// A place in the block's own text.
    pub fn place(&self, span: Span) -> Place {
        Place { block: self.index, start: span.start, end: span.end }
    }

    /// The header's name as written.
    pub fn name(&self) -> &'a str {
        self.block.slice(self.block.name)
    }
}

/// The bodies of a sheet as they are written.
pub(crate) fn bodies(sheet: &Sheet) -> Vec<Body<'_>> {
    sheet
        .blocks
        .iter()
        .enumerate()
        .map(|(index, entry)| Body {
            index: index as u32,
            block: &entry.block,
            shared: entry.shared,
            rows: entry.block.lines.iter().map(|line| Row { block: index as u32, owner: &entry.block, line }).collect(),
        })
        .collect()
}

/// Troubles of the text itself, block by block.
pub(crate) fn oddities(bodies: &[Body<'_>], problems: &mut Vec<Problem>) {
    for body in bodies {
        problems.extend(
            body.block
                .oddities
                .iter()
                .map(|oddity| Problem { place: body.place(oddity.span), kind: ProblemKind::Oddity(oddity.kind) }),
        );
    }
}
