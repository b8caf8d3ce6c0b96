//! `workspace/executeCommand`: what an editor can ask for by name.
//!
//! Arguments come as one object (`{ "uri": …, "position": … }`) or in a row (`uri, position, …`), as old commands have
//! them. A position that is not given is the start of the document, whose recipe is then the first.

use serde::Deserialize;
use serde_json::{Value, json};
use tenter_features::hints::{self, explain};
use tenter_features::{FileAnalysis, actions, sheets};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::{ExecuteCommandParams, Location, MessageType, Position, ShowDocumentParams, Url};

use crate::convert;
use crate::outside;
use crate::server::Server;
use crate::world::{Doc, View};

/// The commands `workspace/executeCommand` takes.
pub(crate) const COMMANDS: [&str; 6] =
    ["tenter.scale", "tenter.newLog", "tenter.explain", "tenter.showUse", "tenter.totals", "tenter.benchSheet"];

/// Nothing waits longer for the client.
const PATIENCE: std::time::Duration = std::time::Duration::from_secs(5);

#[derive(Deserialize)]
struct Arguments {
    uri: Url,
    #[serde(default)]
    position: Option<Position>,
    /// The same as `position`, its column left out.
    #[serde(default)]
    line: Option<u32>,
    #[serde(default)]
    pieces: Option<f64>,
    /// Whether the client is asked to show what was written out.
    #[serde(default)]
    show: bool,
}

impl Arguments {
    fn read(given: &[Value]) -> Option<Self> {
        let first = given.first()?;
        if first.is_object() {
            return serde_json::from_value(first.clone()).ok();
        }
        let row = |index: usize| given.get(index).cloned().unwrap_or_default();
        Some(Self {
            uri: serde_json::from_value(first.clone()).ok()?,
            position: serde_json::from_value(row(1)).ok(),
            line: None,
            pieces: row(2).as_f64(),
            show: false,
        })
    }
}

/// A document, what is known of it, and the place in it a command is about.
struct Place {
    view: View,
    doc: Doc,
    analysis: std::sync::Arc<FileAnalysis>,
    offset: usize,
}

impl Server {
    pub(super) fn execute(&self, params: &ExecuteCommandParams) -> Result<Option<Value>> {
        if params.command == "tenter.showUse" {
            self.show_use(params.arguments.first());
            return Ok(None);
        }
        if !COMMANDS.contains(&params.command.as_str()) {
            return Err(Self::invalid(format!("no command is called {}", params.command)));
        }
        let wanted = Arguments::read(&params.arguments).ok_or_else(|| Self::invalid("the address is missing"))?;
        let place = self.placed(&wanted).ok_or_else(|| Self::invalid("no such document"))?;
        match params.command.as_str() {
            "tenter.totals" => Ok(totals(&place)),
            "tenter.benchSheet" => Ok(self.bench_sheet(&place, wanted.show)),
            "tenter.scale" => self.scale(&place, wanted.pieces).map(|()| None),
            "tenter.newLog" => self.new_log(&place).map(|()| None),
            _ => {
                self.explain(&place);
                Ok(None)
            }
        }
    }

    fn placed(&self, wanted: &Arguments) -> Option<Place> {
        let view = self.view();
        let doc = view.doc(&wanted.uri)?;
        let line = wanted.line.map(|line| Position { line, character: 0 });
        let position = wanted.position.or(line).unwrap_or_default();
        let offset = convert::offset(&doc.file, position, view.encoding);
        let analysis = doc.snapshot.analyse(&doc.path)?;
        Some(Place { view, doc, analysis, offset })
    }

    fn show_use(&self, places: Option<&Value>) {
        let places: Vec<Location> = places.and_then(|it| serde_json::from_value(it.clone()).ok()).unwrap_or_default();
        if let Some(place) = places.into_iter().next().filter(|_| self.shared.client().shows_documents) {
            self.show(place.uri, Some(place.range));
        }
    }

    /// Asks the client to show a document, without waiting for it.
    fn show(&self, uri: Url, selection: Option<tower_lsp::lsp_types::Range>) {
        let client = self.client.clone();
        tokio::spawn(async move {
            let params = ShowDocumentParams { uri, external: Some(false), take_focus: Some(true), selection };
            let _ = tokio::time::timeout(PATIENCE, client.show_document(params)).await;
        });
    }

    /// The sheet as Markdown. To show it, it is written out to be read only: every editor can open a file. One that
    /// cannot be asked to is told where it lies.
    fn bench_sheet(&self, place: &Place, show: bool) -> Option<Value> {
        let sheet = sheets::bench_sheet(&place.analysis, place.offset)?;
        let mut answer = json!({ "title": sheet.title, "markdown": sheet.markdown });
        if show && let Some(path) = outside::page(outside::Shelf::Sheets, &sheet.title, &sheet.markdown) {
            answer["path"] = json!(path.to_string_lossy());
            match Url::from_file_path(&path) {
                Ok(uri) if self.shared.client().shows_documents => self.show(uri, None),
                _ => self.tell(format!("The sheet lies in {}", path.display())),
            }
        }
        Some(answer)
    }

    fn scale(&self, place: &Place, pieces: Option<f64>) -> Result<()> {
        let pieces = pieces.filter(|pieces| *pieces > 0.0).ok_or_else(|| Self::invalid("how many pieces?"))?;
        let edits = actions::scale(&place.analysis, place.offset, pieces)
            .ok_or_else(|| Self::invalid("the recipe does not say how many pieces it is for"))?;
        self.apply(&place.view, place.doc.root, &edits);
        Ok(())
    }

    fn new_log(&self, place: &Place) -> Result<()> {
        let edit = actions::log_entry(&place.analysis, place.offset, &outside::today())
            .ok_or_else(|| Self::invalid("no recipe stands there"))?;
        self.apply(&place.view, place.doc.root, &[edit]);
        Ok(())
    }

    fn explain(&self, place: &Place) {
        let line = place.doc.file.line_range(place.offset);
        let found = hints::hints(&place.analysis, &line, &|_| true);
        let words: Vec<String> = found.iter().map(|hint| explain(&place.analysis, hint)).collect();
        if !words.is_empty() {
            self.tell(words.join("\n"));
        }
    }

    fn tell(&self, words: String) {
        let client = self.client.clone();
        tokio::spawn(async move { client.show_message(MessageType::INFO, words).await });
    }

    /// Asks the client to make edits, without waiting for it.
    fn apply(&self, view: &View, root: usize, edits: &[tenter_features::Edit]) {
        let edit = convert::workspace_edit(view, root, edits, self.shared.client().versioned_edits);
        let client = self.client.clone();
        tokio::spawn(async move {
            let _ = tokio::time::timeout(std::time::Duration::from_secs(30), client.apply_edit(edit)).await;
        });
    }
}

/// Totals and the state at a line, for a panel; nothing where no recipe stands.
fn totals(place: &Place) -> Option<Value> {
    let found = sheets::totals(&place.analysis, place.offset)?;
    let picked = sheets::picked(&place.analysis, place.offset)?;
    let sheet = tenter_account::totals::sheet::sheet(&picked, &*place.doc.file);
    let account = tenter_account::totals::json::json(std::slice::from_ref(&picked), &*place.doc.file);
    Some(json!({
        "title": found.title,
        "text": found.text(),
        "html": found.html(),
        "line": found.line,
        "state": found.state,
        "totals": found.totals,
        "sheet": serde_json::to_value(sheet).unwrap_or_default(),
        "account": serde_json::to_value(account).unwrap_or_default(),
    }))
}
