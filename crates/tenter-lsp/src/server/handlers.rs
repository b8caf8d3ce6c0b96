//! The methods, each a translation: position in, answer out.

use serde_json::{Value, json};
use tenter_features::calls::{self, Party, PartyKind};
use tenter_features::hints::explain;
use tenter_features::lenses::LensKind;
use tenter_features::{
    colours, completion, folding, formatting, hints, hover, lenses, links, navigation, rename, renamed_files,
    selection, signature, symbols, tokens, types,
};
use tower_lsp::LanguageServer;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types::request::{
    GotoDeclarationParams, GotoDeclarationResponse, GotoTypeDefinitionParams, GotoTypeDefinitionResponse,
};
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::diagnostics;
use crate::outside;
use crate::server::{Server, items};
use crate::tokens as packing;
use crate::world::{Doc, View};

/// Most names a search of the collection gives.
const MOST_NAMES: usize = 500;

impl Server {
    pub(super) fn doc(&self, uri: &Url) -> Option<(View, Doc)> {
        let view = self.view();
        let doc = view.doc(uri)?;
        Some((view, doc))
    }

    /// A document and the offset of a position in it.
    fn at(&self, place: &TextDocumentPositionParams) -> Option<(View, Doc, usize)> {
        let (view, doc) = self.doc(&place.text_document.uri)?;
        let offset = convert::offset(&doc.file, place.position, view.encoding);
        Some((view, doc, offset))
    }

    /// An answer that would be painted over a newer text is not given.
    fn current(&self, uri: &Url) -> Result<()> {
        if self.outdated(&self.view(), uri) {
            return Err(Error { code: ErrorCode::ContentModified, message: "the text went on".into(), data: None });
        }
        Ok(())
    }

    fn defined(&self, place: &TextDocumentPositionParams) -> Option<GotoDefinitionResponse> {
        let (view, doc, offset) = self.at(place)?;
        let found: Vec<Location> = navigation::definition(&doc.snapshot, &doc.path, offset)
            .iter()
            .filter_map(|location| view.location(doc.root, location))
            .collect();
        (!found.is_empty()).then_some(GotoDefinitionResponse::Array(found))
    }

    fn hint_range(&self, doc: &Doc, range: Range, view: &View) -> Vec<hints::Hint> {
        let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Vec::new() };
        let within = convert::bytes(&doc.file, range, view.encoding);
        hints::hints(&analysis, &within, &|kind| doc.settings.hint(kind))
    }

    fn packed(&self, view: &View, doc: &Doc, within: &tenter_features::Range) -> Vec<SemanticToken> {
        let Some(analysis) = doc.snapshot.analyse(&doc.path) else { return Vec::new() };
        packing::pack(&doc.file, &tokens::tokens(&analysis, within), view.encoding)
    }

    fn party(&self, view: &View, item: &CallHierarchyItem) -> Option<(usize, Party)> {
        let doc = view.doc(&item.uri)?;
        let kind = match item.kind {
            SymbolKind::STRUCT => PartyKind::Mix,
            SymbolKind::FUNCTION => PartyKind::Steps,
            _ => PartyKind::File,
        };
        Some((
            doc.root,
            Party {
                name: item.name.clone(),
                kind,
                path: doc.path.clone(),
                range: convert::bytes(&doc.file, item.range, view.encoding),
                name_range: convert::bytes(&doc.file, item.selection_range, view.encoding),
            },
        ))
    }

    pub(super) fn invalid(why: impl Into<String>) -> Error {
        Error { code: ErrorCode::InvalidParams, message: why.into().into(), data: None }
    }
}

fn markdown(value: String) -> MarkupContent {
    MarkupContent { kind: MarkupKind::Markdown, value }
}

#[tower_lsp::async_trait]
impl LanguageServer for Server {
    async fn initialize(&self, params: InitializeParams) -> Result<InitializeResult> {
        Ok(self.start(params))
    }

    async fn initialized(&self, _: InitializedParams) {
        self.begin();
    }

    async fn shutdown(&self) -> Result<()> {
        Ok(())
    }

    async fn did_change_configuration(&self, params: DidChangeConfigurationParams) {
        self.configured(params);
    }

    async fn did_change_workspace_folders(&self, params: DidChangeWorkspaceFoldersParams) {
        self.folders_changed(params);
    }

    async fn did_change_watched_files(&self, params: DidChangeWatchedFilesParams) {
        self.files_changed(params);
    }

    async fn hover(&self, params: HoverParams) -> Result<Option<Hover>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        Ok(hover::hover(&doc.snapshot, &doc.path, offset).map(|found| Hover {
            contents: HoverContents::Markup(markdown(found.markdown)),
            range: Some(convert::range(&doc.file, &found.range, view.encoding)),
        }))
    }

    async fn completion(&self, params: CompletionParams) -> Result<Option<CompletionResponse>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        let snippets = self.shared.client().snippets;
        let items = completion::complete(&doc.snapshot, &doc.path, offset)
            .into_iter()
            .map(|item| items::proposal(&doc.file, item, snippets, view.encoding))
            .collect();
        Ok(Some(CompletionResponse::Array(items)))
    }

    async fn completion_resolve(&self, mut item: CompletionItem) -> Result<CompletionItem> {
        let data = item.data.clone().unwrap_or_default();
        let kind = data.get("kind").and_then(Value::as_u64).and_then(items::item_kind);
        if let (Some(kind), Some(label)) = (kind, data.get("label").and_then(Value::as_str)) {
            let words = completion::documentation(kind, label);
            item.documentation = (!words.is_empty()).then(|| Documentation::MarkupContent(markdown(words)));
        }
        Ok(item)
    }

    async fn signature_help(&self, params: SignatureHelpParams) -> Result<Option<SignatureHelp>> {
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

    async fn goto_definition(&self, params: GotoDefinitionParams) -> Result<Option<GotoDefinitionResponse>> {
        Ok(self.defined(&params.text_document_position_params))
    }

    async fn goto_declaration(&self, params: GotoDeclarationParams) -> Result<Option<GotoDeclarationResponse>> {
        Ok(self.defined(&params.text_document_position_params))
    }

    async fn goto_type_definition(
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

    async fn references(&self, params: ReferenceParams) -> Result<Option<Vec<Location>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        let declaration = params.context.include_declaration;
        let found = navigation::references(&doc.snapshot, &doc.path, offset, declaration);
        Ok(Some(found.iter().filter_map(|location| view.location(doc.root, location)).collect()))
    }

    async fn document_highlight(&self, params: DocumentHighlightParams) -> Result<Option<Vec<DocumentHighlight>>> {
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

    async fn document_symbol(&self, params: DocumentSymbolParams) -> Result<Option<DocumentSymbolResponse>> {
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

    async fn symbol(&self, params: WorkspaceSymbolParams) -> Result<Option<Vec<SymbolInformation>>> {
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

    async fn folding_range(&self, params: FoldingRangeParams) -> Result<Option<Vec<FoldingRange>>> {
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

    async fn selection_range(&self, params: SelectionRangeParams) -> Result<Option<Vec<SelectionRange>>> {
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

    async fn document_link(&self, params: DocumentLinkParams) -> Result<Option<Vec<DocumentLink>>> {
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

    async fn document_color(&self, params: DocumentColorParams) -> Result<Vec<ColorInformation>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(Vec::new()) };
        let part = |byte: u8| f32::from(byte) / 255.0;
        let found = colours::colours(&doc.file).into_iter().map(|colour| {
            let [red, green, blue] = colour.rgb;
            ColorInformation {
                range: convert::range(&doc.file, &colour.range, view.encoding),
                color: Color { red: part(red), green: part(green), blue: part(blue), alpha: 1.0 },
            }
        });
        Ok(found.collect())
    }

    async fn color_presentation(&self, params: ColorPresentationParams) -> Result<Vec<ColorPresentation>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(Vec::new()) };
        let range = convert::bytes(&doc.file, params.range, view.encoding);
        let part = |share: f32| (share.clamp(0.0, 1.0) * 255.0).round() as u8;
        let rgb = [params.color.red, params.color.green, params.color.blue].map(part);
        let label = colours::written(&doc.file, &range, rgb);
        let told = label.map(|label| ColorPresentation {
            text_edit: Some(TextEdit { range: params.range, new_text: label.clone() }),
            label,
            additional_text_edits: None,
        });
        Ok(told.into_iter().collect())
    }

    async fn code_lens(&self, params: CodeLensParams) -> Result<Option<Vec<CodeLens>>> {
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

    async fn code_lens_resolve(&self, mut lens: CodeLens) -> Result<CodeLens> {
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

    async fn inlay_hint(&self, params: InlayHintParams) -> Result<Option<Vec<InlayHint>>> {
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

    async fn inlay_hint_resolve(&self, mut hint: InlayHint) -> Result<InlayHint> {
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

    async fn semantic_tokens_full(&self, params: SemanticTokensParams) -> Result<Option<SemanticTokensResult>> {
        let uri = params.text_document.uri;
        self.current(&uri)?;
        let Some((view, doc)) = self.doc(&uri) else { return Ok(None) };
        let data = self.packed(&view, &doc, &(0..doc.file.text.len()));
        let result_id = Some(self.shared.keep_tokens(&uri, &data));
        Ok(Some(SemanticTokensResult::Tokens(SemanticTokens { result_id, data })))
    }

    async fn semantic_tokens_full_delta(
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

    async fn semantic_tokens_range(
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

    async fn code_action(&self, params: CodeActionParams) -> Result<Option<CodeActionResponse>> {
        Ok(self.offered(&params))
    }

    async fn code_action_resolve(&self, action: CodeAction) -> Result<CodeAction> {
        Ok(self.resolved(action))
    }

    async fn formatting(&self, params: DocumentFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        Ok(Some(convert::text_edits(&doc.file, &formatting::document(&doc.file), view.encoding)))
    }

    async fn range_formatting(&self, params: DocumentRangeFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(None) };
        let within = convert::bytes(&doc.file, params.range, view.encoding);
        Ok(Some(convert::text_edits(&doc.file, &formatting::range(&doc.file, &within), view.encoding)))
    }

    async fn on_type_formatting(&self, params: DocumentOnTypeFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        Ok(Some(convert::text_edits(&doc.file, &formatting::on_type(&doc.file, offset), view.encoding)))
    }

    async fn prepare_rename(&self, params: TextDocumentPositionParams) -> Result<Option<PrepareRenameResponse>> {
        let Some((view, doc, offset)) = self.at(&params) else { return Ok(None) };
        match rename::prepare(&doc.snapshot, &doc.path, offset) {
            Ok((range, placeholder)) => Ok(Some(PrepareRenameResponse::RangeWithPlaceholder {
                range: convert::range(&doc.file, &range, view.encoding),
                placeholder,
            })),
            Err(rename::Refusal::NoName) => Ok(None),
            Err(refusal) => Err(Self::invalid(refusal.to_string())),
        }
    }

    async fn rename(&self, params: RenameParams) -> Result<Option<WorkspaceEdit>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        match rename::rename(&doc.snapshot, &doc.path, offset, &params.new_name) {
            Ok(edits) => {
                let versioned = self.shared.client().versioned_edits;
                Ok(Some(convert::workspace_edit(&view, doc.root, &edits, versioned)))
            }
            Err(refusal) => Err(Self::invalid(refusal.to_string())),
        }
    }

    async fn linked_editing_range(&self, params: LinkedEditingRangeParams) -> Result<Option<LinkedEditingRanges>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let ranges: Vec<Range> = rename::linked(&doc.snapshot, &doc.path, offset)
            .iter()
            .map(|range| convert::range(&doc.file, range, view.encoding))
            .collect();
        // A name is words with single blanks between them.
        let word_pattern = Some(r#"[^\s,"()#]+(?: [^\s,"()#]+)*"#.to_owned());
        Ok((!ranges.is_empty()).then_some(LinkedEditingRanges { ranges, word_pattern }))
    }

    async fn prepare_call_hierarchy(
        &self,
        params: CallHierarchyPrepareParams,
    ) -> Result<Option<Vec<CallHierarchyItem>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let party = calls::prepare(&doc.snapshot, &doc.path, offset);
        Ok(party.and_then(|party| items::call_item(&view, doc.root, &party)).map(|item| vec![item]))
    }

    async fn incoming_calls(
        &self,
        params: CallHierarchyIncomingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyIncomingCall>>> {
        let view = self.view();
        let Some((root, party)) = self.party(&view, &params.item) else { return Ok(None) };
        let Some(snapshot) = view.snapshot(root) else { return Ok(None) };
        let found = calls::incoming(snapshot, &party).into_iter().filter_map(|(from, ranges)| {
            let file = snapshot.file_once(&from.path)?;
            let from_ranges = ranges.iter().map(|range| convert::range(&file, range, view.encoding)).collect();
            Some(CallHierarchyIncomingCall { from: items::call_item(&view, root, &from)?, from_ranges })
        });
        Ok(Some(found.collect()))
    }

    async fn outgoing_calls(
        &self,
        params: CallHierarchyOutgoingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyOutgoingCall>>> {
        let view = self.view();
        let Some((root, party)) = self.party(&view, &params.item) else { return Ok(None) };
        let Some(snapshot) = view.snapshot(root) else { return Ok(None) };
        let Some(file) = snapshot.file_once(&party.path) else { return Ok(None) };
        let found = calls::outgoing(snapshot, &party).into_iter().filter_map(|(to, ranges)| {
            let from_ranges = ranges.iter().map(|range| convert::range(&file, range, view.encoding)).collect();
            Some(CallHierarchyOutgoingCall { to: items::call_item(&view, root, &to)?, from_ranges })
        });
        Ok(Some(found.collect()))
    }

    async fn diagnostic(&self, params: DocumentDiagnosticParams) -> Result<DocumentDiagnosticReportResult> {
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

    async fn workspace_diagnostic(&self, params: WorkspaceDiagnosticParams) -> Result<WorkspaceDiagnosticReportResult> {
        Ok(self.all_findings(&params.previous_result_ids).await)
    }

    async fn will_rename_files(&self, params: RenameFilesParams) -> Result<Option<WorkspaceEdit>> {
        let view = self.view();
        let mut by_root: std::collections::BTreeMap<usize, Vec<(String, String)>> = std::collections::BTreeMap::new();
        for file in &params.files {
            let (Ok(old), Ok(new)) = (Url::parse(&file.old_uri), Url::parse(&file.new_uri)) else { continue };
            let (Some((root, old)), Some((other, new))) = (view.place(&old), view.place(&new)) else { continue };
            let Some(snapshot) = view.snapshot(root).filter(|_| root == other) else { continue };
            let moves = by_root.entry(root).or_default();
            if snapshot.has(&old) {
                moves.push((old, new));
            } else {
                // A folder: everything below it moves along.
                let below = format!("{}/", old.trim_end_matches('/'));
                let paths = snapshot.paths();
                moves.extend(paths.iter().filter_map(|path| {
                    let rest = path.strip_prefix(&below)?;
                    Some((path.to_string(), format!("{}/{rest}", new.trim_end_matches('/'))))
                }));
            }
        }
        let versioned = self.shared.client().versioned_edits;
        for (root, moves) in by_root {
            let Some(snapshot) = view.snapshot(root) else { continue };
            let edits = renamed_files::edits(snapshot, &moves);
            if !edits.is_empty() {
                return Ok(Some(convert::workspace_edit(&view, root, &edits, versioned)));
            }
        }
        Ok(None)
    }

    async fn execute_command(&self, params: ExecuteCommandParams) -> Result<Option<Value>> {
        self.execute(&params)
    }
}
