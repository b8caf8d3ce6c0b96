//! The methods of the protocol, each answered in the file of its idea.

use serde_json::Value;
use tower_lsp::LanguageServer;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types::request::{
    GotoDeclarationParams, GotoDeclarationResponse, GotoTypeDefinitionParams, GotoTypeDefinitionResponse,
};
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;
use crate::world::{Doc, View};

impl Server {
    pub(super) fn doc(&self, uri: &Url) -> Option<(View, Doc)> {
        let view = self.view();
        let doc = view.doc(uri)?;
        Some((view, doc))
    }

    /// A document and the offset of a position in it.
    pub(super) fn at(&self, place: &TextDocumentPositionParams) -> Option<(View, Doc, usize)> {
        let (view, doc) = self.doc(&place.text_document.uri)?;
        let offset = convert::offset(&doc.file, place.position, view.encoding);
        Some((view, doc, offset))
    }

    /// An answer that would be painted over a newer text is not given.
    pub(super) fn current(&self, uri: &Url) -> Result<()> {
        if self.outdated(&self.view(), uri) {
            return Err(Error { code: ErrorCode::ContentModified, message: "the text went on".into(), data: None });
        }
        Ok(())
    }

    pub(super) fn invalid(why: impl Into<String>) -> Error {
        Error { code: ErrorCode::InvalidParams, message: why.into().into(), data: None }
    }
}

pub(super) fn markdown(value: String) -> MarkupContent {
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
        self.answer_hover(params)
    }

    async fn completion(&self, params: CompletionParams) -> Result<Option<CompletionResponse>> {
        self.answer_completion(params)
    }

    async fn completion_resolve(&self, item: CompletionItem) -> Result<CompletionItem> {
        self.answer_completion_resolve(item)
    }

    async fn signature_help(&self, params: SignatureHelpParams) -> Result<Option<SignatureHelp>> {
        self.answer_signature_help(params)
    }

    async fn goto_definition(&self, params: GotoDefinitionParams) -> Result<Option<GotoDefinitionResponse>> {
        self.answer_goto_definition(params)
    }

    async fn goto_declaration(&self, params: GotoDeclarationParams) -> Result<Option<GotoDeclarationResponse>> {
        self.answer_goto_declaration(params)
    }

    async fn goto_type_definition(
        &self,
        params: GotoTypeDefinitionParams,
    ) -> Result<Option<GotoTypeDefinitionResponse>> {
        self.answer_goto_type_definition(params)
    }

    async fn references(&self, params: ReferenceParams) -> Result<Option<Vec<Location>>> {
        self.answer_references(params)
    }

    async fn document_highlight(&self, params: DocumentHighlightParams) -> Result<Option<Vec<DocumentHighlight>>> {
        self.answer_document_highlight(params)
    }

    async fn document_symbol(&self, params: DocumentSymbolParams) -> Result<Option<DocumentSymbolResponse>> {
        self.answer_document_symbol(params)
    }

    async fn symbol(&self, params: WorkspaceSymbolParams) -> Result<Option<Vec<SymbolInformation>>> {
        self.answer_symbol(params)
    }

    async fn folding_range(&self, params: FoldingRangeParams) -> Result<Option<Vec<FoldingRange>>> {
        self.answer_folding_range(params)
    }

    async fn selection_range(&self, params: SelectionRangeParams) -> Result<Option<Vec<SelectionRange>>> {
        self.answer_selection_range(params)
    }

    async fn document_link(&self, params: DocumentLinkParams) -> Result<Option<Vec<DocumentLink>>> {
        self.answer_document_link(params)
    }

    async fn document_color(&self, params: DocumentColorParams) -> Result<Vec<ColorInformation>> {
        self.answer_document_color(params)
    }

    async fn color_presentation(&self, params: ColorPresentationParams) -> Result<Vec<ColorPresentation>> {
        self.answer_color_presentation(params)
    }

    async fn code_lens(&self, params: CodeLensParams) -> Result<Option<Vec<CodeLens>>> {
        self.answer_code_lens(params)
    }

    async fn code_lens_resolve(&self, lens: CodeLens) -> Result<CodeLens> {
        self.answer_code_lens_resolve(lens)
    }

    async fn inlay_hint(&self, params: InlayHintParams) -> Result<Option<Vec<InlayHint>>> {
        self.answer_inlay_hint(params)
    }

    async fn inlay_hint_resolve(&self, hint: InlayHint) -> Result<InlayHint> {
        self.answer_inlay_hint_resolve(hint)
    }

    async fn semantic_tokens_full(&self, params: SemanticTokensParams) -> Result<Option<SemanticTokensResult>> {
        self.answer_semantic_tokens_full(params)
    }

    async fn semantic_tokens_full_delta(
        &self,
        params: SemanticTokensDeltaParams,
    ) -> Result<Option<SemanticTokensFullDeltaResult>> {
        self.answer_semantic_tokens_full_delta(params)
    }

    async fn semantic_tokens_range(
        &self,
        params: SemanticTokensRangeParams,
    ) -> Result<Option<SemanticTokensRangeResult>> {
        self.answer_semantic_tokens_range(params)
    }

    async fn code_action(&self, params: CodeActionParams) -> Result<Option<CodeActionResponse>> {
        Ok(self.offered(&params))
    }

    async fn code_action_resolve(&self, action: CodeAction) -> Result<CodeAction> {
        Ok(self.resolved(action))
    }

    async fn formatting(&self, params: DocumentFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        self.answer_formatting(params)
    }

    async fn range_formatting(&self, params: DocumentRangeFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        self.answer_range_formatting(params)
    }

    async fn on_type_formatting(&self, params: DocumentOnTypeFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        self.answer_on_type_formatting(params)
    }

    async fn prepare_rename(&self, params: TextDocumentPositionParams) -> Result<Option<PrepareRenameResponse>> {
        self.answer_prepare_rename(params)
    }

    async fn rename(&self, params: RenameParams) -> Result<Option<WorkspaceEdit>> {
        self.answer_rename(params)
    }

    async fn linked_editing_range(&self, params: LinkedEditingRangeParams) -> Result<Option<LinkedEditingRanges>> {
        self.answer_linked_editing_range(params)
    }

    async fn prepare_call_hierarchy(
        &self,
        params: CallHierarchyPrepareParams,
    ) -> Result<Option<Vec<CallHierarchyItem>>> {
        self.answer_prepare_call_hierarchy(params)
    }

    async fn incoming_calls(
        &self,
        params: CallHierarchyIncomingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyIncomingCall>>> {
        self.answer_incoming_calls(params)
    }

    async fn outgoing_calls(
        &self,
        params: CallHierarchyOutgoingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyOutgoingCall>>> {
        self.answer_outgoing_calls(params)
    }

    async fn diagnostic(&self, params: DocumentDiagnosticParams) -> Result<DocumentDiagnosticReportResult> {
        self.answer_diagnostic(params)
    }

    async fn workspace_diagnostic(&self, params: WorkspaceDiagnosticParams) -> Result<WorkspaceDiagnosticReportResult> {
        Ok(self.all_findings(&params.previous_result_ids).await)
    }

    async fn will_rename_files(&self, params: RenameFilesParams) -> Result<Option<WorkspaceEdit>> {
        self.answer_will_rename_files(params)
    }

    async fn execute_command(&self, params: ExecuteCommandParams) -> Result<Option<Value>> {
        self.execute(&params)
    }
}
