//! The texts and folders the client works with. The loop changes it, requests get a picture of it.

mod roots;
mod view;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_features::Workspace;
use tenter_syntax::Encoding;
use tower_lsp::lsp_types::{
    DidChangeTextDocumentParams, DidCloseTextDocumentParams, DidOpenTextDocumentParams, Url, WorkspaceFolder,
};

use crate::convert;
use crate::settings::Settings;
use crate::uris;
use crate::world::roots::{Root, candidates, home};
use crate::world::view::Collection;

pub(crate) use view::{Doc, View};

/// A folder the client opened.
struct Folder {
    path: Arc<Path>,
    uri: Url,
    /// Read from the disk, or being read.
    read: bool,
    /// What was set for it alone.
    settings: Option<Settings>,
}

/// An open document.
#[derive(Clone, Debug)]
pub(crate) struct Open {
    pub uri: Url,
    pub root: usize,
    pub path: Arc<str>,
    pub version: i32,
}

/// Everything the client works with.
pub(crate) struct World {
    folders: Vec<Folder>,
    roots: Vec<Root>,
    open: Arc<BTreeMap<Url, Open>>,
    by_folder: Arc<Vec<(Arc<Path>, Settings)>>,
    pub encoding: Encoding,
    settings: Settings,
    /// What is to be told of configurations, not told yet.
    remarks: Vec<String>,
}

/// A folder to be read from the disk.
pub(crate) struct Unread {
    pub folder: Arc<Path>,
    /// With the folders in it.
    pub deep: bool,
}

/// A file read: the folder of its collection, its path there, its text, its names.
pub(crate) struct Read {
    pub collection: Arc<Path>,
    pub path: Arc<str>,
    pub text: Arc<str>,
    pub outline: tenter_features::Outline,
}

impl World {
    pub fn new() -> Self {
        Self {
            folders: Vec::new(),
            roots: Vec::new(),
            open: Arc::default(),
            by_folder: Arc::default(),
            encoding: Encoding::default(),
            settings: Settings::default(),
            remarks: Vec::new(),
        }
    }

    // ---- folders and settings ----

    /// Adds folders the client opened.
    pub fn add_folders(&mut self, folders: impl IntoIterator<Item = Url>) {
        for uri in folders {
            let Some(path) = uris::to_path(&uri) else { continue };
            if !self.folders.iter().any(|folder| *folder.path == *path) {
                self.folders.push(Folder { path: path.into(), uri, read: false, settings: None });
            }
        }
        self.settle();
    }

    /// Takes away folders the client closed.
    pub fn remove_folders(&mut self, folders: &[WorkspaceFolder]) {
        let gone: Vec<PathBuf> = folders.iter().filter_map(|folder| uris::to_path(&folder.uri)).collect();
        self.folders.retain(|folder| !gone.iter().any(|path| **path == *folder.path));
        self.tell_folders();
        self.read_again();
    }

    /// Forgets what was read from the disk and looks anew where everything belongs: a folder went, or a collection got
    /// another mark or configuration.
    pub fn read_again(&mut self) {
        for folder in &mut self.folders {
            folder.read = false;
        }
        for root in &mut self.roots {
            root.workspace.forget_disk();
            root.absent.clear();
            root.read = root.folder.is_none() || root.deep;
            root.configure(&mut self.remarks);
        }
        self.settle();
    }

    /// The addresses of the folders the client opened.
    pub fn folder_uris(&self) -> Vec<Url> {
        self.folders.iter().map(|folder| folder.uri.clone()).collect()
    }

    /// Takes settings for all documents, and for each folder its own where there are some. Tells whether anything is
    /// different now.
    pub fn configure(&mut self, all: Option<Settings>, by_folder: &[(Url, Settings)]) -> bool {
        let before = (self.settings, Arc::clone(&self.by_folder));
        if let Some(settings) = all {
            self.settings = settings;
        }
        for folder in &mut self.folders {
            let own = by_folder.iter().find(|(uri, _)| *uri == folder.uri);
            folder.settings = own.map(|(_, settings)| *settings);
        }
        self.tell_folders();
        before.0 != self.settings || before.1 != self.by_folder
    }

    fn tell_folders(&mut self) {
        let set = self.folders.iter().filter_map(|folder| Some((Arc::clone(&folder.path), folder.settings?)));
        self.by_folder = Arc::new(set.collect());
    }

    /// What is to be told of configurations; it counts as told.
    pub fn take_remarks(&mut self) -> Vec<String> {
        std::mem::take(&mut self.remarks)
    }

    // ---- documents ----

    /// Open documents move to the collection they belong to now.
    fn settle(&mut self) {
        let documents: Vec<Open> = self.open.values().cloned().collect();
        for document in documents {
            let (root, path) = self.home(&document.uri);
            if root != document.root {
                let old = self.roots.get_mut(document.root);
                let text = old.and_then(|old| {
                    let text = old.workspace.open_file(&document.path).map(|file| Arc::clone(&file.text));
                    old.workspace.close(&document.path);
                    text
                });
                if let (Some(text), Some(new)) = (text, self.roots.get_mut(root)) {
                    new.workspace.open(&path, &text);
                }
                let moved = Open { root, path: Arc::clone(&path), ..document };
                Arc::make_mut(&mut self.open).insert(moved.uri.clone(), moved);
            }
            self.fetch(root, &path);
        }
    }

    /// The collection a document belongs to, made if there is none, and its path there.
    fn home(&mut self, uri: &Url) -> (usize, Arc<str>) {
        let (folder, deep, path) = home(uri, self.folders.iter().map(|folder| &*folder.path));
        if let Some(folder) = folder {
            return (self.root(&folder, deep), path.into());
        }
        let taken = |index: usize| self.open.values().any(|open| open.root == index);
        let free = self.roots.iter().enumerate().find(|(index, root)| root.folder.is_none() && !taken(*index));
        let root = free.map(|(index, _)| index).unwrap_or_else(|| {
            self.roots.push(Root::new(None, false, &mut self.remarks));
            self.roots.len() - 1
        });
        (root, path.into())
    }

    /// The collection of a folder, made if there is none.
    fn root(&mut self, folder: &Path, deep: bool) -> usize {
        let same = |root: &Root| root.deep == deep && root.folder.as_deref() == Some(folder);
        self.roots.iter().position(same).unwrap_or_else(|| {
            self.roots.push(Root::new(Some(folder.into()), deep, &mut self.remarks));
            self.roots.len() - 1
        })
    }

    fn fetch(&mut self, root: usize, path: &str) {
        if let Some(root) = self.roots.get_mut(root) {
            root.fetch(path);
        }
    }

    /// A document was opened.
    pub fn opened(&mut self, params: DidOpenTextDocumentParams) {
        let document = params.text_document;
        let known = self.open.get(&document.uri).map(|open| (open.root, Arc::clone(&open.path)));
        let (root, path) = known.unwrap_or_else(|| self.home(&document.uri));
        if let Some(home) = self.roots.get_mut(root) {
            home.workspace.open(&path, &document.text);
        }
        self.fetch(root, &path);
        let open = Open { uri: document.uri.clone(), root, path, version: document.version };
        Arc::make_mut(&mut self.open).insert(document.uri, open);
    }

    /// A document was changed. What does not fit is clamped, as the protocol asks.
    pub fn changed(&mut self, params: DidChangeTextDocumentParams) {
        let Some(document) = self.open.get(&params.text_document.uri).cloned() else { return };
        let Some(root) = self.roots.get_mut(document.root) else { return };
        let Some(file) = root.workspace.open_file(&document.path) else { return };
        let text = convert::changed(file, &params.content_changes, self.encoding);
        root.workspace.open(&document.path, &text);
        root.fetch(&document.path);
        let version = params.text_document.version;
        Arc::make_mut(&mut self.open).insert(document.uri.clone(), Open { version, ..document });
    }

    /// A document was closed.
    pub fn closed(&mut self, params: &DidCloseTextDocumentParams) {
        let Some(document) = Arc::make_mut(&mut self.open).remove(&params.text_document.uri) else { return };
        let last = !self.open.values().any(|other| other.root == document.root);
        let folders = &self.folders;
        let Some(root) = self.roots.get_mut(document.root) else { return };
        root.workspace.close(&document.path);
        let watched = root.folder.as_deref().is_some_and(|folder| {
            folders.iter().any(|other| other.path.starts_with(folder) || folder.starts_with(&*other.path))
        });
        if last && !watched {
            // Nobody looks at this folder any more. The place stays, so that numbers hold.
            root.workspace = Workspace::new();
            root.configure(&mut self.remarks);
            root.absent.clear();
            root.read = root.folder.is_none() || root.deep;
        }
    }

    // ---- the disk ----

    /// The folders nobody has read yet; they count as read from now on.
    pub fn take_unread(&mut self) -> Vec<Unread> {
        let mut found = Vec::new();
        for folder in self.folders.iter_mut().filter(|folder| !folder.read) {
            folder.read = true;
            found.push(Unread { folder: Arc::clone(&folder.path), deep: true });
        }
        for (index, root) in self.roots.iter_mut().enumerate().filter(|(_, root)| !root.read) {
            if let (true, Some(folder)) = (self.open.values().any(|open| open.root == index), &root.folder) {
                root.read = true;
                found.push(Unread { folder: Arc::clone(folder), deep: false });
            }
        }
        found
    }

    /// Puts files in that were read; `deep` says what their collections hold.
    pub fn store_read(&mut self, files: Vec<Read>, deep: bool) {
        let mut by_root: BTreeMap<usize, Vec<_>> = BTreeMap::new();
        for file in files {
            let root = self.root(&file.collection, deep);
            by_root.entry(root).or_default().push((file.path, file.text, file.outline));
        }
        for (root, files) in by_root {
            if let Some(root) = self.roots.get_mut(root) {
                root.workspace.store_read(files);
            }
        }
    }

    /// Puts in what files of a collection hold now; a text of `None` is a file that is gone.
    pub fn store(&mut self, root: usize, files: Vec<(Arc<str>, Option<Arc<str>>)>) {
        if let Some(root) = self.roots.get_mut(root) {
            root.absent.clear();
            root.workspace.store(files);
        }
    }

    /// Where a file of the disk belongs: collection and path.
    pub fn place(&self, uri: &Url) -> Option<(usize, String)> {
        let found = candidates(self.roots.iter().map(|root| (root.folder.as_deref(), root.deep)), uri);
        found.into_iter().next()
    }

    // ---- pictures ----

    /// A picture of it all.
    pub fn view(&self) -> View {
        let roots = self.roots.iter().map(|root| Collection {
            folder: root.folder.clone(),
            deep: root.deep,
            snapshot: root.workspace.snapshot(),
        });
        View {
            roots: Arc::new(roots.collect()),
            open: Arc::clone(&self.open),
            encoding: self.encoding,
            settings: self.settings,
            by_folder: Arc::clone(&self.by_folder),
        }
    }

    /// The version of an open document.
    pub fn version(&self, uri: &Url) -> Option<i32> {
        self.open.get(uri).map(|open| open.version)
    }
}
