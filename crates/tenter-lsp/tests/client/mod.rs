//! A client that starts the server as a child process with its input held open, and fails on whatever it is not told of:
//! messages nobody read, answers that take too long, panics on the error output.

#![allow(clippy::disallowed_types, clippy::disallowed_methods, reason = "a test has clock and processes")]

use std::io::{BufRead, BufReader, Read, Write};
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

/// Longer than this nothing may take in these tests.
pub const LIMIT: Duration = Duration::from_secs(30);

pub struct Client {
    child: Child,
    input: Option<ChildStdin>,
    arrived: Receiver<Value>,
    stderr: Option<JoinHandle<String>>,
    kept: Vec<Value>,
    number: i64,
    /// Requests of the server that are answered by themselves, and with what.
    pub answers: Vec<(&'static str, Value)>,
    finished: bool,
}

impl Client {
    /// Starts the process and nothing else.
    pub fn bare() -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_tenter-lsp"))
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let input = child.stdin.take();
        let mut output = BufReader::new(child.stdout.take().unwrap());
        let mut errors = child.stderr.take().unwrap();
        let (send, arrived) = channel();
        std::thread::spawn(move || {
            while let Some(message) = read(&mut output) {
                if send.send(message).is_err() {
                    break;
                }
            }
        });
        let stderr = std::thread::spawn(move || {
            let mut text = String::new();
            let _ = errors.read_to_string(&mut text);
            text
        });
        Self {
            child,
            input,
            arrived,
            stderr: Some(stderr),
            kept: Vec::new(),
            number: 0,
            answers: Vec::new(),
            finished: false,
        }
    }

    /// Starts a session with these capabilities. Gives what the server offers.
    pub fn start(capabilities: Value, more: Value) -> (Self, Value) {
        let mut client = Self::bare();
        let mut params = json!({ "processId": null, "rootUri": null, "capabilities": capabilities });
        for (key, value) in more.as_object().into_iter().flatten() {
            params[key] = value.clone();
        }
        let offered = client.request("initialize", params);
        client.notify("initialized", json!({}));
        (client, offered)
    }

    pub fn send(&mut self, message: &Value) {
        self.send_bytes(&serde_json::to_vec(message).unwrap());
    }

    pub fn send_bytes(&mut self, body: &[u8]) {
        let input = self.input.as_mut().unwrap();
        let _ = write!(input, "Content-Length: {}\r\n\r\n", body.len());
        let _ = input.write_all(body);
        let _ = input.flush();
    }

    pub fn send_raw(&mut self, bytes: &[u8]) {
        let input = self.input.as_mut().unwrap();
        input.write_all(bytes).unwrap();
        input.flush().unwrap();
    }

    pub fn notify(&mut self, method: &str, params: Value) {
        self.send(&json!({ "jsonrpc": "2.0", "method": method, "params": params }));
    }

    /// Sends a request and gives its number.
    pub fn ask(&mut self, method: &str, params: Value) -> i64 {
        self.number += 1;
        self.send(&json!({ "jsonrpc": "2.0", "id": self.number, "method": method, "params": params }));
        self.number
    }

    /// The answer to a request, whole.
    pub fn answer(&mut self, number: i64) -> Value {
        self.wait(&format!("answer {number}"), |message| {
            message.get("method").is_none() && message.get("id") == Some(&json!(number))
        })
    }

    /// Asks and gives the result; an error fails the test.
    pub fn request(&mut self, method: &str, params: Value) -> Value {
        let number = self.ask(method, params);
        let answer = self.answer(number);
        assert!(answer.get("error").is_none(), "{method}: {answer}");
        answer["result"].clone()
    }

    /// Asks and gives the code of the error.
    pub fn refused(&mut self, method: &str, params: Value) -> i64 {
        let number = self.ask(method, params);
        let answer = self.answer(number);
        answer["error"]["code"].as_i64().unwrap_or_else(|| panic!("{method} was answered: {answer}"))
    }

    /// The next notification of a method.
    pub fn told(&mut self, method: &str) -> Value {
        let message = self.wait(method, |message| message.get("id").is_none() && message["method"] == method);
        message["params"].clone()
    }

    /// The next request of the server for a method; it is left to the test to answer.
    pub fn asked(&mut self, method: &str) -> Value {
        self.wait(method, |message| message.get("id").is_some() && message["method"] == method)
    }

    /// The first message that fits; others are kept.
    pub fn wait(&mut self, what: &str, fits: impl Fn(&Value) -> bool) -> Value {
        if let Some(index) = self.kept.iter().position(&fits) {
            return self.kept.remove(index);
        }
        let end = Instant::now() + LIMIT;
        loop {
            let left = end.saturating_duration_since(Instant::now());
            match self.arrived.recv_timeout(left) {
                Ok(message) => {
                    if self.replied(&message) {
                        continue;
                    }
                    if fits(&message) {
                        return message;
                    }
                    self.kept.push(message);
                }
                Err(RecvTimeoutError::Timeout) => panic!("{what} did not come; kept: {:?}", self.kept),
                Err(RecvTimeoutError::Disconnected) => panic!("{what}: the server went away; kept: {:?}", self.kept),
            }
        }
    }

    fn replied(&mut self, message: &Value) -> bool {
        let (Some(id), Some(method)) = (message.get("id"), message.get("method")) else { return false };
        let found = self.answers.iter().find(|(name, _)| method == name).map(|(_, result)| result.clone());
        if let Some(result) = found {
            self.send(&json!({ "jsonrpc": "2.0", "id": id, "result": result }));
            return true;
        }
        false
    }

    pub fn open(&mut self, uri: &str, text: &str) {
        let document = json!({ "uri": uri, "languageId": "dye", "version": 1, "text": text });
        self.notify("textDocument/didOpen", json!({ "textDocument": document }));
    }

    /// Replaces a range: start line, start column, end line, end column.
    pub fn change(&mut self, uri: &str, version: i64, [a, b, c, d]: [u32; 4], text: &str) {
        let range = json!({ "start": { "line": a, "character": b }, "end": { "line": c, "character": d } });
        let params = json!({
            "textDocument": { "uri": uri, "version": version },
            "contentChanges": [{ "range": range, "text": text }],
        });
        self.notify("textDocument/didChange", params);
    }

    /// Messages that came and that no test asked about.
    pub fn unread(&mut self) -> Vec<Value> {
        while let Ok(message) = self.arrived.recv_timeout(Duration::from_millis(50)) {
            if !self.replied(&message) {
                self.kept.push(message);
            }
        }
        std::mem::take(&mut self.kept)
    }

    /// Shuts down as the protocol asks, and checks that nothing was left over.
    pub fn finish(mut self) {
        let result = self.request("shutdown", Value::Null);
        assert_eq!(result, Value::Null);
        let left = self.unread();
        assert!(left.is_empty(), "unread: {left:#?}");
        self.send(&json!({ "jsonrpc": "2.0", "method": "exit" }));
        assert_eq!(self.code(), 0);
    }

    /// Closes the input.
    pub fn hang_up(&mut self) {
        self.input = None;
    }

    /// The exit code, once the process ends; its error output must be free of panics.
    pub fn code(&mut self) -> i32 {
        let end = Instant::now() + LIMIT;
        while Instant::now() < end {
            if let Some(status) = self.child.try_wait().unwrap() {
                self.finished = true;
                let errors = self.stderr.take().map(|thread| thread.join().unwrap()).unwrap_or_default();
                assert!(!errors.contains("panicked"), "{errors}");
                return status.code().unwrap_or(-1);
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        panic!("the server is still running");
    }
}

impl Drop for Client {
    fn drop(&mut self) {
        if !self.finished {
            let _ = self.child.kill();
            let _ = self.child.wait();
        }
    }
}

fn read(output: &mut impl BufRead) -> Option<Value> {
    let mut length = 0;
    loop {
        let mut line = String::new();
        if output.read_line(&mut line).ok()? == 0 {
            return None;
        }
        let line = line.trim();
        if line.is_empty() {
            break;
        }
        // Nothing but frames may stand on the output.
        let (name, value) = line.split_once(':').unwrap_or_else(|| panic!("not a frame: {line}"));
        assert_eq!(name, "Content-Length");
        length = value.trim().parse().unwrap();
    }
    let mut body = vec![0; length];
    output.read_exact(&mut body).ok()?;
    Some(serde_json::from_slice(&body).unwrap())
}
