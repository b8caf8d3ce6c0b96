//! Figures at the end of lines.

use serde_json::json;
use tenter_features::hints::{self, explain};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::{Server, markdown};
use crate::world::{Doc, View};

impl Server {
    fn hint_range(&self, doc: &Doc, range: Range, view: &View) -> Vec<hints::Hint> {
        let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Vec::new() };
        let within = convert::bytes(&doc.file, range, view.encoding);
        hints::hints(&analysis, &within, &|kind| doc.settings.hint(kind))
    }

    pub(super) fn answer_inlay_hint(&self, params: InlayHintParams) -> Result<Option<Vec<InlayHint>>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let found = self.hint_range(&doc, params.range, &view).into_iter().map(|hint| InlayHint {
            position: convert::position(&doc.file, hint.offset, view.encoding),
            label: InlayHintLabel::String(hint.label),
            kind: None,
            text_edits: None,
            tooltip: None,
            padding_left: Some(true),
            padding_right: None,
            data: Some(json!({ "uri": uri })),
        });
        Ok(Some(found.collect()))
    }

    pub(super) fn answer_inlay_hint_resolve(&self, mut hint: InlayHint) -> Result<InlayHint> {
        let uri = hint.data.as_ref().and_then(|data| data.get("uri")).cloned();
        let uri: Option<Url> = uri.and_then(|uri| serde_json::from_value(uri).ok());
        if let Some((view, doc)) = uri.and_then(|uri| self.doc(&uri)) {
            let start = Position { line: hint.position.line, character: 0 };
            let range = Range { start, end: Position { line: start.line, character: u32::MAX } };
            let found = self.hint_range(&doc, range, &view);
            let label = match &hint.label {
                InlayHintLabel::String(label) => label.clone(),
                InlayHintLabel::LabelParts(parts) => parts.iter().map(|part| part.value.as_str()).collect(),
            };
            let same = found.iter().find(|other| other.label == label);
            if let (Some(same), Some(analysis)) = (same, doc.snapshot.analyse(&doc.path)) {
                let words = explain(&analysis, same);
                hint.tooltip = (!words.is_empty()).then(|| InlayHintTooltip::MarkupContent(markdown(words)));
            }
        }
        Ok(hint)
    }
}
