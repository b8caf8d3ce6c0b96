//! The texts of one collection: those open in the editor, and those on disk beside them.
//!
//! Nothing is read here; whoever watches the disk hands texts over.

use std::collections::{BTreeMap, BTreeSet};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use tenter_resolve::Library;
use tenter_rules::Levels;
use tenter_syntax::{BlockKind, Document};

use crate::analysis::FileAnalysis;
use crate::file::File;
use crate::outline::Outline;

/// A file on disk. Its tree is built when somebody uses it.
#[derive(Debug)]
pub(crate) struct Stored {
    /// The revision it was put in at: tells this text from what the path held before.
    since: u64,
    text: Arc<str>,
    pub(crate) outline: Outline,
    file: OnceLock<Arc<File>>,
}

type Open = BTreeMap<Arc<str>, Arc<File>>;
type Disk = BTreeMap<Arc<str>, Arc<Stored>>;
/// What was last worked out of a file, and at which revision. Locked while it is being worked out, so that two who ask
/// at once do not both do it.
type Slot = Arc<Mutex<Option<(u64, Arc<FileAnalysis>)>>>;
type Cache = BTreeMap<Arc<str>, Slot>;
/// Results nobody needs any more. To take one apart takes as long as a good part of an answer, so it waits until the
/// answer is given.
type Spent = Arc<Mutex<Vec<Arc<FileAnalysis>>>>;

/// Revisions of all collections are counted together, so that no two moments share one.
fn next() -> u64 {
    static COUNT: AtomicU64 = AtomicU64::new(1);
    COUNT.fetch_add(1, Ordering::Relaxed)
}

/// The texts of a collection. The open ones go before what is on disk.
#[derive(Debug, Default)]
pub struct Workspace {
    open: Arc<Open>,
    disk: Arc<Disk>,
    levels: Arc<Levels>,
    levels_since: u64,
    revision: u64,
    cache: Arc<Mutex<Cache>>,
    spent: Spent,
}

impl Workspace {
    /// An empty collection.
    pub fn new() -> Self {
        Self::default()
    }

    /// Opens a file, or gives an open one another text.
    pub fn open(&mut self, path: &str, text: &str) -> Arc<File> {
        let file = match self.open.get(path) {
            Some(old) if *old.text == *text => return Arc::clone(old),
            Some(old) => Arc::new(old.with_text(text)),
            None => Arc::new(File::new(path.into(), text)),
        };
        self.revision = next();
        Arc::make_mut(&mut self.open).insert(Arc::clone(&file.path), Arc::clone(&file));
        file
    }

    /// The text of an open file.
    pub fn open_file(&self, path: &str) -> Option<&Arc<File>> {
        self.open.get(path)
    }

    /// Closes a file; what is on disk counts again.
    pub fn close(&mut self, path: &str) {
        self.revision = next();
        Arc::make_mut(&mut self.open).remove(path);
        self.cache.lock().unwrap_or_else(PoisonError::into_inner).remove(path);
    }

    /// Puts what was read from the disk into the collection; a text of `None` is a file that is gone.
    pub fn store(&mut self, files: impl IntoIterator<Item = (Arc<str>, Option<Arc<str>>)>) {
        self.revision = next();
        let since = self.revision;
        let disk = Arc::make_mut(&mut self.disk);
        for (path, text) in files {
            match text {
                Some(text) => {
                    if disk.get(&path).is_none_or(|old| old.text != text) {
                        let outline = Outline::scan(&text, &path);
                        disk.insert(path, Arc::new(Stored { since, text, outline, file: OnceLock::new() }));
                    }
                }
                None => {
                    disk.remove(&path);
                }
            }
        }
    }

    /// Puts files in whose outline was made elsewhere (several at a time, on other threads).
    pub fn store_read(&mut self, files: Vec<(Arc<str>, Arc<str>, Outline)>) {
        self.revision = next();
        let since = self.revision;
        let disk = Arc::make_mut(&mut self.disk);
        for (path, text, outline) in files {
            disk.insert(path, Arc::new(Stored { since, text, outline, file: OnceLock::new() }));
        }
    }

    /// What the collection says about rules.
    pub fn set_levels(&mut self, levels: Levels) {
        if *self.levels != levels {
            self.revision = next();
            self.levels = Arc::new(levels);
            self.levels_since = self.revision;
        }
    }

    /// The files that an open one takes from, and those they take from, that the collection does not have.
    pub fn missing_uses(&self, path: &str) -> Vec<String> {
        let Some(file) = self.open.get(path) else { return Vec::new() };
        if !file.document.blocks.iter().any(|placed| placed.block.kind == BlockKind::Use) {
            return Vec::new();
        }
        let mut missing = Vec::new();
        let mut met: BTreeSet<Arc<str>> = BTreeSet::new();
        let mut waiting = Outline::of(&file.document, path).uses;
        while let Some(target) = waiting.pop() {
            if !met.insert(Arc::clone(&target)) {
                continue;
            }
            if let Some(open) = self.open.get(&target) {
                waiting.extend(Outline::of(&open.document, &target).uses);
            } else if let Some(stored) = self.disk.get(&target) {
                waiting.extend(stored.outline.uses.iter().cloned());
            } else {
                missing.push(target.to_string());
            }
        }
        missing
    }

    /// Forgets all files on disk.
    pub fn forget_disk(&mut self) {
        self.revision = next();
        self.disk = Arc::default();
    }

    /// A picture of the collection as it is now. Cheap.
    pub fn snapshot(&self) -> Snapshot {
        Snapshot {
            open: Arc::clone(&self.open),
            disk: Arc::clone(&self.disk),
            levels: Arc::clone(&self.levels),
            levels_since: self.levels_since,
            revision: self.revision,
            cache: Arc::clone(&self.cache),
            spent: Arc::clone(&self.spent),
        }
    }
}

/// A picture of a collection at one moment.
#[derive(Clone, Debug)]
pub struct Snapshot {
    open: Arc<Open>,
    disk: Arc<Disk>,
    levels: Arc<Levels>,
    levels_since: u64,
    revision: u64,
    cache: Arc<Mutex<Cache>>,
    spent: Spent,
}

impl Snapshot {
    /// The collection as it would be with other texts in some files.
    pub(crate) fn with(&self, texts: impl IntoIterator<Item = (Arc<str>, String)>) -> Self {
        let mut open = (*self.open).clone();
        for (path, text) in texts {
            let file = match self.file(&path) {
                Some(old) => old.with_text(text),
                None => File::new(Arc::clone(&path), text),
            };
            open.insert(path, Arc::new(file));
        }
        Self { open: Arc::new(open), revision: next(), cache: Arc::default(), spent: Arc::default(), ..self.clone() }
    }

    /// What the collection says about rules.
    pub(crate) fn levels(&self) -> &Levels {
        &self.levels
    }

    /// A file, read. One on disk keeps its tree from then on.
    pub fn file(&self, path: &str) -> Option<Arc<File>> {
        if let Some(file) = self.open.get(path) {
            return Some(Arc::clone(file));
        }
        let (path, stored) = self.disk.get_key_value(path)?;
        let read = || Arc::new(File::new(Arc::clone(path), Arc::clone(&stored.text)));
        Some(Arc::clone(stored.file.get_or_init(read)))
    }

    /// A file, read for the moment: one on disk that nobody uses keeps no tree.
    pub fn file_once(&self, path: &str) -> Option<Arc<File>> {
        if let Some(file) = self.open.get(path) {
            return Some(Arc::clone(file));
        }
        let (path, stored) = self.disk.get_key_value(path)?;
        match stored.file.get() {
            Some(file) => Some(Arc::clone(file)),
            None => Some(Arc::new(File::new(Arc::clone(path), Arc::clone(&stored.text)))),
        }
    }

    /// Whether the collection has the file.
    pub fn has(&self, path: &str) -> bool {
        self.open.contains_key(path) || self.disk.contains_key(path)
    }

    /// All paths, open or on disk, in order.
    pub fn paths(&self) -> Vec<Arc<str>> {
        let mut paths: Vec<Arc<str>> = self.open.keys().chain(self.disk.keys()).cloned().collect();
        paths.sort();
        paths.dedup();
        paths
    }

    /// The open files, in order of their paths.
    pub fn open_files(&self) -> impl Iterator<Item = &Arc<File>> {
        self.open.values()
    }

    /// The outline of every file, the open ones as they are in the editor.
    pub fn outlines(&self) -> impl Iterator<Item = (Arc<str>, std::borrow::Cow<'_, Outline>)> {
        let open = self
            .open
            .values()
            .map(|file| (Arc::clone(&file.path), std::borrow::Cow::Owned(Outline::of(&file.document, &file.path))));
        let disk = self
            .disk
            .iter()
            .filter(|(path, _)| !self.open.contains_key(*path))
            .map(|(path, stored)| (Arc::clone(path), std::borrow::Cow::Borrowed(&stored.outline)));
        open.chain(disk)
    }

    /// A number that stays the same while the findings of a file on disk must: it, what it takes from others, and the
    /// levels of the collection are as they were. None for what is open in the editor.
    pub fn stamp(&self, path: &str) -> Option<u64> {
        let mut hasher = DefaultHasher::new();
        self.levels_since.hash(&mut hasher);
        let mut met: BTreeSet<&str> = BTreeSet::new();
        let mut waiting = vec![path];
        while let Some(path) = waiting.pop() {
            if !met.insert(path) {
                continue;
            }
            if self.open.contains_key(path) {
                return None;
            }
            let stored = self.disk.get(path);
            (path, stored.map(|stored| stored.since)).hash(&mut hasher);
            waiting.extend(stored.iter().flat_map(|stored| &stored.outline.uses).map(|used| &**used));
        }
        Some(hasher.finish())
    }

    /// The files whose `use` lines name `path`, directly or through other files, in order.
    pub fn users(&self, path: &str) -> Vec<Arc<str>> {
        let mut by_target: BTreeMap<Arc<str>, Vec<Arc<str>>> = BTreeMap::new();
        for (from, outline) in self.outlines() {
            for target in &outline.uses {
                by_target.entry(Arc::clone(target)).or_default().push(Arc::clone(&from));
            }
        }
        let mut found: Vec<Arc<str>> = Vec::new();
        let mut waiting: Vec<Arc<str>> = vec![path.into()];
        while let Some(target) = waiting.pop() {
            for user in by_target.get(&target).into_iter().flatten() {
                if !found.contains(user) && **user != *path {
                    found.push(Arc::clone(user));
                    waiting.push(Arc::clone(user));
                }
            }
        }
        found.sort();
        found
    }

    /// The file with everything worked out of it; sheets whose blocks are the same as last time are kept.
    pub fn analyse(&self, path: &str) -> Option<Arc<FileAnalysis>> {
        if !self.open.contains_key(path) {
            return Some(Arc::new(FileAnalysis::new(self.file_once(path)?, self, None)));
        }
        let slot = {
            let mut cache = self.cache.lock().unwrap_or_else(PoisonError::into_inner);
            match cache.get(path) {
                Some(slot) => Arc::clone(slot),
                None => Arc::clone(cache.entry(path.into()).or_default()),
            }
        };
        let mut kept = slot.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((revision, analysis)) = &*kept
            && *revision == self.revision
        {
            return Some(Arc::clone(analysis));
        }
        let before = kept.as_ref().map(|(_, analysis)| &**analysis);
        let analysis = Arc::new(FileAnalysis::new(self.file(path)?, self, before));
        // An older picture must not replace what a newer one worked out.
        if kept.as_ref().is_none_or(|(revision, _)| *revision < self.revision) {
            let old = kept.replace((self.revision, Arc::clone(&analysis)));
            self.spent.lock().unwrap_or_else(PoisonError::into_inner).extend(old.map(|(_, old)| old));
        }
        Some(analysis)
    }

    /// Takes apart results that were replaced since the last call; best done once an answer is on its way.
    pub fn clear_spent(&self) {
        let spent = std::mem::take(&mut *self.spent.lock().unwrap_or_else(PoisonError::into_inner));
        drop(spent);
    }
}

impl Library for Snapshot {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        self.file(path).map(|file| Arc::clone(&file.document))
    }
}
