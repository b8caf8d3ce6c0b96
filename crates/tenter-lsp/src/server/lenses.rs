//! Lines above the text.

use serde_json::json;
use tenter_features::lenses::{self, LensKind};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;

impl Server {
    pub(super) fn answer_code_lens(&self, params: CodeLensParams) -> Result<Option<Vec<CodeLens>>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Ok(None) };
        let found = lenses::lenses(&analysis, &|kind| doc.settings.lens(kind)).into_iter().map(|lens| {
            let range = convert::range(&doc.file, &lens.range, view.encoding);
            match lens.kind {
                LensKind::Uses => CodeLens { range, command: None, data: Some(json!({ "uri": uri })) },
                LensKind::Recipe | LensKind::Clock => {
                    let arguments = Some(vec![json!(uri), json!(range.start)]);
                    let command = Command { title: lens.title, command: "tenter.explain".to_owned(), arguments };
                    CodeLens { range, command: Some(command), data: None }
                }
            }
        });
        Ok(Some(found.collect()))
    }

    pub(super) fn answer_code_lens_resolve(&self, mut lens: CodeLens) -> Result<CodeLens> {
        let uri = lens.data.as_ref().and_then(|data| data.get("uri")).cloned();
        let uri: Option<Url> = uri.and_then(|uri| serde_json::from_value(uri).ok());
        if let Some((view, doc)) = uri.and_then(|uri| self.doc(&uri)) {
            let range = convert::bytes(&doc.file, lens.range, view.encoding);
            let found = lenses::resolve(&doc.snapshot, &doc.path, range);
            let places: Vec<Location> =
                found.places.iter().filter_map(|place| view.location(doc.root, place)).collect();
            let arguments = Some(vec![json!(places)]);
            lens.command = Some(Command { title: found.title, command: "tenter.showUse".to_owned(), arguments });
        }
        Ok(lens)
    }
}
