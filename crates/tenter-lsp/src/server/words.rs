//! What stands beside the text: hover, completion, signature help.

use serde_json::Value;
use tenter_features::{completion, hover, signature};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::{Server, items, markdown};

impl Server {
    pub(super) fn answer_hover(&self, params: HoverParams) -> Result<Option<Hover>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        Ok(hover::hover(&doc.snapshot, &doc.path, offset).map(|found| Hover {
            contents: HoverContents::Markup(markdown(found.markdown)),
            range: Some(convert::range(&doc.file, &found.range, view.encoding)),
        }))
    }

    pub(super) fn answer_completion(&self, params: CompletionParams) -> Result<Option<CompletionResponse>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        let snippets = self.shared.client().snippets;
        let items = completion::complete(&doc.snapshot, &doc.path, offset)
            .into_iter()
            .map(|item| items::proposal(&doc.file, item, snippets, view.encoding))
            .collect();
        Ok(Some(CompletionResponse::Array(items)))
    }

    pub(super) fn answer_completion_resolve(&self, mut item: CompletionItem) -> Result<CompletionItem> {
        let data = item.data.clone().unwrap_or_default();
        let kind = data.get("kind").and_then(Value::as_u64).and_then(items::item_kind);
        if let (Some(kind), Some(label)) = (kind, data.get("label").and_then(Value::as_str)) {
            let words = completion::documentation(kind, label);
            item.documentation = (!words.is_empty()).then(|| Documentation::MarkupContent(markdown(words)));
        }
        Ok(item)
    }

    pub(super) fn answer_signature_help(&self, params: SignatureHelpParams) -> Result<Option<SignatureHelp>> {
        let Some((_, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        Ok(signature::signature(&doc.snapshot, &doc.path, offset).map(|found| {
            // Offsets in a label count UTF-16 units, whatever positions count.
            let units = |at: usize| found.label.get(..at).map_or(0, |text| text.encode_utf16().count() as u32);
            let active = found.active.and_then(|index| u32::try_from(index).ok());
            let parameters = found
                .parts
                .iter()
                .map(|part| ParameterInformation {
                    label: ParameterLabel::LabelOffsets([units(part.start), units(part.end)]),
                    documentation: None,
                })
                .collect();
            SignatureHelp {
                signatures: vec![SignatureInformation {
                    label: found.label.clone(),
                    documentation: Some(Documentation::String(found.summary.clone())),
                    parameters: Some(parameters),
                    active_parameter: active,
                }],
                active_signature: Some(0),
                active_parameter: active,
            }
        }))
    }
}
