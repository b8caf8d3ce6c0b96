//! Semantic tokens: all, what changed, a stretch.

use tenter_features::tokens;
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;
use crate::tokens as packing;
use crate::world::{Doc, View};

impl Server {
    fn packed(&self, view: &View, doc: &Doc, within: &tenter_features::Range) -> Vec<SemanticToken> {
        let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Vec::new() };
        packing::pack(&doc.file, &tokens::tokens(&analysis, within), view.encoding)
    }

    pub(super) fn answer_semantic_tokens_full(
        &self,
        params: SemanticTokensParams,
    ) -> Result<Option<SemanticTokensResult>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let data = self.packed(&view, &doc, &(0..doc.file.text.len()));
        let result_id = Some(self.shared.keep_tokens(&uri, &data));
        Ok(Some(SemanticTokensResult::Tokens(SemanticTokens { result_id, data })))
    }

    pub(super) fn answer_semantic_tokens_full_delta(
        &self,
        params: SemanticTokensDeltaParams,
    ) -> Result<Option<SemanticTokensFullDeltaResult>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let data = self.packed(&view, &doc, &(0..doc.file.text.len()));
        let old = self.shared.kept_tokens(&uri, &params.previous_result_id);
        let result_id = Some(self.shared.keep_tokens(&uri, &data));
        Ok(Some(match old {
            Some(old) => {
                let edits = packing::delta(&old, &data);
                SemanticTokensFullDeltaResult::TokensDelta(SemanticTokensDelta { result_id, edits })
            }
            None => SemanticTokensFullDeltaResult::Tokens(SemanticTokens { result_id, data }),
        }))
    }

    pub(super) fn answer_semantic_tokens_range(
        &self,
        params: SemanticTokensRangeParams,
    ) -> Result<Option<SemanticTokensRangeResult>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let within = convert::bytes(&doc.file, params.range, view.encoding);
        let data = self.packed(&view, &doc, &within);
        Ok(Some(SemanticTokensRangeResult::Tokens(SemanticTokens { result_id: None, data })))
    }
}
