//! A picture of the texts and folders at one moment.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use tenter_features::{File, Location, Snapshot};
use tenter_syntax::Encoding;
use tower_lsp::lsp_types::Url;

use crate::convert;
use crate::settings::Settings;
use crate::uris;
use crate::world::Open;
use crate::world::roots::candidates;

/// A collection in a view.
pub(super) struct Collection {
    pub folder: Option<Arc<Path>>,
    pub deep: bool,
    pub snapshot: Snapshot,
}

/// A picture of the world. Cheap.
#[derive(Clone)]
pub(crate) struct View {
    pub(super) roots: Arc<Vec<Collection>>,
    pub(super) open: Arc<BTreeMap<Url, Open>>,
    pub encoding: Encoding,
    pub(super) settings: Settings,
    pub(super) by_folder: Arc<Vec<(Arc<Path>, Settings)>>,
}

/// A document of a view.
#[derive(Clone)]
pub(crate) struct Doc {
    pub file: Arc<File>,
    pub snapshot: Snapshot,
    pub root: usize,
    pub path: Arc<str>,
    pub version: Option<i32>,
    /// What the user has switched for the folder it lies in.
    pub settings: Settings,
}

impl View {
    /// A document by its address: an open one, else one of a collection.
    pub fn doc(&self, uri: &Url) -> Option<Doc> {
        let settings = self.settings_of(uri);
        if let Some(open) = self.open.get(uri) {
            let snapshot = self.snapshot(open.root)?.clone();
            let file = snapshot.file(&open.path)?;
            let path = Arc::clone(&open.path);
            return Some(Doc { file, snapshot, root: open.root, path, version: Some(open.version), settings });
        }
        self.candidates(uri).into_iter().find_map(|(root, path)| {
            let snapshot = self.snapshot(root)?.clone();
            let file = snapshot.file_once(&path)?;
            Some(Doc { file, snapshot, root, path: path.into(), version: None, settings })
        })
    }

    fn candidates(&self, uri: &Url) -> Vec<(usize, String)> {
        candidates(self.roots.iter().map(|root| (root.folder.as_deref(), root.deep)), uri)
    }

    /// What holds for a document: what was set for the innermost folder it lies in, else what was set for all.
    fn settings_of(&self, uri: &Url) -> Settings {
        if self.by_folder.is_empty() {
            return self.settings;
        }
        let path = uris::to_path(uri);
        let within = |folder: &Path| path.as_deref().is_some_and(|path| path.starts_with(folder));
        let found = self.by_folder.iter().filter(|(folder, _)| within(folder));
        found.max_by_key(|(folder, _)| folder.components().count()).map_or(self.settings, |(_, settings)| *settings)
    }

    /// The open documents.
    pub fn open(&self) -> impl Iterator<Item = &Open> {
        self.open.values()
    }

    /// The collections by number.
    pub fn snapshots(&self) -> impl Iterator<Item = (usize, &Snapshot)> {
        self.roots.iter().enumerate().map(|(index, root)| (index, &root.snapshot))
    }

    /// Takes apart what earlier answers rested on.
    pub fn clear_spent(&self) {
        self.roots.iter().for_each(|root| root.snapshot.clear_spent());
    }

    /// A collection.
    pub fn snapshot(&self, root: usize) -> Option<&Snapshot> {
        self.roots.get(root).map(|root| &root.snapshot)
    }

    /// The address of a file of a collection: the client's own spelling for an open one.
    pub fn uri(&self, root: usize, path: &str) -> Option<Url> {
        let open = self.open.values().find(|open| open.root == root && *open.path == *path);
        if let Some(open) = open {
            return Some(open.uri.clone());
        }
        uris::to_uri(self.roots.get(root)?.folder.as_deref()?, path)
    }

    /// Where a collection lies.
    pub fn folder(&self, root: usize) -> Option<&Path> {
        self.roots.get(root)?.folder.as_deref()
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
        let found = self.candidates(uri);
        let there = found.iter().position(|(root, path)| self.snapshot(*root).is_some_and(|it| it.has(path)));
        found.into_iter().nth(there.unwrap_or(0))
    }

    /// A place of a collection for the client.
    pub fn location(&self, root: usize, location: &Location) -> Option<tower_lsp::lsp_types::Location> {
        let uri = self.uri(root, &location.path)?;
        let file = self.snapshot(root)?.file_once(&location.path)?;
        Some(tower_lsp::lsp_types::Location { uri, range: convert::range(&file, &location.range(), self.encoding) })
    }
}
