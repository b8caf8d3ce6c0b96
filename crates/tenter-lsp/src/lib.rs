//! Language server for `.dye` files: translates the Language Server Protocol to and from [`tenter_features`].
//!
//! ```text
//! stdin ──frames──▶ loop ──text sync, in wire order──▶ World
//!                     └──requests, each with a View of the World──▶ Server ──▶ features ──▶ stdout
//! ```
//!
//! The loop is the only one that changes texts. A request carries the picture of the texts as they were when it
//! arrived, so an answer always fits the text the client had when it asked. Nothing waits for the client inside a
//! handler, and no lock is held across an await.

mod capabilities;
mod convert;
mod diagnostics;
mod frames;
mod index;
mod outside;
mod serve;
mod server;
mod settings;
mod tokens;
mod uris;
mod world;

use std::io::{BufReader, Read, Write};

use tower_lsp::LspService;

use crate::server::Server;

/// Serves on standard input and output until the client goes away. Gives the code to end the process with: 0 after
/// `shutdown`, else 1.
pub async fn serve_stdio() -> i32 {
    serve_on(std::io::stdin(), std::io::stdout()).await
}

/// Serves on a pair of streams, see [`serve_stdio`].
pub async fn serve_on(input: impl Read + Send + 'static, output: impl Write + Send + 'static) -> i32 {
    let shared = server::Shared::new();
    let for_server = std::sync::Arc::clone(&shared);
    let (service, socket) = LspService::build(|client| Server::new(client, for_server)).finish();
    serve::run(service, socket, shared, BufReader::with_capacity(1 << 16, input), output).await
}

/// A runtime that suits the server.
///
/// # Errors
/// When the system gives no threads.
pub fn runtime() -> std::io::Result<tokio::runtime::Runtime> {
    tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_time().build()
}
