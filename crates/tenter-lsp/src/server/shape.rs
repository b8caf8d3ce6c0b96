//! The shape of a document: its names, folds and selections that grow.

use tenter_features::{folding, selection, symbols};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::{Server, items};

/// Most names a search of the collection gives.
const MOST_NAMES: usize = 500;

impl Server {
    pub(super) fn answer_document_symbol(
        &self,
        params: DocumentSymbolParams,
    ) -> Result<Option<DocumentSymbolResponse>> {
        let uri = &params.text_document.uri;
        let Some((view, doc)) = self.doc(uri) else { return Ok(None) };
        let found = symbols::document(&doc.file);
        Ok(Some(if self.shared.client().nests_symbols {
            let nested = found.into_iter().map(|symbol| items::nested(&doc.file, symbol, view.encoding));
            DocumentSymbolResponse::Nested(nested.collect())
        } else {
            DocumentSymbolResponse::Flat(items::flat(&doc.file, uri, found, view.encoding))
        }))
    }

    pub(super) fn answer_symbol(&self, params: WorkspaceSymbolParams) -> Result<Option<Vec<SymbolInformation>>> {
        let view = self.view();
        let mut found = Vec::new();
        for (root, snapshot) in view.snapshots() {
            let named = symbols::workspace(snapshot, &params.query, MOST_NAMES - found.len().min(MOST_NAMES));
            for name in named {
                let Some(location) = view.location(root, &name.at) else { continue };
                #[allow(deprecated, reason = "the field has to be filled")]
                found.push(SymbolInformation {
                    name: name.name,
                    kind: items::symbol_kind(name.kind),
                    tags: None,
                    deprecated: None,
                    location,
                    container_name: Some(name.at.path.to_string()),
                });
            }
        }
        Ok(Some(found))
    }

    pub(super) fn answer_folding_range(&self, params: FoldingRangeParams) -> Result<Option<Vec<FoldingRange>>> {
        let Some((_, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        let kind = |kind| match kind {
            folding::FoldKind::Block => FoldingRangeKind::Region,
            folding::FoldKind::Comment => FoldingRangeKind::Comment,
            folding::FoldKind::Imports => FoldingRangeKind::Imports,
        };
        let folds = folding::folds(&doc.file).into_iter().map(|fold| FoldingRange {
            start_line: fold.first,
            end_line: fold.last,
            kind: (fold.kind != folding::FoldKind::Block).then(|| kind(fold.kind)),
            ..FoldingRange::default()
        });
        Ok(Some(folds.collect()))
    }

    pub(super) fn answer_selection_range(&self, params: SelectionRangeParams) -> Result<Option<Vec<SelectionRange>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        let mut found = Vec::new();
        for position in params.positions {
            let offset = convert::offset(&doc.file, position, view.encoding);
            let mut outer: Option<Box<SelectionRange>> = None;
            for range in selection::selections(&doc.file, offset).iter().rev() {
                let range = convert::range(&doc.file, range, view.encoding);
                outer = Some(Box::new(SelectionRange { range, parent: outer }));
            }
            let nothing = SelectionRange { range: Range { start: position, end: position }, parent: None };
            found.push(outer.map_or(nothing, |boxed| *boxed));
        }
        Ok(Some(found))
    }
}
