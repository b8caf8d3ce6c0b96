//! `tenter lsp`: the server behind the command answers and ends as the protocol asks.

use std::io::{Read, Write};
use std::process::{Command, Stdio};

fn frame(body: &str) -> String {
    format!("Content-Length: {}\r\n\r\n{body}", body.len())
}

#[test]
fn it_answers_and_ends_when_told() {
    let mut server = Command::new(env!("CARGO_BIN_EXE_tenter"))
        .arg("lsp")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("the program");
    // Standard input stays open: the server has to end by itself.
    let mut input = server.stdin.take().expect("its input");
    for body in [
        r#"{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}"#,
        r#"{"jsonrpc":"2.0","method":"initialized","params":{}}"#,
        r#"{"jsonrpc":"2.0","id":2,"method":"shutdown"}"#,
        r#"{"jsonrpc":"2.0","method":"exit"}"#,
    ] {
        input.write_all(frame(body).as_bytes()).expect("written");
    }
    let status = server.wait().expect("an end");
    let mut said = String::new();
    server.stdout.take().expect("its output").read_to_string(&mut said).expect("text");
    assert!(status.success(), "{status}");
    assert!(said.starts_with("Content-Length: "), "{said}");
    assert!(said.contains("\"capabilities\"") && said.contains("\"id\":2"), "{said}");
    drop(input);
}
