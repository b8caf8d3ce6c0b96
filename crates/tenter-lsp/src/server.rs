//! The state behind the handlers, and what happens by itself: publishing, refreshing, watching.

mod actions;
mod calls;
mod collection;
mod colours;
pub(crate) mod commands;
mod handlers;
mod highlighting;
mod hints;
mod items;
mod lenses;
mod lifecycle;
mod places;
mod pulled;
mod renaming;
mod shape;
mod tidying;
mod words;

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use serde_json::Value;
use tokio::sync::Notify;
use tower_lsp::lsp_types::{MessageType, SemanticToken, Url};

use crate::capabilities;
use crate::outside;
use crate::world::{View, World};

use handlers::markdown;

tokio::task_local! {
    /// The texts as they were when the request being answered arrived.
    pub(crate) static VIEW: View;
}

/// What loop, handlers and background work share. Locks are held for moments only, never across an await.
pub(crate) struct Shared {
    world: Mutex<World>,
    client: OnceLock<capabilities::Client>,
    parent: OnceLock<u32>,
    /// Something changed that push diagnostics may depend on.
    pub dirty: Notify,
    /// A folder waits to be read.
    pub unread: Notify,
    /// Files that changed on disk and are still to be looked at.
    stale_files: Mutex<Vec<Url>>,
    tokens: Mutex<BTreeMap<Url, (String, Vec<SemanticToken>)>>,
    pages: Mutex<BTreeMap<&'static str, Option<Url>>>,
    told: Mutex<BTreeMap<Url, collection::Told>>,
    counter: std::sync::atomic::AtomicU64,
}

impl Shared {
    pub fn new() -> Arc<Self> {
        Arc::new(Self {
            world: Mutex::new(World::new()),
            client: OnceLock::new(),
            parent: OnceLock::new(),
            dirty: Notify::new(),
            unread: Notify::new(),
            stale_files: Mutex::default(),
            tokens: Mutex::default(),
            pages: Mutex::default(),
            told: Mutex::default(),
            counter: std::sync::atomic::AtomicU64::new(0),
        })
    }

    /// Does something with the world.
    pub fn with_world<T>(&self, work: impl FnOnce(&mut World) -> T) -> T {
        work(&mut self.world.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// A picture of the world as it is.
    pub fn view(&self) -> View {
        self.with_world(|world| world.view())
    }

    /// What the client can take; nothing before it said so.
    pub fn client(&self) -> capabilities::Client {
        self.client.get().cloned().unwrap_or_default()
    }

    /// The process whose end ends this one.
    pub fn parent(&self) -> Option<u32> {
        self.parent.get().copied()
    }

    /// Applies a message that changes texts. Before `initialize` nothing is taken.
    pub fn sync(&self, method: &str, params: Value) {
        if self.client.get().is_none() {
            return;
        }
        match method {
            "textDocument/didOpen" => {
                if let Ok(params) = serde_json::from_value(params) {
                    self.with_world(|world| world.opened(params));
                    self.unread.notify_one();
                }
            }
            "textDocument/didChange" => {
                if let Ok(params) = serde_json::from_value(params) {
                    self.with_world(|world| world.changed(params));
                }
            }
            "textDocument/didClose" => {
                if let Ok(params) = serde_json::from_value::<tower_lsp::lsp_types::DidCloseTextDocumentParams>(params) {
                    self.with_world(|world| world.closed(&params));
                    let mut tokens = self.tokens.lock().unwrap_or_else(PoisonError::into_inner);
                    tokens.remove(&params.text_document.uri);
                }
            }
            _ => return,
        }
        self.dirty.notify_one();
    }

    /// The address of a rule's page, written out when first asked for.
    pub fn page(&self, rule: &'static str) -> Option<Url> {
        let mut pages = self.pages.lock().unwrap_or_else(PoisonError::into_inner);
        pages
            .entry(rule)
            .or_insert_with(|| {
                let page = tenter_rules::rule(rule)?.page;
                Url::from_file_path(outside::page(outside::Shelf::Reference, rule, page)?).ok()
            })
            .clone()
    }

    /// Keeps the tokens last sent for a document, and gives them a name.
    pub fn keep_tokens(&self, uri: &Url, tokens: &[SemanticToken]) -> String {
        let number = self.counter.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        let id = number.to_string();
        let mut kept = self.tokens.lock().unwrap_or_else(PoisonError::into_inner);
        kept.insert(uri.clone(), (id.clone(), tokens.to_vec()));
        id
    }

    /// The tokens last sent, if they go by this name.
    pub fn kept_tokens(&self, uri: &Url, id: &str) -> Option<Vec<SemanticToken>> {
        let kept = self.tokens.lock().unwrap_or_else(PoisonError::into_inner);
        kept.get(uri).filter(|(name, _)| name == id).map(|(_, tokens)| tokens.clone())
    }

    /// What was last told of a file on disk.
    fn told(&self, uri: &Url) -> Option<collection::Told> {
        self.told.lock().unwrap_or_else(PoisonError::into_inner).get(uri).cloned()
    }

    /// Keeps what was told of a file on disk.
    fn keep_told(&self, uri: &Url, told: collection::Told) {
        self.told.lock().unwrap_or_else(PoisonError::into_inner).insert(uri.clone(), told);
    }

    /// Other settings: everything is told anew.
    pub fn forget_told(&self) {
        self.told.lock().unwrap_or_else(PoisonError::into_inner).clear();
    }

    /// Notes files that changed on disk.
    pub fn note_changed(&self, uris: impl IntoIterator<Item = Url>) {
        self.stale_files.lock().unwrap_or_else(PoisonError::into_inner).extend(uris);
    }

    /// The files noted so far; they count as looked at.
    pub fn take_changed(&self) -> Vec<Url> {
        let mut uris = std::mem::take(&mut *self.stale_files.lock().unwrap_or_else(PoisonError::into_inner));
        uris.sort();
        uris.dedup();
        uris
    }

    /// Lets everything shown be asked for again. Nothing waits for the client.
    pub fn refresh_all(self: &Arc<Self>, client: &tower_lsp::Client) {
        self.dirty.notify_one();
        let able = self.client();
        let client = client.clone();
        let remarks = self.with_world(World::take_remarks);
        tokio::spawn(async move {
            if !remarks.is_empty() {
                client.show_message(MessageType::WARNING, remarks.join("\n")).await;
            }
            let limit = std::time::Duration::from_secs(5);
            if able.pulls && able.refreshes_diagnostics {
                let _ = tokio::time::timeout(limit, client.workspace_diagnostic_refresh()).await;
            }
            if able.refreshes_hints {
                let _ = tokio::time::timeout(limit, client.inlay_hint_refresh()).await;
            }
            if able.refreshes_lenses {
                let _ = tokio::time::timeout(limit, client.code_lens_refresh()).await;
            }
            if able.refreshes_tokens {
                let _ = tokio::time::timeout(limit, client.semantic_tokens_refresh()).await;
            }
        });
    }
}

/// The server as tower-lsp calls it.
pub(crate) struct Server {
    client: tower_lsp::Client,
    shared: Arc<Shared>,
}

impl Server {
    pub fn new(client: tower_lsp::Client, shared: Arc<Shared>) -> Self {
        Self { client, shared }
    }

    /// The texts as they were when the request arrived.
    fn view(&self) -> View {
        VIEW.try_with(Clone::clone).unwrap_or_else(|_| self.shared.view())
    }

    /// Whether a document went on since the request arrived, so that an answer would be about an old text.
    fn outdated(&self, view: &View, uri: &Url) -> bool {
        let then = view.open().find(|open| open.uri == *uri).map(|open| open.version);
        let now = self.shared.with_world(|world| world.version(uri));
        then != now
    }
}
