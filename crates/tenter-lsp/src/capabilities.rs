//! What the server offers, and what the client can take.

use tenter_syntax::Encoding;
use tower_lsp::lsp_types::{
    CallHierarchyServerCapability, ClientCapabilities, CodeActionKind, CodeActionOptions, CodeActionProviderCapability,
    CodeLensOptions, ColorProviderCapability, CompletionOptions, DeclarationCapability, DiagnosticOptions,
    DiagnosticServerCapabilities, DocumentLinkOptions, DocumentOnTypeFormattingOptions, ExecuteCommandOptions,
    FileOperationFilter, FileOperationPattern, FileOperationPatternKind, FileOperationRegistrationOptions,
    FoldingRangeProviderCapability, HoverProviderCapability, InlayHintOptions, InlayHintServerCapabilities,
    LinkedEditingRangeServerCapabilities, OneOf, PositionEncodingKind, RenameOptions, ResourceOperationKind,
    SelectionRangeProviderCapability, SemanticTokensFullOptions, SemanticTokensOptions,
    SemanticTokensServerCapabilities, ServerCapabilities, SignatureHelpOptions, TextDocumentSyncCapability,
    TextDocumentSyncKind, TextDocumentSyncOptions, TypeDefinitionProviderCapability, WorkDoneProgressOptions,
    WorkspaceFileOperationsServerCapabilities, WorkspaceFoldersServerCapabilities, WorkspaceServerCapabilities,
};

use crate::server::commands::COMMANDS;
use crate::tokens;

/// What the client can take.
#[derive(Clone, Debug, Default)]
pub(crate) struct Client {
    pub pulls: bool,
    pub refreshes_diagnostics: bool,
    pub refreshes_hints: bool,
    pub refreshes_lenses: bool,
    pub refreshes_tokens: bool,
    pub gives_configuration: bool,
    pub told_of_configuration: bool,
    pub watches: bool,
    pub shows_progress: bool,
    pub shows_documents: bool,
    pub nests_symbols: bool,
    pub snippets: bool,
    pub resolves_actions: bool,
    pub action_literals: bool,
    pub versioned_edits: bool,
    pub creates_files: bool,
    pub related: bool,
    pub links_codes: bool,
    pub tags: bool,
}

impl Client {
    /// Reads it off what the client says of itself.
    pub fn of(capabilities: &ClientCapabilities) -> Self {
        let text = capabilities.text_document.clone().unwrap_or_default();
        let workspace = capabilities.workspace.clone().unwrap_or_default();
        let window = capabilities.window.clone().unwrap_or_default();
        let action = text.code_action.unwrap_or_default();
        let edit = workspace.workspace_edit.unwrap_or_default();
        let creates = edit.resource_operations.is_some_and(|list| list.contains(&ResourceOperationKind::Create));
        let versioned_edits = edit.document_changes.unwrap_or(false);
        let published = text.publish_diagnostics.unwrap_or_default();
        Self {
            pulls: text.diagnostic.is_some(),
            refreshes_diagnostics: workspace.diagnostic.and_then(|it| it.refresh_support).unwrap_or(false),
            refreshes_hints: workspace.inlay_hint.and_then(|it| it.refresh_support).unwrap_or(false),
            refreshes_lenses: workspace.code_lens.and_then(|it| it.refresh_support).unwrap_or(false),
            refreshes_tokens: workspace.semantic_tokens.and_then(|it| it.refresh_support).unwrap_or(false),
            gives_configuration: workspace.configuration.unwrap_or(false),
            told_of_configuration: workspace
                .did_change_configuration
                .and_then(|it| it.dynamic_registration)
                .unwrap_or(false),
            watches: workspace.did_change_watched_files.and_then(|it| it.dynamic_registration).unwrap_or(false),
            shows_progress: window.work_done_progress.unwrap_or(false),
            shows_documents: window.show_document.is_some_and(|it| it.support),
            nests_symbols: text.document_symbol.and_then(|it| it.hierarchical_document_symbol_support).unwrap_or(false),
            snippets: text
                .completion
                .and_then(|it| it.completion_item)
                .and_then(|it| it.snippet_support)
                .unwrap_or(false),
            resolves_actions: action.resolve_support.is_some_and(|it| it.properties.iter().any(|name| name == "edit"))
                && action.data_support.unwrap_or(false),
            action_literals: action.code_action_literal_support.is_some(),
            versioned_edits,
            creates_files: creates && versioned_edits,
            related: published.related_information.unwrap_or(false),
            links_codes: published.code_description_support.unwrap_or(false),
            tags: published.tag_support.is_some(),
        }
    }
}

/// The encoding to count columns in: the cheapest the client offers.
pub(crate) fn encoding(capabilities: &ClientCapabilities) -> Encoding {
    let offered = capabilities.general.as_ref().and_then(|general| general.position_encodings.as_ref());
    let offers = |kind: PositionEncodingKind| offered.is_some_and(|list| list.contains(&kind));
    if offers(PositionEncodingKind::UTF8) {
        Encoding::Utf8
    } else if !offers(PositionEncodingKind::UTF16) && offers(PositionEncodingKind::UTF32) {
        Encoding::Utf32
    } else {
        Encoding::Utf16
    }
}

/// What the server offers this client.
pub(crate) fn offered(client: &Client, encoding: Encoding) -> ServerCapabilities {
    let encoding = match encoding {
        Encoding::Utf8 => PositionEncodingKind::UTF8,
        Encoding::Utf16 => PositionEncodingKind::UTF16,
        Encoding::Utf32 => PositionEncodingKind::UTF32,
    };
    let none = WorkDoneProgressOptions::default();
    // Pull or push, never both: a client shows each twice.
    let diagnostic_provider = client.pulls.then(|| {
        DiagnosticServerCapabilities::Options(DiagnosticOptions {
            identifier: Some("tenter".to_owned()),
            inter_file_dependencies: true,
            workspace_diagnostics: true,
            work_done_progress_options: none,
        })
    });
    ServerCapabilities {
        position_encoding: Some(encoding),
        text_document_sync: Some(TextDocumentSyncCapability::Options(TextDocumentSyncOptions {
            open_close: Some(true),
            change: Some(TextDocumentSyncKind::INCREMENTAL),
            ..TextDocumentSyncOptions::default()
        })),
        hover_provider: Some(HoverProviderCapability::Simple(true)),
        completion_provider: Some(CompletionOptions {
            resolve_provider: Some(true),
            trigger_characters: Some([" ", "\"", ",", "%", "/"].map(str::to_owned).to_vec()),
            ..CompletionOptions::default()
        }),
        signature_help_provider: Some(SignatureHelpOptions {
            trigger_characters: Some(vec![" ".to_owned()]),
            retrigger_characters: None,
            work_done_progress_options: none,
        }),
        declaration_provider: Some(DeclarationCapability::Simple(true)),
        definition_provider: Some(OneOf::Left(true)),
        type_definition_provider: Some(TypeDefinitionProviderCapability::Simple(true)),
        references_provider: Some(OneOf::Left(true)),
        document_highlight_provider: Some(OneOf::Left(true)),
        document_symbol_provider: Some(OneOf::Left(true)),
        workspace_symbol_provider: Some(OneOf::Left(true)),
        code_action_provider: Some(CodeActionProviderCapability::Options(CodeActionOptions {
            code_action_kinds: Some(vec![
                CodeActionKind::QUICKFIX,
                CodeActionKind::REFACTOR_EXTRACT,
                CodeActionKind::REFACTOR_REWRITE,
                CodeActionKind::SOURCE,
                CodeActionKind::SOURCE_FIX_ALL,
            ]),
            resolve_provider: Some(client.resolves_actions),
            work_done_progress_options: none,
        })),
        code_lens_provider: Some(CodeLensOptions { resolve_provider: Some(true) }),
        document_formatting_provider: Some(OneOf::Left(true)),
        document_range_formatting_provider: Some(OneOf::Left(true)),
        document_on_type_formatting_provider: Some(DocumentOnTypeFormattingOptions {
            first_trigger_character: "\n".to_owned(),
            more_trigger_character: None,
        }),
        rename_provider: Some(OneOf::Right(RenameOptions {
            prepare_provider: Some(true),
            work_done_progress_options: none,
        })),
        document_link_provider: Some(DocumentLinkOptions {
            resolve_provider: Some(false),
            work_done_progress_options: none,
        }),
        color_provider: Some(ColorProviderCapability::Simple(true)),
        folding_range_provider: Some(FoldingRangeProviderCapability::Simple(true)),
        selection_range_provider: Some(SelectionRangeProviderCapability::Simple(true)),
        linked_editing_range_provider: Some(LinkedEditingRangeServerCapabilities::Simple(true)),
        call_hierarchy_provider: Some(CallHierarchyServerCapability::Simple(true)),
        semantic_tokens_provider: Some(SemanticTokensServerCapabilities::SemanticTokensOptions(
            SemanticTokensOptions {
                legend: tokens::legend(),
                range: Some(true),
                full: Some(SemanticTokensFullOptions::Delta { delta: Some(true) }),
                work_done_progress_options: none,
            },
        )),
        inlay_hint_provider: Some(OneOf::Right(InlayHintServerCapabilities::Options(InlayHintOptions {
            resolve_provider: Some(true),
            work_done_progress_options: none,
        }))),
        diagnostic_provider,
        execute_command_provider: Some(ExecuteCommandOptions {
            commands: COMMANDS.map(str::to_owned).to_vec(),
            work_done_progress_options: none,
        }),
        workspace: Some(WorkspaceServerCapabilities {
            workspace_folders: Some(WorkspaceFoldersServerCapabilities {
                supported: Some(true),
                change_notifications: Some(OneOf::Left(true)),
            }),
            file_operations: Some(WorkspaceFileOperationsServerCapabilities {
                will_rename: Some(FileOperationRegistrationOptions {
                    filters: vec![
                        renamed("**/*.dye", FileOperationPatternKind::File),
                        renamed("**", FileOperationPatternKind::Folder),
                    ],
                }),
                ..WorkspaceFileOperationsServerCapabilities::default()
            }),
        }),
        ..ServerCapabilities::default()
    }
}

fn renamed(glob: &str, kind: FileOperationPatternKind) -> FileOperationFilter {
    FileOperationFilter {
        scheme: Some("file".to_owned()),
        pattern: FileOperationPattern { glob: glob.to_owned(), matches: Some(kind), options: None },
    }
}
