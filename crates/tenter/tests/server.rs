//! The server tells what the command tells: same findings, same words, same places, for the same files under the same
//! configuration.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]
#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "a test has disk and processes")]

use std::collections::{BTreeMap, BTreeSet};
use std::io::{BufRead, BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};

use serde_json::{Value, json};

/// Rule, level, line and column from 1 in characters, end, words.
type Told = (String, String, [u64; 4], String);

struct Server {
    child: Child,
    input: ChildStdin,
    output: BufReader<ChildStdout>,
    number: u64,
}

impl Server {
    fn start(folders: &[&Path]) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_tenter"))
            .arg("lsp")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let (input, output) = (child.stdin.take().unwrap(), BufReader::new(child.stdout.take().unwrap()));
        let mut server = Self { child, input, output, number: 0 };
        let folders: Vec<Value> = folders.iter().map(|it| json!({ "uri": address(it), "name": "recipes" })).collect();
        server.request(
            "initialize",
            json!({
                "processId": null,
                "rootUri": null,
                "workspaceFolders": folders,
                "capabilities": {
                    "general": { "positionEncodings": ["utf-32"] },
                    "textDocument": { "diagnostic": {}, "publishDiagnostics": { "relatedInformation": true } },
                },
            }),
        );
        server.send(&json!({ "jsonrpc": "2.0", "method": "initialized", "params": {} }));
        server
    }

    fn send(&mut self, message: &Value) {
        let body = serde_json::to_vec(message).unwrap();
        write!(self.input, "Content-Length: {}\r\n\r\n", body.len()).unwrap();
        self.input.write_all(&body).unwrap();
        self.input.flush().unwrap();
    }

    fn request(&mut self, method: &str, params: Value) -> Value {
        self.number += 1;
        self.send(&json!({ "jsonrpc": "2.0", "id": self.number, "method": method, "params": params }));
        loop {
            let mut length = 0;
            loop {
                let mut line = String::new();
                assert!(self.output.read_line(&mut line).unwrap() > 0, "the server went away");
                if line.trim().is_empty() {
                    break;
                }
                if let Some(value) = line.strip_prefix("Content-Length: ") {
                    length = value.trim().parse().unwrap();
                }
            }
            let mut body = vec![0; length];
            self.output.read_exact(&mut body).unwrap();
            let message: Value = serde_json::from_slice(&body).unwrap();
            if message["id"] == self.number && message.get("method").is_none() {
                assert_eq!(message.get("error"), None, "{method}");
                return message["result"].clone();
            }
        }
    }

    /// The findings of a file, opened for the moment.
    fn findings(&mut self, path: &Path) -> BTreeSet<Told> {
        let (uri, text) = (address(path), std::fs::read_to_string(path).unwrap());
        let document = json!({ "uri": uri, "languageId": "dye", "version": 1, "text": text });
        self.send(&json!({
            "jsonrpc": "2.0", "method": "textDocument/didOpen", "params": { "textDocument": document },
        }));
        let report = self.request("textDocument/diagnostic", json!({ "textDocument": { "uri": uri } }));
        let close = json!({ "textDocument": { "uri": uri } });
        self.send(&json!({ "jsonrpc": "2.0", "method": "textDocument/didClose", "params": close }));
        let level = |number: u64| ["", "error", "warning", "advice"][number as usize].to_owned();
        let items = report["items"].as_array().unwrap().iter().map(|item| {
            let place = |end: &str, what: &str| item["range"][end][what].as_u64().unwrap() + 1;
            let place =
                [place("start", "line"), place("start", "character"), place("end", "line"), place("end", "character")];
            let rule = item["code"].as_str().unwrap().to_owned();
            (rule, level(item["severity"].as_u64().unwrap()), place, item["message"].as_str().unwrap().to_owned())
        });
        items.collect()
    }

    fn end(mut self) {
        self.request("shutdown", Value::Null);
        self.send(&json!({ "jsonrpc": "2.0", "method": "exit" }));
        assert!(self.child.wait().unwrap().success());
    }
}

fn address(path: &Path) -> String {
    format!("file://{}", path.display()).replace(' ', "%20")
}

/// What the command tells of a file or of the files of a folder, by file.
fn checked(path: &Path) -> BTreeMap<PathBuf, BTreeSet<Told>> {
    let run = Command::new(env!("CARGO_BIN_EXE_tenter"))
        .current_dir(path.parent().unwrap())
        .args(["check", "--format", "json"])
        .arg(path.file_name().unwrap())
        .output()
        .unwrap();
    let told: Value = serde_json::from_slice(&run.stdout).unwrap();
    let mut by_file: BTreeMap<PathBuf, BTreeSet<Told>> = BTreeMap::new();
    for finding in told.as_array().unwrap() {
        let number = |what: &str| finding[what].as_u64().unwrap();
        let words = |what: &str| finding[what].as_str().unwrap_or("").to_owned();
        let message = match words("help").as_str() {
            "" => words("message"),
            help => format!("{}\n{help}", words("message")),
        };
        let place = [number("line"), number("column"), number("end_line"), number("end_column")];
        let file = path.parent().unwrap().join(words("file"));
        by_file.entry(file).or_default().insert((words("rule"), words("level"), place, message));
    }
    by_file
}

/// The `.dye` files of a folder of the test collection, copied below another.
fn copied(from: &str, to: &Path) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests").join(from);
    let to = to.join(from);
    std::fs::create_dir_all(&to).unwrap();
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .map(|path| {
            let copy = to.join(path.file_name().unwrap());
            std::fs::copy(&path, &copy).unwrap();
            copy
        })
        .collect();
    paths.sort();
    assert!(paths.len() > 10);
    paths
}

/// A configuration that touches rules the broken recipes break: one off, one lowered, one raised, one accepted, one of
/// people's safety made milder, and slips that do nothing.
const CONFIGURATION: &str = "\
[levels]
decimal-comma = 'off'
mix-never-used = 'error'
no-alkali = 'advice'
dust-before-protection = { level = 'warning', reason = 'dyes come as liquids' }
no-such-rule = 'off'

[accept]
undyeable-share = 'the stretch is wanted'
too-little-alkali = 'it is a trial'
";

#[test]
fn the_server_tells_what_the_command_tells() {
    let scratch = tempfile::tempdir().unwrap();
    let top = scratch.path().canonicalize().unwrap();
    let mut all = Vec::new();
    let mut expected = BTreeMap::new();
    // One collection as it is, one with a configuration, and a folder nobody opened.
    for (collection, configuration) in [("plain", ""), ("set", CONFIGURATION), ("alone", "")] {
        let folder = top.join(collection);
        all.extend(copied("recipes", &folder).into_iter().chain(copied("broken", &folder)));
        if collection != "alone" {
            std::fs::write(folder.join("tenter.toml"), configuration).unwrap();
        }
        expected.extend(["recipes", "broken"].iter().flat_map(|part| checked(&folder.join(part))));
    }
    let opened = [top.join("plain"), top.join("set")];
    let mut server = Server::start(&opened.iter().map(PathBuf::as_path).collect::<Vec<_>>());
    let mut by_level = BTreeSet::new();
    let (mut plain, mut set) = (0, 0);
    for path in &all {
        let told = server.findings(path);
        assert_eq!(told, expected.remove(path).unwrap_or_default(), "{}", path.display());
        by_level.extend(told.iter().map(|(_, level, ..)| level.clone()));
        plain += if path.starts_with(&opened[0]) { told.len() } else { 0 };
        set += if path.starts_with(&opened[1]) { told.len() } else { 0 };
    }
    // What is left is told of the configuration itself.
    assert!(expected.keys().all(|path| path.ends_with("tenter.toml")), "{expected:?}");
    assert!(plain > 30 && set < plain, "the configuration changed nothing: {plain} and {set}");
    assert_eq!(by_level.len(), 3, "{by_level:?}");
    server.end();
}

#[test]
fn a_part_of_a_collection_opened_by_itself_is_still_that_collection() {
    let scratch = tempfile::tempdir().unwrap();
    let top = scratch.path().canonicalize().unwrap();
    std::fs::create_dir_all(top.join("season one")).unwrap();
    std::fs::write(top.join("tenter.toml"), "[levels]\nmix-never-used = 'off'\n").unwrap();
    std::fs::write(top.join("house.dye"), "mix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n").unwrap();
    let recipe = "use soda soak from \"../house.dye\"\n\nrecipe Tide\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  \
                  fibre    100% cotton\n  state    scoured, dry\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     \
                  tees in soda soak for 20 min\n  soak     tees in nothing known for 2 min\n";
    let path = top.join("season one/tide.dye");
    std::fs::write(&path, recipe).unwrap();
    for opened in [vec![top.join("season one")], Vec::new(), vec![top.clone()]] {
        let mut server = Server::start(&opened.iter().map(PathBuf::as_path).collect::<Vec<_>>());
        let told = server.findings(&path);
        assert!(told.iter().all(|(rule, ..)| rule != "broken-use"), "{told:?}");
        assert_eq!(told, checked(&path).remove(&path).unwrap_or_default());
        server.end();
    }
}
