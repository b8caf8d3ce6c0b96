//! Recipes from text.
#![allow(dead_code, clippy::unwrap_used, clippy::disallowed_methods)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_resolve::{Library, NoLibrary, Recipe, Scale, resolve, sheets};
use tenter_syntax::Document;

pub struct Folder(pub PathBuf);

impl Library for Folder {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        std::fs::read_to_string(self.0.join(path)).ok().map(|text| Arc::new(Document::parse(&text)))
    }
}

/// Every recipe and variant of a text, without other files.
pub fn recipes(text: &str) -> Vec<Recipe> {
    scaled(text, Scale::AsWritten)
}

pub fn scaled(text: &str, scale: Scale) -> Vec<Recipe> {
    let document = Document::parse(text);
    sheets(&document, "test.dye", &NoLibrary).iter().flat_map(|sheet| resolve(sheet, scale)).collect()
}

/// The first recipe of a text.
pub fn recipe(text: &str) -> Recipe {
    recipes(text).remove(0)
}

/// The bundled example recipes with their file names.
pub fn bundled() -> Vec<(String, Recipe)> {
    files("../../tests/recipes")
}

/// Every recipe of the files in a folder beside this crate.
pub fn files(folder: &str) -> Vec<(String, Recipe)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut paths: Vec<PathBuf> = std::fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .collect();
    paths.sort();
    let mut out = Vec::new();
    for path in paths {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let document = Document::parse(&std::fs::read_to_string(&path).unwrap());
        for sheet in sheets(&document, &name, &Folder(folder.clone())) {
            out.extend(resolve(&sheet, Scale::AsWritten).into_iter().map(|recipe| (name.clone(), recipe)));
        }
    }
    out
}
