//! Formatting: all, a stretch, the line just left.

use tenter_features::formatting;
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;

impl Server {
    pub(super) fn answer_formatting(&self, params: DocumentFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        Ok(Some(convert::text_edits(&doc.file, &formatting::document(&doc.file), view.encoding)))
    }

    pub(super) fn answer_range_formatting(
        &self,
        params: DocumentRangeFormattingParams,
    ) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        let within = convert::bytes(&doc.file, params.range, view.encoding);
        Ok(Some(convert::text_edits(&doc.file, &formatting::range(&doc.file, &within), view.encoding)))
    }

    pub(super) fn answer_on_type_formatting(
        &self,
        params: DocumentOnTypeFormattingParams,
    ) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        Ok(Some(convert::text_edits(&doc.file, &formatting::on_type(&doc.file, offset), view.encoding)))
    }
}
