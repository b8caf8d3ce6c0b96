//! Reading collections and telling findings by line, for the tests beside this folder.
#![allow(dead_code, clippy::disallowed_methods)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_resolve::Library;
use tenter_rules::{Checked, Finding, Place, Scale, check_document};
use tenter_syntax::{Document, Encoding, LineIndex};

/// A folder of this package.
pub fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// The `.dye` files of a folder with their texts, in order of their names.
pub fn collection(name: &str) -> Vec<(String, String)> {
    let mut files: Vec<(String, String)> = std::fs::read_dir(folder(name))
        .expect("the folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "dye"))
        .map(|path| {
            let name = path.file_name().expect("a name").to_string_lossy().into_owned();
            (name, std::fs::read_to_string(&path).expect("a text"))
        })
        .collect();
    files.sort();
    assert!(!files.is_empty(), "no recipes in {name}");
    files
}

/// The files of one folder.
pub struct Folder(pub PathBuf);

impl Library for Folder {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        std::fs::read_to_string(self.0.join(path)).ok().map(|text| Arc::new(Document::parse(&text)))
    }
}

/// A file read and checked.
pub struct Read {
    pub text: String,
    pub document: Document,
    pub checked: Checked,
}

pub fn read(text: &str, name: &str, library: &dyn Library) -> Read {
    let document = Document::parse(text);
    let checked = check_document(&document, name, library, Scale::AsWritten);
    Read { text: text.to_owned(), document, checked }
}

impl Read {
    /// Byte offset of a place in the file; `None` in another file.
    pub fn offset(&self, sheet: usize, place: Place) -> Option<usize> {
        let entry = self.checked.sheets.get(sheet)?.blocks.get(place.block as usize)?;
        if entry.file.is_some() {
            return None;
        }
        Some(self.document.blocks.get(entry.position)?.start + place.start as usize)
    }

    /// Line of a place, from 1; 0 in another file.
    pub fn line(&self, sheet: usize, place: Place) -> usize {
        let index = LineIndex::new(&self.text);
        self.offset(sheet, place)
            .map_or(0, |offset| index.position(&self.text, offset, Encoding::Utf8).line as usize + 1)
    }

    /// Line, rule and finding of all that is not accepted.
    pub fn told(&self) -> Vec<(usize, &'static str, &Finding)> {
        self.checked
            .findings
            .iter()
            .filter(|told| told.finding.accepted.is_none())
            .map(|told| (self.line(told.sheet, told.finding.place), told.finding.rule, &told.finding))
            .collect()
    }
}

/// A finding in one line, for messages of failed tests.
pub fn brief(line: usize, finding: &Finding) -> String {
    format!("line {line}: {} {}: {} | {}", finding.level.word(), finding.rule, finding.message, finding.help)
}
