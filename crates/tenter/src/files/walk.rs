//! Which files are meant: those named, and every `.dye` file below a folder that no ignore file leaves out.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use ignore::WalkBuilder;

use crate::files::path::{absolute, shown};

/// The files to work on, each once, in the order of their shown names.
#[derive(Debug, Default)]
pub struct Found {
    /// Shown name and path.
    pub files: Vec<(String, PathBuf)>,
    /// Shown name and what is wrong with it.
    pub troubles: Vec<(String, String)>,
}

/// Looks for the files. A file named directly is taken whatever its ending and whatever ignore files say.
pub fn find(paths: &[PathBuf]) -> Found {
    let mut files = BTreeMap::new();
    let mut troubles = Vec::new();
    for path in paths {
        if path.is_dir() {
            below(path, &mut files, &mut troubles);
        } else {
            files.insert(shown(path), path.clone());
        }
    }
    // Two ways to write one path are one file.
    let mut met = BTreeMap::new();
    files.retain(|_, path| met.insert(absolute(path), ()).is_none());
    Found { files: files.into_iter().collect(), troubles }
}

fn below(folder: &Path, files: &mut BTreeMap<String, PathBuf>, troubles: &mut Vec<(String, String)>) {
    let walk = WalkBuilder::new(folder).require_git(false).follow_links(false).build();
    for entry in walk {
        let entry = match entry {
            Ok(entry) => entry,
            Err(error) => {
                troubles.push((shown(folder), error.to_string()));
                continue;
            }
        };
        if let Some(error) = entry.error() {
            troubles.push((shown(entry.path()), error.to_string()));
        }
        let dye = entry.path().extension().is_some_and(|ending| ending == "dye");
        // A link is not followed: what it points at may lie outside.
        if dye && entry.file_type().is_some_and(|kind| kind.is_file()) {
            files.insert(shown(entry.path()), entry.into_path());
        }
    }
}
