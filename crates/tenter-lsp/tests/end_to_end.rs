//! The server as a child process with its input held open.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]
#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "a test has disk and clock")]

mod client;

use std::time::{Duration, Instant};

use client::Client;
use serde_json::{Value, json};

const URI: &str = "untitled:Untitled-1";

const TEES: &str = "\
recipe Small Tide
  room     22 °C

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

dye lagoon
  class    reactive dichlorotriazine
  index    C.I. Reactive Blue 4
  colour   #1d5fa6

mix soda soak
  6 L      water at 40 °C
  60 g/L   soda ash

layout rings
  zone 60% rim
  zone 40% heart

steps prepare
  wear     dust mask, gloves, goggles
  soak     tees in soda soak for 20 min
  spin     tees to 65% pickup
  fold     tees as rings

steps colour
  sprinkle 3 g/piece lagoon on rim
  sprinkle 12 g/piece soda ash on front
  irrigate 400 mL/piece water at 82 °C
  batch    tees for 6 h covered

steps wash off
  rinse    tees in cold water until nearly clear
  soap off tees in 10 L water at 60 °C with 1 g/L textile detergent, 2 times
  dry      tees
";

/// Pulls diagnostics, so that nothing comes unasked.
fn quiet() -> Value {
    json!({ "textDocument": { "diagnostic": {} } })
}

fn place(uri: &str, line: u32, character: u32) -> Value {
    json!({ "textDocument": { "uri": uri }, "position": { "line": line, "character": character } })
}

fn whole(uri: &str) -> Value {
    let end = json!({ "line": 100_000, "character": 0 });
    json!({ "textDocument": { "uri": uri }, "range": { "start": { "line": 0, "character": 0 }, "end": end } })
}

fn labels(hints: &Value) -> Vec<(u64, String)> {
    hints
        .as_array()
        .unwrap()
        .iter()
        .map(|hint| (hint["position"]["line"].as_u64().unwrap(), hint["label"].as_str().unwrap().to_owned()))
        .collect()
}

// ---- start and end ----

#[test]
fn a_session_ends_with_zero() {
    let (client, _) = Client::start(quiet(), json!({}));
    client.finish();
}

#[test]
fn shutdown_takes_any_parameters() {
    for params in [json!(null), json!({}), json!([])] {
        let (mut client, _) = Client::start(quiet(), json!({}));
        assert_eq!(client.request("shutdown", params), Value::Null);
        client.notify("exit", Value::Null);
        assert_eq!(client.code(), 0);
    }
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.send(&json!({ "jsonrpc": "2.0", "id": "last", "method": "shutdown" }));
    client.wait("shutdown", |message| message["id"] == "last" && message["result"] == Value::Null);
    client.send(&json!({ "jsonrpc": "2.0", "method": "exit" }));
    assert_eq!(client.code(), 0);
}

#[test]
fn exit_without_shutdown_is_one() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.send(&json!({ "jsonrpc": "2.0", "method": "exit" }));
    assert_eq!(client.code(), 1);
}

#[test]
fn a_closed_input_ends_the_server() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.hang_up();
    assert_eq!(client.code(), 1);
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.request("shutdown", Value::Null);
    client.hang_up();
    assert_eq!(client.code(), 0);
}

#[test]
fn the_end_of_the_parent_ends_the_server() {
    let mut parent = std::process::Command::new("true").spawn().unwrap();
    let id = parent.id();
    parent.wait().unwrap();
    let (mut client, _) = Client::start(quiet(), json!({ "processId": id }));
    assert_eq!(client.code(), 1);
}

#[test]
fn requests_before_and_after_the_session_are_refused() {
    let mut client = Client::bare();
    assert_eq!(client.refused("textDocument/hover", place(URI, 0, 0)), -32002);
    client.request("initialize", json!({ "capabilities": quiet() }));
    client.notify("initialized", json!({}));
    client.request("shutdown", Value::Null);
    assert_eq!(client.refused("textDocument/hover", place(URI, 0, 0)), -32600);
    client.send(&json!({ "jsonrpc": "2.0", "method": "exit" }));
    assert_eq!(client.code(), 0);
}

// ---- what must not end it ----

#[test]
fn malformed_messages_cost_themselves_only() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.open(URI, TEES);
    for body in ["{", "nonsense", "\u{0}"] {
        client.send_bytes(body.as_bytes());
        client.wait("parse error", |message| message["error"]["code"] == -32700 && message["id"] == Value::Null);
    }
    client.send_bytes(&[0xff, 0xfe, 0x00]);
    client.wait("parse error", |message| message["error"]["code"] == -32700);
    client.send_raw(b"Nonsense: 1\r\n\r\n");
    client.wait("parse error", |message| message["error"]["code"] == -32700);
    client.send_bytes(b"[]");
    client.wait("invalid request", |message| message["error"]["code"] == -32600);
    client.send_bytes(br#"{"jsonrpc":"2.0","id":77,"method":5}"#);
    client.wait("invalid request", |message| message["error"]["code"] == -32600 && message["id"] == 77);
    client.notify("textDocument/didChange", json!({ "nothing": "fits" }));
    client.notify("$/unknown", json!({}));
    assert_eq!(client.refused("textDocument/hover", json!({ "position": "wrong" })), -32602);
    assert_eq!(client.refused("tenter/unknown", json!({})), -32601);
    assert!(!labels(&client.request("textDocument/inlayHint", whole(URI))).is_empty());
    client.finish();
}

/// The protocol: a request whose method begins with `$/` and is not known is answered with MethodNotFound.
#[test]
fn an_unknown_request_of_the_protocol_is_refused() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.notify("$/unheardOf", json!({}));
    assert_eq!(client.refused("$/unheardOf", json!({})), -32601);
    client.finish();
}

#[test]
fn positions_outside_the_text_are_clamped() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.open(URI, TEES);
    for (line, character) in [(0, u32::MAX), (u32::MAX, 0), (u32::MAX, u32::MAX), (1, 40)] {
        for method in ["hover", "definition", "completion", "documentHighlight", "prepareRename", "signatureHelp"] {
            client.request(&format!("textDocument/{method}"), place(URI, line, character));
        }
    }
    client.change(URI, 2, [900, 9, 3, 1], "x");
    client.change(URI, 3, [5, 3, 2, 0], "");
    client.request("textDocument/documentSymbol", json!({ "textDocument": { "uri": URI } }));
    client.finish();
}

#[test]
fn documents_nobody_opened_are_no_trouble() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    for uri in ["file:///nowhere/at/all.dye", "untitled:none", "zip:/x.zip::a.dye"] {
        assert_eq!(client.request("textDocument/hover", place(uri, 0, 0)), Value::Null);
        client.change(uri, 2, [0, 0, 0, 0], "x");
        client.notify("textDocument/didClose", json!({ "textDocument": { "uri": uri } }));
    }
    client.finish();
}

#[test]
fn queued_requests_are_answered_while_the_client_owes_answers() {
    let able = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": { "configuration": true, "didChangeWatchedFiles": { "dynamicRegistration": true } },
    });
    let (mut client, _) = Client::start(able, json!({}));
    client.open(URI, TEES);
    for _ in 0..4 {
        client.notify("workspace/didChangeConfiguration", json!({ "settings": null }));
    }
    let numbers: Vec<i64> = (0..300).map(|_| client.ask("textDocument/hover", place(URI, 23, 3))).collect();
    for number in numbers {
        assert!(client.answer(number).get("result").is_some());
    }
    // Only now the client answers what it was asked.
    client.answers = vec![("workspace/configuration", json!([null])), ("client/registerCapability", Value::Null)];
    let owed: Vec<Value> = client.unread();
    assert!(owed.iter().any(|message| message["method"] == "workspace/configuration"), "{owed:?}");
    for request in owed {
        client.send(&json!({ "jsonrpc": "2.0", "id": request["id"], "result": [null] }));
    }
    client.finish();
}

// ---- order ----

#[test]
fn a_request_behind_many_changes_sees_them_all() {
    for _ in 0..10 {
        let (mut client, _) = Client::start(quiet(), json!({}));
        client.open(URI, "mix a\n");
        for number in 0..200_u32 {
            client.change(URI, i64::from(number) + 2, [number, 5, number, 5], &format!("{number}\nmix b"));
            if number % 50 == 49 {
                let asked = json!({ "textDocument": { "uri": URI } });
                let symbols = client.request("textDocument/documentSymbol", asked);
                assert_eq!(symbols.as_array().unwrap().len(), number as usize + 2);
            }
        }
        client.finish();
    }
}

#[test]
fn an_answer_fits_the_text_of_its_moment() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.open(URI, "mix a\n");
    let first = client.ask("textDocument/documentSymbol", json!({ "textDocument": { "uri": URI } }));
    client.change(URI, 2, [0, 0, 0, 0], "mix b\n\n");
    let second = client.ask("textDocument/documentSymbol", json!({ "textDocument": { "uri": URI } }));
    assert_eq!(client.answer(first)["result"].as_array().unwrap().len(), 1);
    assert_eq!(client.answer(second)["result"].as_array().unwrap().len(), 2);
    client.finish();
}

#[test]
fn a_cancelled_request_is_answered_as_cancelled_or_in_full() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    for number in 0..60 {
        client.open(&format!("untitled:many-{number}"), TEES);
    }
    let number = client.ask("workspace/diagnostic", json!({ "previousResultIds": [] }));
    client.notify("$/cancelRequest", json!({ "id": number }));
    let answer = client.answer(number);
    assert!(answer["error"]["code"] == -32800 || answer.get("result").is_some(), "{answer}");
    // Cancelling what is done, or what never was, does no harm.
    client.notify("$/cancelRequest", json!({ "id": number }));
    client.notify("$/cancelRequest", json!({ "id": "never" }));
    client.request("textDocument/hover", place("untitled:many-3", 0, 1));
    client.finish();
}

// ---- diagnostics ----

#[test]
fn findings_are_pushed_with_their_version_and_cleared() {
    let (mut client, offered) = Client::start(json!({}), json!({}));
    assert_eq!(offered["capabilities"].get("diagnosticProvider"), None);
    client.open(URI, &TEES.replace("lagoon on rim", "lagon on rim"));
    let told = client.told("textDocument/publishDiagnostics");
    assert_eq!(told["version"], 1);
    let found = told["diagnostics"].as_array().unwrap();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0]["code"], "unknown-name");
    assert_eq!(found[0]["range"]["start"], json!({ "line": 29, "character": 21 }));
    client.change(URI, 2, [29, 21, 29, 26], "lagoon");
    let told = client.told("textDocument/publishDiagnostics");
    assert_eq!((&told["version"], &told["diagnostics"]), (&json!(2), &json!([])));
    client.change(URI, 3, [29, 21, 29, 27], "lgoon");
    let told = client.told("textDocument/publishDiagnostics");
    assert_eq!(told["version"], 3);
    client.notify("textDocument/didClose", json!({ "textDocument": { "uri": URI } }));
    let told = client.told("textDocument/publishDiagnostics");
    assert_eq!(told["diagnostics"], json!([]));
    client.finish();
}

#[test]
fn a_client_that_pulls_is_pushed_nothing() {
    let (mut client, offered) = Client::start(quiet(), json!({}));
    assert_eq!(offered["capabilities"]["diagnosticProvider"]["interFileDependencies"], true);
    client.open(URI, &TEES.replace("lagoon on rim", "lagon on rim"));
    let asked = json!({ "textDocument": { "uri": URI } });
    let report = client.request("textDocument/diagnostic", asked);
    assert_eq!((&report["kind"], report["items"].as_array().unwrap().len()), (&json!("full"), 1));
    let again = json!({ "textDocument": { "uri": URI }, "previousResultId": report["resultId"] });
    assert_eq!(client.request("textDocument/diagnostic", again)["kind"], "unchanged");
    let all = client.request("workspace/diagnostic", json!({ "previousResultIds": [] }));
    assert_eq!(all["items"].as_array().unwrap().len(), 1);
    let known = json!([{ "uri": URI, "value": report["resultId"] }]);
    let all = client.request("workspace/diagnostic", json!({ "previousResultIds": known }));
    assert_eq!(all["items"][0]["kind"], "unchanged");
    // An unread publishDiagnostics would fail here.
    client.finish();
}

// ---- encodings ----

#[test]
fn columns_count_what_was_agreed() {
    // Before the name of the mix stand one character each of 2, 3 and 4 bytes, the last two UTF-16 units wide.
    let text = "mix é小😀 bath\r\n  1 L water\r\n\r\nsteps\r\n  soak tees in é小😀 bath for 5 min\r\n";
    let cases = [
        (json!(["utf-8"]), "utf-8", 4, 18),
        (json!(["utf-16"]), "utf-16", 4, 13),
        (json!(["utf-32"]), "utf-32", 4, 12),
        (json!(["utf-16", "utf-8"]), "utf-8", 4, 18),
        (Value::Null, "utf-16", 4, 13),
    ];
    for (offers, agreed, start, end) in cases {
        let able = json!({ "textDocument": { "diagnostic": {} }, "general": { "positionEncodings": offers } });
        let (mut client, offered) = Client::start(able, json!({}));
        assert_eq!(offered["capabilities"]["positionEncoding"], agreed);
        client.open(URI, text);
        let found = client.request("textDocument/definition", place(URI, 4, 17));
        let range = &found[0]["range"];
        assert_eq!(range["start"], json!({ "line": 0, "character": start }), "{agreed}");
        assert_eq!(range["end"], json!({ "line": 0, "character": end }), "{agreed}");
        // An edit behind the wide characters lands where it is meant to.
        client.change(URI, 2, [0, end - 4, 0, end], "tub");
        let symbols = client.request("textDocument/documentSymbol", json!({ "textDocument": { "uri": URI } }));
        assert_eq!(symbols[0]["name"], "é小😀 tub");
        client.finish();
    }
}

// ---- settings ----

#[test]
fn settings_come_by_options_by_notice_and_by_asking() {
    let steps_off = json!({ "hints": { "step": false, "state": false } });
    let (mut client, _) = Client::start(quiet(), json!({ "initializationOptions": steps_off }));
    client.open(URI, TEES);
    let without = labels(&client.request("textDocument/inlayHint", whole(URI)));
    assert!(!without.is_empty() && without.iter().all(|(line, _)| *line < 22), "{without:?}");
    client.notify("workspace/didChangeConfiguration", json!({ "settings": { "tenter": {} } }));
    let with = labels(&client.request("textDocument/inlayHint", whole(URI)));
    assert!(with.iter().any(|(line, _)| *line > 22), "{with:?}");
    client.finish();

    let able = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": { "configuration": true, "inlayHint": { "refreshSupport": true } },
    });
    let (mut client, _) = Client::start(able, json!({}));
    client.open(URI, TEES);
    let asked = client.asked("workspace/configuration");
    assert_eq!(asked["params"]["items"][0]["section"], "tenter");
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": [steps_off] }));
    let refresh = client.asked("workspace/inlayHint/refresh");
    client.send(&json!({ "jsonrpc": "2.0", "id": refresh["id"], "result": null }));
    client.answers = vec![("workspace/inlayHint/refresh", Value::Null)];
    let without = labels(&client.request("textDocument/inlayHint", whole(URI)));
    assert!(without.iter().all(|(line, _)| *line < 22), "{without:?}");
    client.finish();
}

// ---- files ----

fn uri(path: &std::path::Path) -> String {
    format!("file://{}", path.display())
}

#[test]
fn files_on_disk_are_used_and_watched() {
    let folder = tempfile::tempdir().unwrap();
    let (house, user) = (folder.path().join("house.dye"), folder.path().join("user.dye"));
    let text = "use soda soak from \"house.dye\"\n\nrecipe A\n\ngoods tees\n  pieces 2\n  weight 100 g each\n  fibre 100% cotton\n\nsteps\n  soak tees in soda soak for 20 min\n";
    std::fs::write(&user, text).unwrap();
    let able = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": {
            "didChangeWatchedFiles": { "dynamicRegistration": true },
            "diagnostics": { "refreshSupport": true },
            "diagnostic": { "refreshSupport": true },
        },
    });
    let folders = json!([{ "uri": uri(folder.path()), "name": "dyes" }]);
    let (mut client, _) = Client::start(able, json!({ "workspaceFolders": folders }));
    let asked = client.asked("client/registerCapability");
    assert_eq!(asked["params"]["registrations"][0]["method"], "workspace/didChangeWatchedFiles");
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": null }));
    client.answers = vec![("workspace/diagnostic/refresh", Value::Null)];
    client.open(&uri(&user), text);
    let asked = json!({ "textDocument": { "uri": uri(&user) } });
    let codes = |client: &mut Client| -> Vec<String> {
        let report = client.request("textDocument/diagnostic", asked.clone());
        let items = report["items"].as_array().unwrap();
        items.iter().map(|item| item["code"].as_str().unwrap().to_owned()).collect()
    };
    assert!(codes(&mut client).contains(&"broken-use".to_owned()));
    std::fs::write(&house, "mix soda soak\n  3 L water at 40 °C\n  60 g/L soda ash\n").unwrap();
    let changes = json!({ "changes": [{ "uri": uri(&house), "type": 1 }] });
    client.notify("workspace/didChangeWatchedFiles", changes);
    let end = Instant::now() + client::LIMIT;
    while codes(&mut client).contains(&"broken-use".to_owned()) {
        assert!(Instant::now() < end, "the new file was not seen");
        std::thread::sleep(Duration::from_millis(20));
    }
    // A name declared in a file nobody opened: definition, rename and symbols reach it.
    let found = client.request("textDocument/definition", place(&uri(&user), 10, 16));
    assert_eq!(found[0]["uri"], uri(&house));
    let mut rename = place(&uri(&user), 10, 16);
    rename["newName"] = json!("alkali bath");
    let edit = client.request("textDocument/rename", rename);
    assert_eq!(edit["changes"].as_object().unwrap().len(), 2, "{edit}");
    let found = client.request("workspace/symbol", json!({ "query": "soda" }));
    assert_eq!(found[0]["location"]["uri"], uri(&house));
    let moved = json!({ "files": [{ "oldUri": uri(&house), "newUri": uri(&folder.path().join("shared/h.dye")) }] });
    let edit = client.request("workspace/willRenameFiles", moved);
    assert_eq!(edit["changes"][uri(&user)][0]["newText"], "\"shared/h.dye\"");
    std::fs::remove_file(&house).unwrap();
    client.notify("workspace/didChangeWatchedFiles", json!({ "changes": [{ "uri": uri(&house), "type": 3 }] }));
    while !codes(&mut client).contains(&"broken-use".to_owned()) {
        assert!(Instant::now() < end, "the lost file was not missed");
        std::thread::sleep(Duration::from_millis(20));
    }
    client.finish();
}

#[test]
fn each_folder_is_a_collection_of_its_own() {
    let (one, two) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    std::fs::write(one.path().join("house.dye"), "mix bath of one\n  1 L water\n").unwrap();
    std::fs::write(two.path().join("house.dye"), "mix bath of two\n  1 L water\n").unwrap();
    let folders = json!([{ "uri": uri(one.path()), "name": "one" }]);
    let (mut client, _) = Client::start(quiet(), json!({ "workspaceFolders": folders }));
    let added = json!([{ "uri": uri(two.path()), "name": "two" }]);
    client.notify("workspace/didChangeWorkspaceFolders", json!({ "event": { "added": added, "removed": [] } }));
    let names = |client: &mut Client| -> Vec<String> {
        let found = client.request("workspace/symbol", json!({ "query": "bath" }));
        let mut names: Vec<String> =
            found.as_array().unwrap().iter().map(|it| it["name"].as_str().unwrap().to_owned()).collect();
        names.sort();
        names
    };
    let end = Instant::now() + client::LIMIT;
    while names(&mut client) != ["bath of one", "bath of two"] {
        assert!(Instant::now() < end);
        std::thread::sleep(Duration::from_millis(20));
    }
    let user = two.path().join("user.dye");
    client.open(&uri(&user), "use bath of two from \"house.dye\"\n");
    let report = client.request("textDocument/diagnostic", json!({ "textDocument": { "uri": uri(&user) } }));
    assert_eq!(report["items"], json!([]));
    let gone = json!([{ "uri": uri(one.path()), "name": "one" }]);
    client.notify("workspace/didChangeWorkspaceFolders", json!({ "event": { "added": [], "removed": gone } }));
    while names(&mut client) != ["bath of two"] {
        assert!(Instant::now() < end);
        std::thread::sleep(Duration::from_millis(20));
    }
    client.finish();
}

/// Files moved at once in two collections: the `use` lines of both follow.
#[test]
fn files_moved_in_two_collections_are_followed_in_both() {
    let folders = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    for folder in &folders {
        std::fs::write(folder.path().join("house.dye"), "mix bath\n  1 L water\n").unwrap();
        std::fs::write(folder.path().join("user.dye"), "use bath from \"house.dye\"\n").unwrap();
    }
    let opened: Vec<Value> =
        folders.iter().map(|folder| json!({ "uri": uri(folder.path()), "name": "one of two" })).collect();
    let capable =
        json!({ "textDocument": { "diagnostic": {} }, "workspace": { "workspaceEdit": { "documentChanges": true } } });
    for (capabilities, edited) in [(quiet(), "changes"), (capable, "documentChanges")] {
        let (mut client, _) = Client::start(capabilities, json!({ "workspaceFolders": opened }));
        let end = Instant::now() + client::LIMIT;
        while client.request("workspace/symbol", json!({ "query": "bath" })).as_array().map(Vec::len) != Some(2) {
            assert!(Instant::now() < end);
            std::thread::sleep(Duration::from_millis(20));
        }
        let files: Vec<Value> = folders
            .iter()
            .map(|folder| {
                let at = |name: &str| uri(&folder.path().join(name));
                json!({ "oldUri": at("house.dye"), "newUri": at("soaks.dye") })
            })
            .collect();
        let edit = client.request("workspace/willRenameFiles", json!({ "files": files }));
        let count = edit[edited].as_array().map(Vec::len).or_else(|| edit[edited].as_object().map(|map| map.len()));
        assert_eq!(count, Some(2), "{edit}");
        client.finish();
    }
}

#[test]
fn a_large_folder_is_read_with_progress() {
    let folder = tempfile::tempdir().unwrap();
    for number in 0..700 {
        std::fs::write(folder.path().join(format!("r{number}.dye")), format!("mix bath {number}\n  1 L water\n"))
            .unwrap();
    }
    let able = json!({ "textDocument": { "diagnostic": {} }, "window": { "workDoneProgress": true } });
    let folders = json!([{ "uri": uri(folder.path()), "name": "many" }]);
    let (mut client, _) = Client::start(able, json!({ "workspaceFolders": folders }));
    let asked = client.asked("window/workDoneProgress/create");
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": null }));
    let mut kinds = Vec::new();
    while kinds.last().map(String::as_str) != Some("end") {
        let told = client.told("$/progress");
        assert_eq!(told["token"], asked["params"]["token"]);
        kinds.push(told["value"]["kind"].as_str().unwrap().to_owned());
    }
    assert_eq!(kinds, ["begin", "report", "report", "report", "end"]);
    let found = client.request("workspace/symbol", json!({ "query": "bath 699" }));
    assert_eq!(found.as_array().unwrap().len(), 1);
    client.finish();
}

// ---- what is offered is answered ----

#[test]
fn offered_equals_answered() {
    let literals = json!({ "codeActionLiteralSupport": { "codeActionKind": { "valueSet": [] } } });
    let able = json!({ "textDocument": { "diagnostic": {}, "codeAction": literals } });
    let (mut client, offered) = Client::start(able, json!({}));
    client.open(URI, TEES);
    let document = json!({ "textDocument": { "uri": URI } });
    let here = place(URI, 24, 24);
    let with = |base: &Value, more: Value| {
        let mut params = base.clone();
        for (key, value) in more.as_object().unwrap() {
            params[key] = value.clone();
        }
        params
    };
    let options = json!({ "tabSize": 2, "insertSpaces": true });
    let tokens = client.request("textDocument/semanticTokens/full", document.clone());
    let item = client.request("textDocument/prepareCallHierarchy", here.clone())[0].clone();
    let completion = client.request("textDocument/completion", place(URI, 24, 5))[0].clone();
    let hint = client.request("textDocument/inlayHint", whole(URI))[0].clone();
    let lenses = client.request("textDocument/codeLens", document.clone());
    let lens = lenses.as_array().unwrap().iter().find(|lens| lens.get("command").is_none()).unwrap().clone();
    let colour = client.request("textDocument/documentColor", document.clone())[0].clone();
    // For each capability: the methods it stands for.
    let methods: Vec<(&str, Vec<(&str, Value)>)> = vec![
        (
            "callHierarchyProvider",
            vec![
                ("textDocument/prepareCallHierarchy", here.clone()),
                ("callHierarchy/incomingCalls", json!({ "item": item })),
                ("callHierarchy/outgoingCalls", json!({ "item": item })),
            ],
        ),
        (
            "codeActionProvider",
            vec![("textDocument/codeAction", with(&whole(URI), json!({ "context": { "diagnostics": [] } })))],
        ),
        ("codeLensProvider", vec![("textDocument/codeLens", document.clone()), ("codeLens/resolve", lens)]),
        (
            "colorProvider",
            vec![
                ("textDocument/documentColor", document.clone()),
                (
                    "textDocument/colorPresentation",
                    with(&document, json!({ "color": colour["color"], "range": colour["range"] })),
                ),
            ],
        ),
        ("completionProvider", vec![("textDocument/completion", here.clone()), ("completionItem/resolve", completion)]),
        ("declarationProvider", vec![("textDocument/declaration", here.clone())]),
        ("definitionProvider", vec![("textDocument/definition", here.clone())]),
        (
            "diagnosticProvider",
            vec![
                ("textDocument/diagnostic", document.clone()),
                ("workspace/diagnostic", json!({ "previousResultIds": [] })),
            ],
        ),
        (
            "documentFormattingProvider",
            vec![("textDocument/formatting", with(&document, json!({ "options": options })))],
        ),
        ("documentHighlightProvider", vec![("textDocument/documentHighlight", here.clone())]),
        ("documentLinkProvider", vec![("textDocument/documentLink", document.clone())]),
        (
            "documentOnTypeFormattingProvider",
            vec![("textDocument/onTypeFormatting", with(&here, json!({ "ch": "\n", "options": options })))],
        ),
        (
            "documentRangeFormattingProvider",
            vec![("textDocument/rangeFormatting", with(&whole(URI), json!({ "options": options })))],
        ),
        ("documentSymbolProvider", vec![("textDocument/documentSymbol", document.clone())]),
        (
            "executeCommandProvider",
            vec![("workspace/executeCommand", json!({ "command": "tenter.showUse", "arguments": [[]] }))],
        ),
        ("foldingRangeProvider", vec![("textDocument/foldingRange", document.clone())]),
        ("hoverProvider", vec![("textDocument/hover", here.clone())]),
        ("inlayHintProvider", vec![("textDocument/inlayHint", whole(URI)), ("inlayHint/resolve", hint)]),
        ("linkedEditingRangeProvider", vec![("textDocument/linkedEditingRange", here.clone())]),
        ("positionEncoding", vec![]),
        (
            "referencesProvider",
            vec![("textDocument/references", with(&here, json!({ "context": { "includeDeclaration": true } })))],
        ),
        (
            "renameProvider",
            vec![
                ("textDocument/prepareRename", here.clone()),
                ("textDocument/rename", with(&here, json!({ "newName": "alkali bath" }))),
            ],
        ),
        (
            "selectionRangeProvider",
            vec![(
                "textDocument/selectionRange",
                with(&document, json!({ "positions": [{ "line": 24, "character": 24 }] })),
            )],
        ),
        (
            "semanticTokensProvider",
            vec![
                ("textDocument/semanticTokens/full", document.clone()),
                (
                    "textDocument/semanticTokens/full/delta",
                    with(&document, json!({ "previousResultId": tokens["resultId"] })),
                ),
                ("textDocument/semanticTokens/range", whole(URI)),
            ],
        ),
        ("signatureHelpProvider", vec![("textDocument/signatureHelp", here.clone())]),
        ("textDocumentSync", vec![]),
        ("typeDefinitionProvider", vec![("textDocument/typeDefinition", place(URI, 16, 14))]),
        ("workspace", vec![("workspace/willRenameFiles", json!({ "files": [] }))]),
        ("workspaceSymbolProvider", vec![("workspace/symbol", json!({ "query": "" }))]),
    ];
    let mut names: Vec<&str> = offered["capabilities"].as_object().unwrap().keys().map(String::as_str).collect();
    names.sort_unstable();
    let listed: Vec<&str> = methods.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, listed);
    let may_be_empty = ["textDocument/documentLink", "workspace/executeCommand", "workspace/willRenameFiles"];
    for (method, params) in methods.into_iter().flat_map(|(_, methods)| methods) {
        let result = client.request(method, params);
        assert!(!result.is_null() || may_be_empty.contains(&method), "{method} gave nothing");
    }
    // What is not offered is not answered.
    for method in [
        "textDocument/implementation",
        "textDocument/moniker",
        "textDocument/inlineValue",
        "textDocument/prepareTypeHierarchy",
        "textDocument/willSaveWaitUntil",
        "documentLink/resolve",
        "workspaceSymbol/resolve",
        "workspace/willCreateFiles",
        "workspace/willDeleteFiles",
    ] {
        let code = client.refused(method, json!({}));
        assert!(code == -32601 || code == -32602, "{method}: {code}");
    }
    client.finish();
}

#[test]
fn actions_and_hints_are_finished_when_chosen() {
    let able = json!({ "textDocument": {
        "diagnostic": {},
        "codeAction": {
            "codeActionLiteralSupport": { "codeActionKind": { "valueSet": [] } },
            "dataSupport": true,
            "resolveSupport": { "properties": ["edit"] },
        },
    } });
    let (mut client, _) = Client::start(able, json!({}));
    client.open(URI, &TEES.replace("lagoon on rim", "lagon on rim"));
    let range = json!({ "start": { "line": 29, "character": 22 }, "end": { "line": 29, "character": 22 } });
    let asked = json!({ "textDocument": { "uri": URI }, "range": range, "context": { "diagnostics": [] } });
    let actions = client.request("textDocument/codeAction", asked);
    let fix = actions.as_array().unwrap().iter().find(|action| action["kind"] == "quickfix").unwrap().clone();
    assert_eq!(fix.get("edit"), None);
    let done = client.request("codeAction/resolve", fix);
    assert_eq!(done["edit"]["changes"][URI][0]["newText"], "lagoon", "{done}");
    let hints = client.request("textDocument/inlayHint", whole(URI));
    let grams = hints.as_array().unwrap().iter().find(|hint| hint["label"] == "360 g").unwrap().clone();
    let told = client.request("inlayHint/resolve", grams);
    assert!(told["tooltip"]["value"].as_str().unwrap().contains("60 g/L (line 17)"), "{told}");
    client.finish();
}

#[test]
fn commands_ask_the_client_to_edit() {
    let (mut client, _) = Client::start(quiet(), json!({}));
    client.open(URI, TEES);
    let arguments = json!([URI, { "line": 0, "character": 0 }, 8]);
    let number = client.ask("workspace/executeCommand", json!({ "command": "tenter.scale", "arguments": arguments }));
    let asked = client.asked("workspace/applyEdit");
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": { "applied": true } }));
    let edits = asked["params"]["edit"]["changes"][URI].as_array().unwrap().clone();
    let texts: Vec<&str> = edits.iter().map(|edit| edit["newText"].as_str().unwrap()).collect();
    assert_eq!(texts, ["8", "12 L", "20 L"]);
    assert!(client.answer(number).get("error").is_none());
    let bad = json!({ "command": "tenter.scale", "arguments": [URI, { "line": 0, "character": 0 }, -1] });
    assert_eq!(client.refused("workspace/executeCommand", bad), -32602);
    assert_eq!(client.refused("workspace/executeCommand", json!({ "command": "none", "arguments": [URI] })), -32602);
    client.finish();
}

#[test]
fn a_panel_gets_totals_and_sheets() {
    let able = json!({ "textDocument": { "diagnostic": {} }, "window": { "showDocument": { "support": true } } });
    let (mut client, _) = Client::start(able, json!({}));
    client.open(URI, TEES);
    let run = |client: &mut Client, command: &str, argument: Value| {
        client.request("workspace/executeCommand", json!({ "command": command, "arguments": [argument] }))
    };
    let spun = json!({ "line": 25, "character": 4 });
    let told = run(&mut client, "tenter.totals", json!({ "uri": URI, "position": spun }));
    assert_eq!((&told["title"], &told["line"]), (&json!("Small Tide"), &json!(26)));
    assert!(told["text"].as_str().unwrap().contains("After line 26: spin tees to 65% pickup"), "{told}");
    assert!(told["html"].as_str().unwrap().contains("<h2>Weigh out</h2>"), "{told}");
    assert_eq!(told["account"][0]["pieces"]["best"], 4.0, "{told}");
    let by_line = run(&mut client, "tenter.totals", json!({ "uri": URI, "line": 25 }));
    assert_eq!(by_line, told);
    let sheet = run(&mut client, "tenter.benchSheet", json!({ "uri": URI }));
    assert!(sheet["markdown"].as_str().unwrap().contains("- [ ] soda ash: **408 g**"), "{sheet}");
    assert_eq!(sheet.get("path"), None);
    let shown = run(&mut client, "tenter.benchSheet", json!({ "uri": URI, "show": true }));
    let asked = client.asked("window/showDocument");
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": { "success": true } }));
    let written = std::fs::read_to_string(shown["path"].as_str().unwrap()).unwrap();
    assert_eq!(sheet["markdown"], written);
    client.open("untitled:shared", "mix a\n  1 L water\n");
    assert_eq!(run(&mut client, "tenter.totals", json!({ "uri": "untitled:shared" })), Value::Null);
    client.finish();
}

#[test]
fn each_folder_has_its_own_settings() {
    let able = json!({ "textDocument": { "diagnostic": {} }, "workspace": { "configuration": true } });
    let scratch = tempfile::tempdir().unwrap();
    let folders = ["one", "two"].map(|name| {
        let path = scratch.path().join(name);
        std::fs::create_dir_all(&path).unwrap();
        format!("file://{}", path.display())
    });
    let named: Vec<Value> = folders.iter().map(|uri| json!({ "uri": uri, "name": "folder" })).collect();
    let (mut client, _) = Client::start(able, json!({ "workspaceFolders": named }));
    let asked = client.asked("workspace/configuration");
    let scopes: Vec<&Value> = asked["params"]["items"]
        .as_array()
        .unwrap()
        .iter()
        .map(|item| item.get("scopeUri").unwrap_or(&Value::Null))
        .collect();
    assert_eq!(scopes, [&Value::Null, &json!(folders[0]), &json!(folders[1])]);
    let off = json!({ "hints": { "amount": false, "mix": false, "state": false, "step": false, "recipe": false } });
    client.send(&json!({ "jsonrpc": "2.0", "id": asked["id"], "result": [null, null, off] }));
    let uris = folders.map(|folder| format!("{folder}/tide.dye"));
    for uri in &uris {
        client.open(uri, TEES);
    }
    // The answer to the question above may still be on its way through.
    let limit = Instant::now() + Duration::from_secs(10);
    while !labels(&client.request("textDocument/inlayHint", whole(&uris[1]))).is_empty() {
        assert!(Instant::now() < limit, "the second folder kept its hints");
        std::thread::sleep(Duration::from_millis(10));
    }
    assert!(!labels(&client.request("textDocument/inlayHint", whole(&uris[0]))).is_empty());
    client.finish();
}

#[test]
fn another_configuration_changes_the_levels() {
    let able = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": {
            "didChangeWatchedFiles": { "dynamicRegistration": true },
            "diagnostic": { "refreshSupport": true },
        },
    });
    let scratch = tempfile::tempdir().unwrap();
    let folder = format!("file://{}", scratch.path().display());
    let named = json!([{ "uri": folder, "name": "folder" }]);
    let (mut client, _) = Client::start(able, json!({ "workspaceFolders": named }));
    client.answers = vec![("client/registerCapability", Value::Null), ("workspace/diagnostic/refresh", Value::Null)];
    let uri = format!("{folder}/tide.dye");
    let unused =
        TEES.replace("steps prepare", "mix idle\n  1 L      water at 40 °C\n  60 g/L   soda ash\n\nsteps prepare");
    client.open(&uri, &unused);
    let severity = |client: &mut Client| {
        let report = client.request("textDocument/diagnostic", json!({ "textDocument": { "uri": uri } }));
        let found = report["items"].as_array().unwrap().iter().find(|item| item["code"] == "mix-never-used").cloned();
        found.map(|item| item["severity"].as_u64().unwrap())
    };
    let before = severity(&mut client);
    assert!(before.is_some_and(|level| level > 1), "{before:?}");
    for (text, expected) in
        [("[levels]\nmix-never-used = 'error'\n", Some(1)), ("[levels]\nmix-never-used = 'off'\n", None)]
    {
        std::fs::write(scratch.path().join("tenter.toml"), text).unwrap();
        let changed = json!({ "changes": [{ "uri": format!("{folder}/tenter.toml"), "type": 2 }] });
        client.notify("workspace/didChangeWatchedFiles", changed);
        let limit = Instant::now() + Duration::from_secs(10);
        while severity(&mut client) != expected {
            assert!(Instant::now() < limit, "{text} was not followed");
            std::thread::sleep(Duration::from_millis(20));
        }
    }
    client.finish();
}

#[test]
fn files_on_disk_are_told_anew_only_when_they_changed() {
    let scratch = tempfile::tempdir().unwrap();
    let folder = format!("file://{}", scratch.path().display());
    let uri = format!("{folder}/tide.dye");
    let house = "mix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n";
    let own = TEES.replace(&format!("{house}\n"), "");
    assert!(own.len() < TEES.len());
    std::fs::write(scratch.path().join("tenter.toml"), "").unwrap();
    std::fs::write(scratch.path().join("house.dye"), house).unwrap();
    std::fs::write(scratch.path().join("tide.dye"), format!("use soda soak from \"house.dye\"\n\n{own}")).unwrap();
    let named = json!([{ "uri": folder, "name": "folder" }]);
    let (mut client, _) = Client::start(quiet(), json!({ "workspaceFolders": named }));
    let mut known: Vec<Value> = Vec::new();
    // Asks until the file is told of in the way that is waited for, as editors do.
    let mut until = |client: &mut Client, fits: &dyn Fn(Option<&Value>) -> bool| {
        let limit = Instant::now() + Duration::from_secs(20);
        loop {
            let all = client.request("workspace/diagnostic", json!({ "previousResultIds": known }));
            let told = all["items"].as_array().unwrap().iter().find(|item| item["uri"] == uri.as_str()).cloned();
            if let Some(told) = &told {
                known = vec![json!({ "uri": uri, "value": told["resultId"] })];
            }
            if fits(told.as_ref()) {
                return;
            }
            assert!(Instant::now() < limit, "{told:?}");
            std::thread::sleep(Duration::from_millis(20));
        }
    };
    let write = |client: &mut Client, name: &str, text: &str| {
        std::fs::write(scratch.path().join(name), text).unwrap();
        let changed = json!({ "changes": [{ "uri": format!("{folder}/{name}"), "type": 2 }] });
        client.notify("workspace/didChangeWatchedFiles", changed);
    };
    let full = |rule: &'static str| {
        move |told: Option<&Value>| {
            told.is_some_and(|it| {
                it["kind"] == "full" && it["items"].as_array().unwrap().iter().any(|it| it["code"] == rule)
            })
        }
    };
    // The file itself, then one it takes from, then the levels.
    write(
        &mut client,
        "tide.dye",
        &format!("use soda soak from \"house.dye\"\n\n{}", own.replace("lagoon on rim", "lagon on rim")),
    );
    until(&mut client, &full("unknown-name"));
    until(&mut client, &|told| told.is_some_and(|it| it["kind"] == "unchanged"));
    write(&mut client, "house.dye", "mix another\n  1 L      water\n");
    until(&mut client, &full("broken-use"));
    until(&mut client, &|told| told.is_some_and(|it| it["kind"] == "unchanged"));
    write(&mut client, "house.dye", house);
    write(&mut client, "tide.dye", &format!("use soda soak from \"house.dye\"\n\n{own}"));
    until(&mut client, &|told| told.is_some_and(|it| it["kind"] == "full" && it["items"] == json!([])));
    client.finish();
}
