//! The texts and folders the client works with. The loop changes it, requests get a picture of it.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_features::{File, Location, Snapshot, Workspace};
use tenter_syntax::Encoding;
use tower_lsp::lsp_types::{
    DidChangeTextDocumentParams, DidCloseTextDocumentParams, DidOpenTextDocumentParams, Url, WorkspaceFolder,
};

use crate::convert;
use crate::settings::Settings;
use crate::uris;

/// A collection and where it lies.
struct Root {
    /// Its folder; none for a document that is not a file.
    folder: Option<Arc<Path>>,
    workspace: Workspace,
    /// A folder the client opened, not one made for a single document.
    asked: bool,
    /// Read from the disk, or being read.
    indexed: bool,
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
    roots: Vec<Root>,
    open: Arc<BTreeMap<Url, Open>>,
    pub encoding: Encoding,
    pub settings: Settings,
    /// Grows with each change of anything.
    pub revision: u64,
}

/// A picture of the world. Cheap.
#[derive(Clone)]
pub(crate) struct View {
    roots: Arc<Vec<(Option<Arc<Path>>, Snapshot)>>,
    open: Arc<BTreeMap<Url, Open>>,
    pub encoding: Encoding,
    pub settings: Settings,
}

/// A folder to be read from the disk.
pub(crate) struct Unread {
    pub root: usize,
    pub folder: Arc<Path>,
    /// With the folders in it.
    pub deep: bool,
}

/// A document of a view.
#[derive(Clone)]
pub(crate) struct Doc {
    pub file: Arc<File>,
    pub snapshot: Snapshot,
    pub root: usize,
    pub path: Arc<str>,
    pub version: Option<i32>,
}

impl World {
    pub fn new() -> Self {
        Self {
            roots: Vec::new(),
            open: Arc::default(),
            encoding: Encoding::default(),
            settings: Settings::default(),
            revision: 0,
        }
    }

    /// Adds folders the client opened.
    pub fn add_folders(&mut self, folders: impl IntoIterator<Item = Url>) {
        self.revision += 1;
        for folder in folders.into_iter().filter_map(|uri| uris::to_path(&uri)) {
            if !self.roots.iter().any(|root| root.asked && root.folder.as_deref() == Some(&*folder)) {
                let folder = Some(Arc::from(folder));
                self.roots.push(Root { folder, workspace: Workspace::new(), asked: true, indexed: false });
            }
        }
        self.settle();
    }

    /// Takes away folders the client closed.
    pub fn remove_folders(&mut self, folders: &[WorkspaceFolder]) {
        self.revision += 1;
        let gone: Vec<PathBuf> = folders.iter().filter_map(|folder| uris::to_path(&folder.uri)).collect();
        for root in &mut self.roots {
            if root.folder.as_deref().is_some_and(|folder| gone.iter().any(|path| path == folder)) {
                root.asked = false;
                root.indexed = false;
                root.workspace.forget_disk();
            }
        }
        self.settle();
    }

    /// Open documents move to the folder they belong to now.
    fn settle(&mut self) {
        let documents: Vec<Open> = self.open.values().cloned().collect();
        for document in documents {
            let (root, path) = self.home(&document.uri);
            if root != document.root {
                let text = self.text(&document);
                if let Some(old) = self.roots.get_mut(document.root) {
                    old.workspace.close(&document.path);
                }
                if let (Some(text), Some(new)) = (text, self.roots.get_mut(root)) {
                    new.workspace.open(&path, &text);
                }
                let moved = Open { root, path, ..document };
                Arc::make_mut(&mut self.open).insert(moved.uri.clone(), moved);
            }
        }
    }

    fn text(&self, document: &Open) -> Option<Arc<str>> {
        let root = self.roots.get(document.root)?;
        root.workspace.open_file(&document.path).map(|file| Arc::clone(&file.text))
    }

    /// The collection a document belongs to, made if there is none, and its path there.
    fn home(&mut self, uri: &Url) -> (usize, Arc<str>) {
        let found = locate(self.roots.iter().map(|root| (root.folder.as_deref(), root.asked)), uri);
        if let Some((root, path)) = found {
            return (root, path.into());
        }
        let path = uris::to_path(uri);
        let folder = path.as_deref().and_then(Path::parent).map(Arc::from);
        let name = match &path {
            Some(path) => path.file_name().map(|name| name.to_string_lossy().into_owned()),
            // A document that is no file is alone in its collection.
            None => Some(uri.to_string()),
        };
        let indexed = folder.is_none();
        self.roots.push(Root { folder, workspace: Workspace::new(), asked: false, indexed });
        (self.roots.len() - 1, name.unwrap_or_default().into())
    }

    /// A document was opened.
    pub fn opened(&mut self, params: DidOpenTextDocumentParams) {
        let document = params.text_document;
        self.revision += 1;
        let (root, path) = self.home(&document.uri);
        if let Some(home) = self.roots.get_mut(root) {
            home.workspace.open(&path, &document.text);
        }
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
        self.revision += 1;
        let version = params.text_document.version;
        Arc::make_mut(&mut self.open).insert(document.uri.clone(), Open { version, ..document });
    }

    /// A document was closed.
    pub fn closed(&mut self, params: &DidCloseTextDocumentParams) {
        let Some(document) = Arc::make_mut(&mut self.open).remove(&params.text_document.uri) else { return };
        self.revision += 1;
        let last = !self.open.values().any(|other| other.root == document.root);
        if let Some(root) = self.roots.get_mut(document.root) {
            root.workspace.close(&document.path);
            if last && !root.asked {
                // Nobody looks at this folder any more. The place stays, so that numbers hold.
                root.workspace = Workspace::new();
                root.indexed = root.folder.is_none();
            }
        }
    }

    /// The folders nobody has read yet; they count as read from now on.
    pub fn take_unread(&mut self) -> Vec<Unread> {
        let mut found = Vec::new();
        for (index, root) in self.roots.iter_mut().enumerate() {
            let wanted = root.asked || self.open.values().any(|open| open.root == index);
            if let (false, true, Some(folder)) = (root.indexed, wanted, &root.folder) {
                root.indexed = true;
                found.push(Unread { root: index, folder: Arc::clone(folder), deep: root.asked });
            }
        }
        found
    }

    /// The collection of a number.
    pub fn workspace(&mut self, root: usize) -> Option<&mut Workspace> {
        self.revision += 1;
        self.roots.get_mut(root).map(|root| &mut root.workspace)
    }

    /// Where a file of the disk belongs: collection and path.
    pub fn place(&self, uri: &Url) -> Option<(usize, String)> {
        locate(self.roots.iter().map(|root| (root.folder.as_deref(), root.asked)), uri)
    }

    /// A picture of it all.
    pub fn view(&self) -> View {
        let roots = self.roots.iter().map(|root| (root.folder.clone(), root.workspace.snapshot())).collect();
        View { roots: Arc::new(roots), open: Arc::clone(&self.open), encoding: self.encoding, settings: self.settings }
    }

    /// The version of an open document.
    pub fn version(&self, uri: &Url) -> Option<i32> {
        self.open.get(uri).map(|open| open.version)
    }
}

/// The innermost folder a file lies in; those the client opened go before others.
fn locate<'a>(roots: impl Iterator<Item = (Option<&'a Path>, bool)>, uri: &Url) -> Option<(usize, String)> {
    let path = uris::to_path(uri)?;
    roots
        .enumerate()
        .filter_map(|(index, (folder, asked))| {
            let folder = folder?;
            let inside = uris::inside(folder, &path)?;
            // A folder made for one document holds what lies in it, not below it.
            (asked || !inside.contains('/')).then_some((asked, folder.components().count(), index, inside))
        })
        .max_by_key(|(asked, depth, ..)| (*asked, *depth))
        .map(|(_, _, index, inside)| (index, inside))
}

impl View {
    /// A document by its address: an open one, else one of the collection.
    pub fn doc(&self, uri: &Url) -> Option<Doc> {
        if let Some(open) = self.open.get(uri) {
            let (_, snapshot) = self.roots.get(open.root)?;
            let file = snapshot.file(&open.path)?;
            let path = Arc::clone(&open.path);
            return Some(Doc { file, snapshot: snapshot.clone(), root: open.root, path, version: Some(open.version) });
        }
        let (root, path) = locate(self.roots.iter().map(|(folder, _)| (folder.as_deref(), true)), uri)?;
        let (_, snapshot) = self.roots.get(root)?;
        let file = snapshot.file_once(&path)?;
        Some(Doc { file, snapshot: snapshot.clone(), root, path: path.into(), version: None })
    }

    /// The open documents.
    pub fn open(&self) -> impl Iterator<Item = &Open> {
        self.open.values()
    }

    /// The collections by number.
    pub fn snapshots(&self) -> impl Iterator<Item = (usize, &Snapshot)> {
        self.roots.iter().enumerate().map(|(index, (_, snapshot))| (index, snapshot))
    }

    /// A collection.
    pub fn snapshot(&self, root: usize) -> Option<&Snapshot> {
        self.roots.get(root).map(|(_, snapshot)| snapshot)
    }

    /// The address of a file of a collection: the client's own spelling for an open one.
    pub fn uri(&self, root: usize, path: &str) -> Option<Url> {
        let open = self.open.values().find(|open| open.root == root && *open.path == *path);
        if let Some(open) = open {
            return Some(open.uri.clone());
        }
        uris::to_uri(self.roots.get(root)?.0.as_deref()?, path)
    }

    /// The version of an open file of a collection.
    pub fn version(&self, root: usize, path: &str) -> Option<i32> {
        self.open.values().find(|open| open.root == root && *open.path == *path).map(|open| open.version)
    }

    /// Collection and path of an address, whether or not a file is there.
    pub fn place(&self, uri: &Url) -> Option<(usize, String)> {
        if let Some(open) = self.open.get(uri) {
            return Some((open.root, open.path.to_string()));
        }
        locate(self.roots.iter().map(|(folder, _)| (folder.as_deref(), true)), uri)
    }

    /// A place of a collection for the client.
    pub fn location(&self, root: usize, location: &Location) -> Option<tower_lsp::lsp_types::Location> {
        let uri = self.uri(root, &location.path)?;
        let file = self.snapshot(root)?.file_once(&location.path)?;
        Some(tower_lsp::lsp_types::Location { uri, range: convert::range(&file, &location.range(), self.encoding) })
    }
}
