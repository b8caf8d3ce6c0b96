//! A collection: a folder and all recipes in it and below, within which one file may `use` another.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use tenter_config::MARKS;
use tenter_resolve::Library;
use tenter_syntax::Document;

use crate::files::path::{absolute, shown, slashed};
use crate::files::source::SourceFile;

/// The files of one collection that were asked for so far.
#[derive(Debug)]
pub struct Collection {
    root: PathBuf,
    /// By path inside the collection; `None` for one that is not there or must not be read.
    read: Mutex<BTreeMap<String, Option<Arc<SourceFile>>>>,
}

impl Collection {
    fn new(root: PathBuf) -> Self {
        Self { root, read: Mutex::default() }
    }

    /// The top folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The file behind a path inside the collection, read on first need.
    pub fn file(&self, path: &str) -> Option<Arc<SourceFile>> {
        if let Some(known) = self.read.lock().unwrap_or_else(PoisonError::into_inner).get(path) {
            return known.clone();
        }
        // Read outside the lock, so that other files need not wait; the first to come back wins.
        let fresh = self.load(path);
        let mut read = self.read.lock().unwrap_or_else(PoisonError::into_inner);
        read.entry(path.to_owned()).or_insert(fresh).clone()
    }

    fn load(&self, path: &str) -> Option<Arc<SourceFile>> {
        let target = path.split('/').fold(self.root.clone(), |folder, part| folder.join(part));
        // A link may not lead out, however it is reached.
        let real = target.canonicalize().ok()?;
        let root = self.root.canonicalize().ok()?;
        if !real.starts_with(root) || !real.is_file() {
            return None;
        }
        SourceFile::read(&real, shown(&target)).ok().map(Arc::new)
    }
}

impl Library for Collection {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        self.file(path).map(|file| Arc::clone(&file.document))
    }
}

/// The collections met in one run.
#[derive(Debug, Default)]
pub struct Collections {
    known: Mutex<BTreeMap<PathBuf, Arc<Collection>>>,
    /// Folders named on the command line: what bounds a file where no mark is found above it.
    named: Vec<PathBuf>,
}

impl Collections {
    /// For a run over these files and folders.
    pub fn new(paths: &[PathBuf]) -> Self {
        let named = paths.iter().filter(|path| path.is_dir()).map(|path| absolute(path)).collect();
        Self { known: Mutex::default(), named }
    }

    /// Whether the whole collection with this top folder is looked through.
    pub fn whole(&self, root: &Path) -> bool {
        self.named.iter().any(|named| root.starts_with(named))
    }

    /// The collection a file belongs to, and the file's path inside it.
    pub fn of(&self, path: &Path) -> (Arc<Collection>, String) {
        let path = absolute(path);
        let folder = path.parent().unwrap_or(&path);
        let marked = folder.ancestors().find(|folder| MARKS.iter().any(|mark| folder.join(mark).exists()));
        let named =
            || self.named.iter().filter(|named| folder.starts_with(named)).max_by_key(|named| named.as_os_str().len());
        let root = marked.or_else(|| named().map(PathBuf::as_path)).unwrap_or(folder).to_owned();
        let inside = slashed(path.strip_prefix(&root).unwrap_or(&path));
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let collection = known.entry(root.clone()).or_insert_with(|| Arc::new(Collection::new(root)));
        (Arc::clone(collection), inside)
    }
}
