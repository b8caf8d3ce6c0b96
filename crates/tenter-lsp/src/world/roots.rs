//! Collections and where they lie, found as the command finds them: up to the nearest mark, else the folder that was
//! opened, else the document's own.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_features::Workspace;
use tower_lsp::lsp_types::Url;

use crate::outside;
use crate::uris;

/// A collection and where it lies.
pub(super) struct Root {
    /// Its folder; none for a document that is not a file.
    pub folder: Option<Arc<Path>>,
    /// Holds what lies below its folder too, not only what lies in it.
    pub deep: bool,
    pub workspace: Workspace,
    /// Its folder was read, or is being read. Folders the client opened are read as wholes, whatever collections lie
    /// in them, and are not counted here.
    pub read: bool,
    /// Paths of `use` lines behind which there is no file.
    pub absent: BTreeSet<String>,
}

impl Root {
    /// A collection with what its configuration says; what is to be told of that goes to `remarks`.
    pub fn new(folder: Option<Arc<Path>>, deep: bool, remarks: &mut Vec<String>) -> Self {
        let read = folder.is_none() || deep;
        let mut root = Self { folder, deep, workspace: Workspace::new(), read, absent: BTreeSet::new() };
        root.configure(remarks);
        root
    }

    /// Reads the configuration of the collection.
    pub fn configure(&mut self, remarks: &mut Vec<String>) {
        let read = self.folder.as_deref().and_then(outside::configuration).unwrap_or_default();
        self.workspace.set_levels(read.levels);
        remarks.extend(read.remarks);
    }

    /// Reads the files that an open one takes from, and those they take from, where nobody has read them yet. What a
    /// document needs is there with its first answer.
    pub fn fetch(&mut self, path: &str) {
        let Some(folder) = self.folder.clone() else { return };
        for _ in 0..ROUNDS {
            let mut wanted = self.workspace.missing_uses(path);
            wanted.retain(|path| !self.absent.contains(path));
            if wanted.is_empty() {
                return;
            }
            let (mut found, mut absent) = (Vec::new(), Vec::new());
            for path in wanted {
                match outside::read_inside(&folder, &path) {
                    Some(text) => found.push((Arc::from(path), Some(text))),
                    None => absent.push(path),
                }
            }
            self.absent.extend(absent);
            self.workspace.store(found);
        }
    }
}

/// Files that take from files are followed so deep.
const ROUNDS: usize = 16;

/// Where a document belongs: the folder of its collection, whether that holds what lies below too, and the document's
/// path there. `opened` are the folders the client opened.
pub(super) fn home<'a>(uri: &Url, opened: impl Iterator<Item = &'a Path>) -> (Option<PathBuf>, bool, String) {
    // A document that is no file is alone in its collection.
    let Some(path) = uris::to_path(uri) else { return (None, false, uri.to_string()) };
    let Some(own) = path.parent().map(Path::to_path_buf) else { return (None, false, uri.to_string()) };
    let marked = outside::marked_folder(&own);
    let found = marked.or_else(|| innermost(&own, opened));
    let (folder, deep) = match found {
        Some(folder) => (folder, true),
        None => (own, false),
    };
    match uris::inside(&folder, &path) {
        Some(inside) => (Some(folder), deep, inside),
        None => (None, false, uri.to_string()),
    }
}

/// The innermost of some folders that holds a path.
pub(super) fn innermost<'a>(path: &Path, folders: impl Iterator<Item = &'a Path>) -> Option<PathBuf> {
    folders
        .filter(|folder| path.starts_with(folder))
        .max_by_key(|folder| folder.components().count())
        .map(Path::to_path_buf)
}

/// The collections a file may belong to and its path there, the innermost first. Nothing is asked of the disk.
pub(super) fn candidates<'a>(roots: impl Iterator<Item = (Option<&'a Path>, bool)>, uri: &Url) -> Vec<(usize, String)> {
    let Some(path) = uris::to_path(uri) else { return Vec::new() };
    let mut found: Vec<(bool, usize, usize, String)> = roots
        .enumerate()
        .filter_map(|(index, (folder, deep))| {
            let folder = folder?;
            let inside = uris::inside(folder, &path)?;
            (deep || !inside.contains('/')).then(|| (deep, folder.components().count(), index, inside))
        })
        .collect();
    found.sort_by_key(|(deep, depth, index, _)| (std::cmp::Reverse((*deep, *depth)), *index));
    found.into_iter().map(|(_, _, index, inside)| (index, inside)).collect()
}
