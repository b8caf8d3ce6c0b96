//! The loop: frames in, frames out, texts changed in wire order.
//!
//! tower-lsp brings the routing, the types and the client handle; its own loop is not used, for it ends on a malformed
//! message, stands still when answers of the client queue behind its requests, and stays after `exit`.

use std::future::Future;
use std::io::{BufRead, Write};
use std::panic::AssertUnwindSafe;
use std::sync::Arc;
use std::time::Duration;

use futures::{FutureExt, SinkExt, StreamExt};
use serde_json::Value;
use tokio::sync::{mpsc, oneshot};
use tower::Service;
use tower_lsp::ClientSocket;
use tower_lsp::jsonrpc::{Error, ErrorCode, Id, Request, Response};

use crate::frames::{self, Frame};
use crate::outside;
use crate::server::{Shared, VIEW};

/// How often a client that died without a word is looked for.
const PULSE: Duration = Duration::from_secs(1);

/// What goes to the client.
enum Out {
    Body(Vec<u8>),
    Flush(oneshot::Sender<()>),
}

/// Runs until the client goes away; gives the exit code.
pub(crate) async fn run<S>(
    mut service: S,
    socket: ClientSocket,
    shared: Arc<Shared>,
    input: impl BufRead + Send + 'static,
    output: impl Write + Send + 'static,
) -> i32
where
    S: Service<Request, Response = Option<Response>>,
    S::Future: Send + 'static,
    S::Error: std::fmt::Display + Send,
{
    let mut incoming = reader(input);
    let out = writer(output);
    let (mut requests, mut responses) = socket.split();
    let to_client = out.clone();
    let forward = tokio::spawn(async move {
        while let Some(request) = requests.next().await {
            post(&to_client, &request).await;
        }
    });
    let mut pulse = tokio::time::interval(PULSE);
    let mut shut_down = false;
    let code = loop {
        let frame = tokio::select! {
            frame = incoming.recv() => frame,
            _ = pulse.tick() => {
                if shared.parent().is_some_and(|parent| !outside::alive(parent)) {
                    break 1;
                }
                continue;
            }
        };
        let body = match frame {
            None => break i32::from(!shut_down),
            Some(Frame::Message(body)) => body,
            Some(Frame::Broken(why)) => {
                refuse(&out, Id::Null, ErrorCode::ParseError, why);
                continue;
            }
        };
        let Ok(message) = serde_json::from_slice::<Value>(&body) else {
            refuse(&out, Id::Null, ErrorCode::ParseError, "a message that is no JSON");
            continue;
        };
        if message.get("method").is_none() {
            match serde_json::from_value::<Response>(message) {
                Ok(response) => drop(responses.send(response).await),
                Err(_) => refuse(&out, Id::Null, ErrorCode::InvalidRequest, "neither a request nor an answer"),
            }
            continue;
        }
        let id = message.get("id").and_then(|id| serde_json::from_value(id.clone()).ok());
        let Ok(request) = serde_json::from_value::<Request>(message) else {
            refuse(&out, id.unwrap_or(Id::Null), ErrorCode::InvalidRequest, "a request that is none");
            continue;
        };
        match request.method() {
            "exit" => break i32::from(!shut_down),
            "shutdown" => {
                // Clients send `null`, `{}` or nothing; none of it means anything.
                let bare = Request::build("shutdown");
                let bare = id.map_or_else(|| Request::build("shutdown"), |id| bare.id(id)).finish();
                shut_down = true;
                answer(&mut service, bare, &out).await;
            }
            // What changes settings, folders or files is done before anything behind it is read. None of these waits for
            // the client: what does is spawned.
            "initialize"
            | "initialized"
            | "workspace/didChangeConfiguration"
            | "workspace/didChangeWorkspaceFolders"
            | "workspace/didChangeWatchedFiles" => answer(&mut service, request, &out).await,
            _ if sync(&shared, &request) => {}
            // Whoever asks for one of these and is not told waits for ever; as a notification it may be passed over.
            method if method.starts_with("$/") && method != "$/cancelRequest" => {
                if let Some(id) = id {
                    refuse(&out, id, ErrorCode::MethodNotFound, "no such method");
                }
            }
            _ => {
                let view = shared.view();
                let id = request.id().cloned();
                let work = AssertUnwindSafe(service.call(request));
                let out = out.clone();
                let after = view.clone();
                tokio::spawn(async move {
                    let done = VIEW.scope(view, settled(work.catch_unwind(), id)).await;
                    if let Some(response) = done {
                        post(&out, &response).await;
                    }
                    after.clear_spent();
                });
            }
        }
    };
    forward.abort();
    let (told, written) = oneshot::channel();
    if out.try_send(Out::Flush(told)).is_ok() {
        let _ = tokio::time::timeout(PULSE, written).await;
    }
    code
}

/// Applies what changes texts, at once and in wire order; false for anything else.
fn sync(shared: &Shared, request: &Request) -> bool {
    let method = request.method();
    if !matches!(
        method,
        "textDocument/didOpen" | "textDocument/didChange" | "textDocument/didClose" | "textDocument/didSave"
    ) {
        return false;
    }
    let params = request.params().cloned().unwrap_or(Value::Null);
    // A text that trips a fault costs that change, not the server.
    let _ = std::panic::catch_unwind(AssertUnwindSafe(|| shared.sync(method, params)));
    true
}

/// Calls the service and waits: for what must be done before anything else is read.
async fn answer<S>(service: &mut S, request: Request, out: &mpsc::Sender<Out>)
where
    S: Service<Request, Response = Option<Response>>,
    S::Future: Send + 'static,
    S::Error: std::fmt::Display,
{
    let id = request.id().cloned();
    let work = AssertUnwindSafe(service.call(request));
    if let Some(response) = settled(work.catch_unwind(), id).await {
        post(out, &response).await;
    }
}

/// The response to a request; a panic becomes an internal error.
async fn settled<E: std::fmt::Display>(
    work: impl Future<Output = Result<Result<Option<Response>, E>, Box<dyn std::any::Any + Send>>>,
    id: Option<Id>,
) -> Option<Response> {
    match work.await {
        Ok(Ok(response)) => response,
        Ok(Err(_)) => id.map(|id| Response::from_error(id, Error::invalid_request())),
        Err(_) => id.map(|id| Response::from_error(id, Error::internal_error())),
    }
}

async fn post(out: &mpsc::Sender<Out>, message: &impl serde::Serialize) {
    if let Ok(body) = serde_json::to_vec(message) {
        let _ = out.send(Out::Body(body)).await;
    }
}

/// Tells of a message that could not be taken. The loop does not wait for a client that does not read.
fn refuse(out: &mpsc::Sender<Out>, id: Id, code: ErrorCode, why: &'static str) {
    let response = Response::from_error(id, Error { code, message: why.into(), data: None });
    if let Ok(body) = serde_json::to_vec(&response) {
        let _ = out.try_send(Out::Body(body));
    }
}

fn reader(mut input: impl BufRead + Send + 'static) -> mpsc::Receiver<Frame> {
    let (send, receive) = mpsc::channel(64);
    std::thread::spawn(move || {
        while let Ok(Some(frame)) = frames::read(&mut input) {
            if send.blocking_send(frame).is_err() {
                break;
            }
        }
    });
    receive
}

fn writer(mut output: impl Write + Send + 'static) -> mpsc::Sender<Out> {
    let (send, mut receive) = mpsc::channel(256);
    std::thread::spawn(move || {
        while let Some(next) = receive.blocking_recv() {
            match next {
                Out::Body(body) => {
                    if frames::write(&mut output, &body).is_err() {
                        break;
                    }
                }
                Out::Flush(told) => {
                    let _ = told.send(());
                }
            }
        }
    });
    send
}

#[cfg(test)]
mod tests {
    use std::io::{BufReader, PipeReader, PipeWriter, pipe};
    use std::task::{Context, Poll};

    use futures::future::BoxFuture;
    use serde_json::json;
    use tower_lsp::LspService;

    use super::*;
    use crate::server::Server;

    /// Panics when asked to, at once or while working; answers everything else.
    struct Fragile;

    impl Service<Request> for Fragile {
        type Response = Option<Response>;
        type Error = std::convert::Infallible;
        type Future = BoxFuture<'static, Result<Option<Response>, Self::Error>>;

        fn poll_ready(&mut self, _: &mut Context<'_>) -> Poll<Result<(), Self::Error>> {
            Poll::Ready(Ok(()))
        }

        fn call(&mut self, request: Request) -> Self::Future {
            Box::pin(async move {
                assert!(request.method() != "boom", "meant to happen");
                Ok(request.id().cloned().map(|id| Response::from_ok(id, json!("fine"))))
            })
        }
    }

    fn send(to: &mut PipeWriter, message: &Value) {
        frames::write(to, &serde_json::to_vec(message).unwrap()).unwrap();
    }

    fn receive(from: &mut BufReader<PipeReader>) -> Value {
        match frames::read(from).unwrap() {
            Some(Frame::Message(body)) => serde_json::from_slice(&body).unwrap(),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_handler_that_panics_costs_its_request_only() {
        let (input, mut to_server) = pipe().unwrap();
        let (from_server, output) = pipe().unwrap();
        let server = std::thread::spawn(move || {
            let shared = Shared::new();
            let for_server = Arc::clone(&shared);
            let (_, socket) = LspService::new(|client| Server::new(client, for_server));
            let runtime = crate::runtime().unwrap();
            runtime.block_on(run(Fragile, socket, shared, BufReader::new(input), output))
        });
        let mut from_server = BufReader::new(from_server);
        for id in 1..20 {
            send(&mut to_server, &json!({ "jsonrpc": "2.0", "id": id, "method": "boom" }));
            let answer = receive(&mut from_server);
            assert_eq!((&answer["id"], &answer["error"]["code"]), (&json!(id), &json!(-32603)));
        }
        send(&mut to_server, &json!({ "jsonrpc": "2.0", "id": 99, "method": "calm" }));
        assert_eq!(receive(&mut from_server)["result"], "fine");
        drop(to_server);
        assert_eq!(server.join().unwrap(), 1);
    }
}
