//! The findings of every file, for clients that pull them: some ask again every few seconds, so a file that cannot have
//! changed is not worked out again.

use std::collections::BTreeMap;

use tower_lsp::lsp_types::{
    FullDocumentDiagnosticReport, PreviousResultId, UnchangedDocumentDiagnosticReport, Url, WorkspaceDiagnosticReport,
    WorkspaceDiagnosticReportResult, WorkspaceDocumentDiagnosticReport, WorkspaceFullDocumentDiagnosticReport,
    WorkspaceUnchangedDocumentDiagnosticReport,
};

use crate::diagnostics;
use crate::server::Server;

/// What was last told of a file on disk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Told {
    /// What it rested on.
    stamp: u64,
    /// The name of the answer.
    mark: String,
    /// Whether there was nothing to tell.
    empty: bool,
}

impl Server {
    pub(super) async fn all_findings(&self, previous: &[PreviousResultId]) -> WorkspaceDiagnosticReportResult {
        let view = self.view();
        let able = self.shared.client();
        let known: BTreeMap<&Url, &str> = previous.iter().map(|it| (&it.uri, it.value.as_str())).collect();
        let mut found = Vec::new();
        for (root, snapshot) in view.snapshots() {
            for path in snapshot.paths() {
                let Some(uri) = view.uri(root, &path) else { continue };
                let stamp = snapshot.stamp(&path);
                let told = stamp.and_then(|stamp| self.shared.told(&uri).filter(|told| told.stamp == stamp));
                if let Some(told) = told {
                    match known.get(&uri) {
                        Some(had) if **had == *told.mark => {
                            found.push(unchanged(uri, None, told.mark));
                            continue;
                        }
                        None if told.empty => continue,
                        _ => {}
                    }
                }
                // Others get their turn, and a cancelled request ends here.
                tokio::task::yield_now().await;
                let Some(doc) = view.doc(&uri) else { continue };
                let items = diagnostics::of(&view, &doc, &able, &|rule| self.shared.page(rule));
                let mark = diagnostics::mark(&items);
                if let Some(stamp) = stamp {
                    self.shared.keep_told(&uri, Told { stamp, mark: mark.clone(), empty: items.is_empty() });
                }
                let version = doc.version.map(i64::from);
                if known.get(&uri).is_some_and(|had| **had == *mark) {
                    found.push(unchanged(uri, version, mark));
                } else if !items.is_empty() || known.contains_key(&uri) {
                    let report = FullDocumentDiagnosticReport { result_id: Some(mark), items };
                    found.push(WorkspaceDocumentDiagnosticReport::Full(WorkspaceFullDocumentDiagnosticReport {
                        uri,
                        version,
                        full_document_diagnostic_report: report,
                    }));
                }
            }
        }
        WorkspaceDiagnosticReportResult::Report(WorkspaceDiagnosticReport { items: found })
    }
}

fn unchanged(uri: Url, version: Option<i64>, mark: String) -> WorkspaceDocumentDiagnosticReport {
    let report = UnchangedDocumentDiagnosticReport { result_id: mark };
    WorkspaceDocumentDiagnosticReport::Unchanged(WorkspaceUnchangedDocumentDiagnosticReport {
        uri,
        version,
        unchanged_document_diagnostic_report: report,
    })
}
