//! Reading a folder into the collection, in the background, with progress.

use std::sync::Arc;
use std::time::Duration;

use tenter_features::Outline;
use tower_lsp::lsp_types::notification::Progress;
use tower_lsp::lsp_types::request::WorkDoneProgressCreate;
use tower_lsp::lsp_types::{
    NumberOrString, ProgressParams, ProgressParamsValue, WorkDoneProgress, WorkDoneProgressBegin,
    WorkDoneProgressCreateParams, WorkDoneProgressEnd, WorkDoneProgressReport,
};

use crate::outside;
use crate::server::Shared;
use crate::uris;
use crate::world::{Read, Unread};

/// Files read between two words of progress.
const BATCH: usize = 250;
/// Most files of one folder.
const MOST: usize = 100_000;
/// Fewer are read in no time and need no progress.
const FEW: usize = 500;

/// Reads every folder that waits to be read, one after another.
pub(crate) async fn run(shared: Arc<Shared>, client: tower_lsp::Client) {
    loop {
        let unread = shared.with_world(|world| world.take_unread());
        if unread.is_empty() {
            shared.unread.notified().await;
            continue;
        }
        for folder in unread {
            read(&shared, &client, folder).await;
        }
        shared.refresh_all(&client);
    }
}

async fn read(shared: &Arc<Shared>, client: &tower_lsp::Client, unread: Unread) {
    let (folder, deep) = (Arc::clone(&unread.folder), unread.deep);
    let Ok(paths) = tokio::task::spawn_blocking(move || outside::dye_files(&folder, deep, MOST)).await else {
        return;
    };
    let total = paths.len();
    let progress = if total > FEW && shared.client().shows_progress { begin(client).await } else { None };
    for (number, batch) in paths.chunks(BATCH).enumerate() {
        let batch = batch.to_vec();
        let files = tokio::task::spawn_blocking(move || {
            batch
                .into_iter()
                .filter_map(|(collection, path)| {
                    let inside = uris::inside(&collection, &path)?;
                    let text = outside::read_text(&path)?;
                    let outline = Outline::scan(&text, &inside);
                    Some(Read { collection, path: inside.into(), text, outline })
                })
                .collect::<Vec<_>>()
        })
        .await
        .unwrap_or_default();
        shared.with_world(|world| world.store_read(files, deep));
        if let Some(token) = &progress {
            let done = (number + 1) * BATCH;
            let report = WorkDoneProgressReport {
                message: Some(format!("{} of {total} files", done.min(total))),
                percentage: Some(u32::try_from(100 * done.min(total) / total.max(1)).unwrap_or(100)),
                cancellable: Some(false),
            };
            send(client, token, WorkDoneProgress::Report(report)).await;
        }
    }
    if let Some(token) = &progress {
        let end = WorkDoneProgressEnd { message: Some(format!("{total} files")) };
        send(client, token, WorkDoneProgress::End(end)).await;
    }
}

/// Asks for a place to show progress; a client that does not answer gets none.
async fn begin(client: &tower_lsp::Client) -> Option<NumberOrString> {
    let token = NumberOrString::String("tenter/index".to_owned());
    let asked = client.send_request::<WorkDoneProgressCreate>(WorkDoneProgressCreateParams { token: token.clone() });
    tokio::time::timeout(Duration::from_secs(2), asked).await.ok()?.ok()?;
    let begin = WorkDoneProgressBegin {
        title: "Reading the collection".to_owned(),
        cancellable: Some(false),
        message: None,
        percentage: Some(0),
    };
    send(client, &token, WorkDoneProgress::Begin(begin)).await;
    Some(token)
}

async fn send(client: &tower_lsp::Client, token: &NumberOrString, value: WorkDoneProgress) {
    let params = ProgressParams { token: token.clone(), value: ProgressParamsValue::WorkDone(value) };
    client.send_notification::<Progress>(params).await;
}
