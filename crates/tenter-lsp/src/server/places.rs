//! From a name to the places it stands for, and links out of the text.

use tenter_features::{links, navigation, types};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::request::{
    GotoDeclarationParams, GotoDeclarationResponse, GotoTypeDefinitionParams, GotoTypeDefinitionResponse,
};
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::outside;
use crate::server::Server;

impl Server {
    fn defined(&self, place: &TextDocumentPositionParams) -> Option<GotoDefinitionResponse> {
        let (view, doc, offset) = self.at(place)?;
        let found: Vec<Location> = navigation::definition(&doc.snapshot, &doc.path, offset)
            .iter()
            .filter_map(|location| view.location(doc.root, location))
            .collect();
        (!found.is_empty()).then_some(GotoDefinitionResponse::Array(found))
    }

    pub(super) fn answer_goto_definition(
        &self,
        params: GotoDefinitionParams,
    ) -> Result<Option<GotoDefinitionResponse>> {
        Ok(self.defined(&params.text_document_position_params))
    }

    pub(super) fn answer_goto_declaration(
        &self,
        params: GotoDeclarationParams,
    ) -> Result<Option<GotoDeclarationResponse>> {
        Ok(self.defined(&params.text_document_position_params))
    }

    pub(super) fn answer_goto_type_definition(
        &self,
        params: GotoTypeDefinitionParams,
    ) -> Result<Option<GotoTypeDefinitionResponse>> {
        let Some((_, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let entry = navigation::reference_entry(&doc.snapshot, &doc.path, offset);
        let uri = entry
            .and_then(|entry| outside::page(outside::Shelf::Reference, entry.id(), &types::page(entry)))
            .and_then(|path| Url::from_file_path(path).ok());
        Ok(uri.map(|uri| GotoDefinitionResponse::Scalar(Location { uri, range: Range::default() })))
    }

    pub(super) fn answer_references(&self, params: ReferenceParams) -> Result<Option<Vec<Location>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        let declaration = params.context.include_declaration;
        let found = navigation::references(&doc.snapshot, &doc.path, offset, declaration);
        Ok(Some(found.iter().filter_map(|location| view.location(doc.root, location)).collect()))
    }

    pub(super) fn answer_document_highlight(
        &self,
        params: DocumentHighlightParams,
    ) -> Result<Option<Vec<DocumentHighlight>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let found = navigation::highlights(&doc.snapshot, &doc.path, offset);
        let kind = |declares| if declares { DocumentHighlightKind::WRITE } else { DocumentHighlightKind::READ };
        Ok(Some(
            found
                .into_iter()
                .map(|(range, declares)| DocumentHighlight {
                    range: convert::range(&doc.file, &range, view.encoding),
                    kind: Some(kind(declares)),
                })
                .collect(),
        ))
    }

    pub(super) fn answer_document_link(&self, params: DocumentLinkParams) -> Result<Option<Vec<DocumentLink>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        let found = links::links(&doc.snapshot, &doc.file).into_iter().filter_map(|link| {
            let target = match link.target {
                links::Target::File(path) => view.uri(doc.root, &path)?,
                links::Target::Web(address) => Url::parse(&address).ok()?,
            };
            let range = convert::range(&doc.file, &link.range, view.encoding);
            Some(DocumentLink { range, target: Some(target), tooltip: None, data: None })
        });
        Ok(Some(found.collect()))
    }
}
