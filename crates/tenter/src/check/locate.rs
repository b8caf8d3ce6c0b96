//! From places in a sheet to files, lines and columns.

use std::sync::Arc;

use serde::Serialize;
use tenter_quantity::Place;
use tenter_resolve::Sheet;

use crate::files::collection::Collection;
use crate::files::source::SourceFile;

/// A stretch of a file: lines and columns from 1, columns in characters, the end one past the last character.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Stretch {
    /// Shown name of the file.
    pub file: String,
    /// Line of the first character.
    pub line: u32,
    /// Column of the first character.
    pub column: u32,
    /// Line of the end.
    pub end_line: u32,
    /// Column one past the last character.
    pub end_column: u32,
    /// The bytes in the file's text.
    #[serde(skip)]
    pub bytes: (usize, usize),
    /// Whether it is the file being checked.
    #[serde(skip)]
    pub own: bool,
}

/// What is needed to find a place.
pub struct Locator<'a> {
    /// The blocks places refer to.
    pub sheet: &'a Sheet,
    /// The file being checked.
    pub file: &'a SourceFile,
    /// Where other files come from.
    pub collection: &'a Collection,
}

impl Locator<'_> {
    /// The stretch of a place, in whichever file it stands.
    pub fn stretch(&self, place: Place) -> Option<Stretch> {
        let entry = self.sheet.blocks.get(place.block as usize)?;
        match &entry.file {
            None => stretch(self.file, entry.position, place, true),
            Some(path) => {
                let other: Arc<SourceFile> = self.collection.file(path)?;
                stretch(&other, entry.position, place, false)
            }
        }
    }
}

fn stretch(file: &SourceFile, position: usize, place: Place, own: bool) -> Option<Stretch> {
    let block = file.document.blocks.get(position)?;
    Some(Stretch::of(file, block.start + place.start as usize, block.start + place.end as usize, own))
}

impl Stretch {
    /// The stretch between two bytes of a file.
    pub fn of(file: &SourceFile, start: usize, end: usize, own: bool) -> Self {
        let (from, to) = (file.spot(start), file.spot(end));
        Self {
            file: file.name.clone(),
            line: from.line,
            column: from.column,
            end_line: to.line,
            end_column: to.column,
            bytes: (start.min(file.text.len()), end.min(file.text.len())),
            own,
        }
    }
}
