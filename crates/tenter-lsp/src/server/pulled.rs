//! The findings of a document, for clients that pull them.

use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::diagnostics;
use crate::server::Server;

impl Server {
    pub(super) fn answer_diagnostic(&self, params: DocumentDiagnosticParams) -> Result<DocumentDiagnosticReportResult> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let found = match self.doc(&uri) {
            Some((view, doc)) => {
                let able = self.shared.client();
                diagnostics::of(&view, &doc, &able, &|rule| self.shared.page(rule))
            }
            None => Vec::new(),
        };
        let mark = diagnostics::mark(&found);
        let report = if params.previous_result_id.as_deref() == Some(&mark) {
            DocumentDiagnosticReport::Unchanged(RelatedUnchangedDocumentDiagnosticReport {
                related_documents: None,
                unchanged_document_diagnostic_report: UnchangedDocumentDiagnosticReport { result_id: mark },
            })
        } else {
            DocumentDiagnosticReport::Full(RelatedFullDocumentDiagnosticReport {
                related_documents: None,
                full_document_diagnostic_report: FullDocumentDiagnosticReport { result_id: Some(mark), items: found },
            })
        };
        Ok(report.into())
    }
}
