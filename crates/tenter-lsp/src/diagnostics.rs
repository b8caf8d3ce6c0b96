//! Findings as the protocol tells them.

use std::hash::{DefaultHasher, Hash, Hasher};

use tenter_features::diagnostics::{Diagnostic, diagnostics};
use tenter_rules::Level;
use tower_lsp::lsp_types::{
    self as lsp, CodeDescription, DiagnosticRelatedInformation, DiagnosticSeverity, DiagnosticTag, NumberOrString, Url,
};

use crate::capabilities::Client;
use crate::convert;
use crate::world::{Doc, View};

/// The findings of a document. `page` gives the address of a rule's page.
pub(crate) fn of(
    view: &View,
    doc: &Doc,
    client: &Client,
    page: &dyn Fn(&'static str) -> Option<Url>,
) -> Vec<lsp::Diagnostic> {
    let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Vec::new() };
    diagnostics(&analysis, doc.settings.most_findings)
        .into_iter()
        .map(|diagnostic| told(view, doc, client, page, diagnostic))
        .collect()
}

fn told(
    view: &View,
    doc: &Doc,
    client: &Client,
    page: &dyn Fn(&'static str) -> Option<Url>,
    diagnostic: Diagnostic,
) -> lsp::Diagnostic {
    let mut message = diagnostic.message;
    let mut related = Vec::new();
    for (place, text) in diagnostic.related {
        let Some(location) = view.location(doc.root, &place) else { continue };
        if client.related {
            related.push(DiagnosticRelatedInformation { location, message: text });
        } else {
            message.push_str(&format!("\nline {}: {text}", location.range.start.line + 1));
        }
    }
    lsp::Diagnostic {
        range: convert::range(&doc.file, &diagnostic.range, view.encoding),
        severity: Some(match diagnostic.level {
            Level::Error => DiagnosticSeverity::ERROR,
            Level::Warning => DiagnosticSeverity::WARNING,
            Level::Advice => DiagnosticSeverity::INFORMATION,
        }),
        code: Some(NumberOrString::String(diagnostic.rule.to_owned())),
        code_description: page(diagnostic.rule).filter(|_| client.links_codes).map(|href| CodeDescription { href }),
        source: Some("tenter".to_owned()),
        message,
        related_information: (!related.is_empty()).then_some(related),
        tags: (diagnostic.idle && client.tags).then(|| vec![DiagnosticTag::UNNECESSARY]),
        data: None,
    }
}

/// A mark that is the same for the same findings.
pub(crate) fn mark(diagnostics: &[lsp::Diagnostic]) -> String {
    let mut hasher = DefaultHasher::new();
    serde_json::to_string(diagnostics).unwrap_or_default().hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}
