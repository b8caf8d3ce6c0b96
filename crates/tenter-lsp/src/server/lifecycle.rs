//! Start, settings, folders and files: what is not about one document.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::time::Duration;

use serde_json::json;
use tenter_config::NAME;
use tower_lsp::lsp_types::{
    ConfigurationItem, DidChangeConfigurationParams, DidChangeWatchedFilesParams, DidChangeWorkspaceFoldersParams,
    InitializeParams, InitializeResult, Registration, ServerInfo, Url,
};

use crate::capabilities::{self, Client};
use crate::diagnostics;
use crate::index;
use crate::outside;
use crate::server::{Server, Shared};
use crate::settings::Settings;
use crate::world::World;

/// Nothing waits longer for the client.
const PATIENCE: Duration = Duration::from_secs(5);
/// A checkout of another branch comes as many messages; they are gathered for so long.
const BURST: Duration = Duration::from_millis(50);

/// A file looked at again: its path and its text, none when it is gone.
type Fresh = (Arc<str>, Option<Arc<str>>);

impl Server {
    pub(super) fn start(&self, params: InitializeParams) -> InitializeResult {
        let client = Client::of(&params.capabilities);
        let encoding = capabilities::encoding(&params.capabilities);
        #[allow(deprecated, reason = "older clients give one folder only")]
        let folders: Vec<Url> = match params.workspace_folders {
            Some(folders) => folders.into_iter().map(|folder| folder.uri).collect(),
            None => params.root_uri.into_iter().collect(),
        };
        let settings = params.initialization_options.as_ref().and_then(Settings::read).unwrap_or_default();
        self.shared.with_world(|world| {
            world.encoding = encoding;
            world.configure(Some(settings), &[]);
            world.add_folders(folders);
        });
        if let Some(parent) = params.process_id {
            let _ = self.shared.parent.set(parent);
        }
        let offered = capabilities::offered(&client, encoding);
        let _ = self.shared.client.set(client);
        InitializeResult {
            capabilities: offered,
            server_info: Some(ServerInfo {
                name: "tenter".to_owned(),
                version: Some(env!("CARGO_PKG_VERSION").to_owned()),
            }),
        }
    }

    pub(super) fn begin(&self) {
        let able = self.shared.client();
        tokio::spawn(index::run(Arc::clone(&self.shared), self.client.clone()));
        if !able.pulls {
            tokio::spawn(publish(Arc::clone(&self.shared), self.client.clone()));
        }
        let (shared, client) = (Arc::clone(&self.shared), self.client.clone());
        tokio::spawn(async move {
            let mut wanted = Vec::new();
            if able.watches {
                wanted.push(Registration {
                    id: "tenter/watch".to_owned(),
                    method: "workspace/didChangeWatchedFiles".to_owned(),
                    register_options: Some(
                        json!({ "watchers": [{ "globPattern": "**/*.dye" }, { "globPattern": format!("**/{NAME}") }] }),
                    ),
                });
            }
            if able.told_of_configuration {
                wanted.push(Registration {
                    id: "tenter/settings".to_owned(),
                    method: "workspace/didChangeConfiguration".to_owned(),
                    register_options: Some(json!({ "section": "tenter" })),
                });
            }
            if !wanted.is_empty() {
                let _ = tokio::time::timeout(PATIENCE, client.register_capability(wanted)).await;
            }
            if able.gives_configuration {
                ask_settings(&shared, &client).await;
            }
        });
    }

    pub(super) fn configured(&self, params: DidChangeConfigurationParams) {
        let (shared, client) = (Arc::clone(&self.shared), self.client.clone());
        let given = Settings::read(&params.settings);
        if self.shared.client().gives_configuration {
            tokio::spawn(async move { ask_settings(&shared, &client).await });
        } else if let Some(settings) = given {
            take_settings(&shared, &client, Some(settings), &[]);
        }
    }

    pub(super) fn folders_changed(&self, params: DidChangeWorkspaceFoldersParams) {
        self.shared.with_world(|world| {
            world.remove_folders(&params.event.removed);
            world.add_folders(params.event.added.into_iter().map(|folder| folder.uri));
        });
        self.shared.unread.notify_one();
        self.shared.dirty.notify_one();
        // A new folder may have settings of its own.
        if self.shared.client().gives_configuration {
            let (shared, client) = (Arc::clone(&self.shared), self.client.clone());
            tokio::spawn(async move { ask_settings(&shared, &client).await });
        }
    }

    pub(super) fn files_changed(&self, params: DidChangeWatchedFilesParams) {
        self.shared.note_changed(params.changes.into_iter().map(|change| change.uri));
        let (shared, client) = (Arc::clone(&self.shared), self.client.clone());
        tokio::spawn(async move {
            tokio::time::sleep(BURST).await;
            let uris = shared.take_changed();
            if uris.is_empty() {
                return;
            }
            // Another configuration: other levels, perhaps other collections.
            if uris.iter().any(|uri| uri.path_segments().is_some_and(|mut parts| parts.next_back() == Some(NAME))) {
                shared.with_world(World::read_again);
                shared.unread.notify_one();
            }
            let placed: Vec<(usize, String, Url)> = shared.with_world(|world| {
                uris.into_iter().filter_map(|uri| world.place(&uri).map(|(root, path)| (root, path, uri))).collect()
            });
            let read = tokio::task::spawn_blocking(move || {
                let mut by_root: BTreeMap<usize, Vec<Fresh>> = BTreeMap::new();
                for (root, path, uri) in placed {
                    let text = crate::uris::to_path(&uri).and_then(|path| outside::read_text(&path));
                    by_root.entry(root).or_default().push((path.into(), text));
                }
                by_root
            });
            let Ok(by_root) = read.await else { return };
            shared.with_world(|world| {
                for (root, files) in by_root {
                    world.store(root, files);
                }
            });
            shared.refresh_all(&client);
        });
    }
}

/// Asks for the settings of all, and of each folder.
async fn ask_settings(shared: &Arc<Shared>, client: &tower_lsp::Client) {
    let folders = shared.with_world(|world| world.folder_uris());
    let item = |scope_uri| ConfigurationItem { scope_uri, section: Some("tenter".to_owned()) };
    let items = std::iter::once(item(None)).chain(folders.iter().cloned().map(Some).map(item)).collect();
    let asked = client.configuration(items);
    if let Ok(Ok(values)) = tokio::time::timeout(PATIENCE, asked).await {
        let all = values.first().and_then(Settings::read);
        let own = folders.into_iter().zip(values.iter().skip(1));
        let own: Vec<(Url, Settings)> =
            own.filter_map(|(folder, value)| Some((folder, Settings::read(value)?))).collect();
        take_settings(shared, client, all, &own);
    }
}

fn take_settings(
    shared: &Arc<Shared>,
    client: &tower_lsp::Client,
    all: Option<Settings>,
    by_folder: &[(Url, Settings)],
) {
    if shared.with_world(|world| world.configure(all, by_folder)) {
        shared.forget_told();
        shared.refresh_all(client);
    }
}

/// Pushes findings to a client that does not pull them: at once after each change, the newest text only.
async fn publish(shared: Arc<Shared>, client: tower_lsp::Client) {
    let mut told: BTreeMap<Url, (i32, String)> = BTreeMap::new();
    loop {
        shared.dirty.notified().await;
        let view = shared.view();
        let open: Vec<(Url, i32)> = view.open().map(|open| (open.uri.clone(), open.version)).collect();
        let closed: Vec<Url> =
            told.keys().filter(|uri| !open.iter().any(|(other, _)| other == *uri)).cloned().collect();
        for uri in closed {
            told.remove(&uri);
            client.publish_diagnostics(uri, Vec::new(), None).await;
        }
        // What was just typed in goes first.
        let (fresh, rest): (Vec<_>, Vec<_>) =
            open.into_iter().partition(|(uri, version)| told.get(uri).is_none_or(|(old, _)| old != version));
        for (uri, version) in fresh.into_iter().chain(rest) {
            if shared.with_world(|world| world.version(&uri)) != Some(version) {
                // A newer text is on its way; this one nobody sees any more.
                continue;
            }
            let (shared_now, seen, asked) = (Arc::clone(&shared), view.clone(), uri.clone());
            let work = tokio::task::spawn_blocking(move || {
                let doc = seen.doc(&asked)?;
                Some(diagnostics::of(&seen, &doc, &shared_now.client(), &|rule| shared_now.page(rule)))
            });
            let Ok(Some(found)) = work.await else { continue };
            let mark = diagnostics::mark(&found);
            let same = told.get(&uri).is_some_and(|(old, have)| *old == version && *have == mark);
            let stale = shared.with_world(|world| world.version(&uri)) != Some(version);
            if !same && !stale {
                told.insert(uri.clone(), (version, mark));
                client.publish_diagnostics(uri, found, Some(version)).await;
            }
            view.clear_spent();
        }
    }
}
