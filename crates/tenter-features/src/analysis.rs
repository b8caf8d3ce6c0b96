//! Everything worked out of one file, sheet by sheet; a sheet is worked out again only when its blocks changed.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use tenter_quantity::Place;
use tenter_rehearse::Rehearsal;
use tenter_resolve::{Problem, Recipe, Sheet, SheetBlock, sheets};
use tenter_rules::{Part, Scale, SheetFindings, Told, Verdict, check_sheet, gather};
use tenter_syntax::{Block, Span};

use crate::file::File;
use crate::names::Names;
use crate::text::{Location, Range};
use crate::workspace::Snapshot;

/// What a sheet's results depend on: its blocks, where they come from, and troubles with `use` lines.
struct Key {
    blocks: Vec<(Arc<Block>, Option<Arc<str>>, bool)>,
    problems: Vec<Problem>,
}

impl Key {
    fn of(sheet: &Sheet) -> Self {
        let part = |entry: &SheetBlock| (Arc::clone(&entry.block), entry.file.clone(), entry.shared);
        Self { blocks: sheet.blocks.iter().map(part).collect(), problems: sheet.problems.clone() }
    }

    fn fits(&self, sheet: &Sheet) -> bool {
        self.blocks.len() == sheet.blocks.len()
            && self.blocks.iter().zip(&sheet.blocks).all(|((block, file, shared), entry)| {
                Arc::ptr_eq(block, &entry.block) && *shared == entry.shared && *file == entry.file
            })
            && self.problems == sheet.problems
    }
}

/// The results of one sheet.
pub(crate) struct SheetAnalysis {
    key: Key,
    pub found: SheetFindings,
    names: OnceLock<Names>,
}

impl SheetAnalysis {
    fn new(sheet: &Sheet) -> Self {
        Self { key: Key::of(sheet), found: check_sheet(sheet, Scale::AsWritten), names: OnceLock::new() }
    }
}

impl std::fmt::Debug for SheetAnalysis {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("SheetAnalysis").field("blocks", &self.key.blocks.len()).finish_non_exhaustive()
    }
}

/// A file with everything worked out of it.
#[derive(Debug)]
pub struct FileAnalysis {
    /// The file.
    pub file: Arc<File>,
    /// Its findings, in order of their places, at the levels of the collection.
    pub findings: Vec<Told>,
    /// What the collection accepts, and why.
    pub accepted: Vec<(Told, String)>,
    sheets: Vec<(Sheet, Arc<SheetAnalysis>)>,
    imported: BTreeMap<Arc<str>, Arc<File>>,
    /// For each block of the file: the first sheet it is part of, and its number there.
    homes: Vec<Option<(usize, u32)>>,
}

/// A sheet with what is known of it.
#[derive(Clone, Copy)]
pub(crate) struct SheetView<'a> {
    pub index: usize,
    /// Which of its recipes is told of: 0 as written, then its variants.
    pub told: usize,
    pub sheet: &'a Sheet,
    of: &'a SheetAnalysis,
}

impl<'a> SheetView<'a> {
    /// The recipe told of: as written, or a variant of it.
    pub fn recipe(self) -> Option<&'a Recipe> {
        self.of.found.recipes.get(self.told)
    }

    /// That recipe carried out on paper.
    pub fn rehearsal(self) -> Option<&'a Rehearsal> {
        self.of.found.rehearsals.get(self.told)
    }

    /// The same sheet for each of its recipes.
    pub fn each(self) -> impl Iterator<Item = Self> {
        (0..self.of.found.recipes.len()).map(move |told| Self { told, ..self })
    }

    /// The recipe as written, then its variants.
    pub fn recipes(self) -> &'a [Recipe] {
        &self.of.found.recipes
    }

    /// What was found in all of them.
    pub fn findings(self) -> &'a SheetFindings {
        &self.of.found
    }

    /// The same sheet for the recipe a block belongs to: a variant's own, else the recipe as written.
    fn at(self, block: u32) -> Self {
        let place = |recipe: &Recipe| recipe.variant.as_ref().map(|name| name.place.block);
        let told = self.recipes().iter().position(|recipe| place(recipe) == Some(block)).unwrap_or(0);
        Self { told, ..self }
    }

    /// The names of the sheet and where they stand.
    pub fn names(self) -> &'a Names {
        self.of.names.get_or_init(|| Names::of(self.sheet, self.recipes().first()))
    }
}

impl FileAnalysis {
    /// Works a file out, taking over from `before` what still holds.
    pub(crate) fn new(file: Arc<File>, library: &Snapshot, before: Option<&Self>) -> Self {
        let sheets = sheets(&file.document, &file.path, library);
        let old = before.map(Kept::new);
        let sheets: Vec<(Sheet, Arc<SheetAnalysis>)> = sheets
            .into_iter()
            .map(|sheet| {
                let kept = old.as_ref().and_then(|old| old.find(&sheet));
                let analysis = kept.unwrap_or_else(|| Arc::new(SheetAnalysis::new(&sheet)));
                (sheet, analysis)
            })
            .collect();
        let parts: Vec<Part<'_>> = sheets.iter().map(|(sheet, of)| (sheet, &of.found)).collect();
        let mut accepted = Vec::new();
        let findings =
            gather(&parts).into_iter().filter_map(|mut told| match library.levels().apply(&mut told.finding) {
                Verdict::Told => Some(told),
                Verdict::Accepted(reason) => {
                    accepted.push((told, reason.to_owned()));
                    None
                }
                Verdict::Off => None,
            });
        let findings: Vec<Told> = findings.collect();
        let mut homes = vec![None; file.document.blocks.len()];
        let mut imported = BTreeMap::new();
        for (index, (sheet, _)) in sheets.iter().enumerate() {
            for (number, entry) in sheet.blocks.iter().enumerate() {
                match &entry.file {
                    None => {
                        if let Some(home @ None) = homes.get_mut(entry.position) {
                            *home = Some((index, number as u32));
                        }
                    }
                    Some(path) => {
                        if !imported.contains_key(path)
                            && let Some(file) = library.file(path)
                        {
                            imported.insert(Arc::clone(path), file);
                        }
                    }
                }
            }
        }
        Self { file, findings, accepted, sheets, imported, homes }
    }

    /// The sheets in order.
    pub(crate) fn sheets(&self) -> impl Iterator<Item = SheetView<'_>> {
        self.sheets.iter().enumerate().map(|(index, (sheet, of))| SheetView { index, told: 0, sheet, of })
    }

    /// A sheet by number.
    pub(crate) fn sheet(&self, index: usize) -> Option<SheetView<'_>> {
        self.sheets.get(index).map(|(sheet, of)| SheetView { index, told: 0, sheet, of })
    }

    /// The sheet a block of the file belongs to, and the block's number there.
    pub(crate) fn home(&self, position: usize) -> Option<(SheetView<'_>, u32)> {
        let (sheet, number) = (*self.homes.get(position)?)?;
        Some((self.sheet(sheet)?.at(number), number))
    }

    /// The sheet at an offset, the number of the block there, and the offset inside the block.
    pub(crate) fn home_at(&self, offset: usize) -> Option<(SheetView<'_>, u32, u32)> {
        let position = self.file.document.block_at(offset)?;
        let (view, number) = self.home(position)?;
        let start = self.file.block(position)?.start;
        Some((view, number, u32::try_from(offset - start).ok()?))
    }

    /// Where a place of a sheet stands.
    pub(crate) fn locate(&self, sheet: &Sheet, place: Place) -> Option<Location> {
        let entry = sheet.blocks.get(place.block as usize)?;
        let file = match &entry.file {
            None => &self.file,
            Some(path) => self.imported.get(path)?,
        };
        let range = file.range(entry.position, Span::new(place.start, place.end));
        Some(Location { path: Arc::clone(&file.path), start: range.start, end: range.end })
    }

    /// Where a place of a sheet stands, if in this file.
    pub(crate) fn locate_here(&self, sheet: &Sheet, place: Place) -> Option<Range> {
        let entry = sheet.blocks.get(place.block as usize).filter(|entry| entry.file.is_none())?;
        Some(self.file.range(entry.position, Span::new(place.start, place.end)))
    }

    /// Where something was written, in words: `line 31`, `house.dye line 4`.
    pub(crate) fn written(&self, sheet: &Sheet, place: Place) -> String {
        let Some(location) = self.locate(sheet, place) else { return String::new() };
        if location.path == self.file.path {
            return format!("line {}", self.file.line_number(location.start));
        }
        let line = self.imported.get(&location.path).map_or(0, |file| file.line_number(location.start));
        format!("{} line {line}", location.path)
    }
}

/// The results of a file as it was, ready to be looked through.
struct Kept<'a> {
    by_block: BTreeMap<*const Block, Vec<&'a Arc<SheetAnalysis>>>,
}

impl<'a> Kept<'a> {
    fn new(before: &'a FileAnalysis) -> Self {
        let mut by_block: BTreeMap<*const Block, Vec<&'a Arc<SheetAnalysis>>> = BTreeMap::new();
        for (sheet, analysis) in &before.sheets {
            if let Some(block) = mark(sheet) {
                by_block.entry(block).or_default().push(analysis);
            }
        }
        Self { by_block }
    }

    fn find(&self, sheet: &Sheet) -> Option<Arc<SheetAnalysis>> {
        let candidates = self.by_block.get(&mark(sheet)?)?;
        candidates.iter().find(|analysis| analysis.key.fits(sheet)).map(|analysis| Arc::clone(analysis))
    }
}

/// A block that tells sheets of one file apart: the recipe's own, else the first.
fn mark(sheet: &Sheet) -> Option<*const Block> {
    let own = sheet.recipe_block().and_then(|index| sheet.blocks.get(index));
    own.or(sheet.blocks.first()).map(|entry| Arc::as_ptr(&entry.block))
}
