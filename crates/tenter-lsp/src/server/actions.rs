//! Code actions as the protocol has them: offered without their edits where the client asks for those later.

use serde_json::json;
use tenter_features::actions::{self, Action};
use tenter_features::sheets;
use tower_lsp::lsp_types::{
    CodeAction, CodeActionKind, CodeActionOrCommand, CodeActionParams, Command, Diagnostic, NumberOrString, Range, Url,
    WorkspaceEdit,
};

use crate::convert;
use crate::outside;
use crate::server::{Server, items};
use crate::world::{Doc, View};

impl Server {
    /// The actions at a place.
    pub(super) fn offered(&self, params: &CodeActionParams) -> Option<Vec<CodeActionOrCommand>> {
        let able = self.shared.client();
        if !able.action_literals {
            return None;
        }
        let uri = &params.text_document.uri;
        let (view, doc) = self.doc(uri)?;
        let range = convert::bytes(&doc.file, params.range, view.encoding);
        let wanted = |kind: &CodeActionKind| {
            params.context.only.as_ref().is_none_or(|only| only.iter().any(|base| within(kind, base)))
        };
        let found = actions::actions(&doc.snapshot, &doc.path, &range, Some(&outside::today()));
        let mut offered: Vec<CodeActionOrCommand> = found
            .iter()
            .filter(|action| wanted(&items::action_kind(action)))
            .filter_map(|action| self.told(&view, &doc, params, action))
            .map(CodeActionOrCommand::CodeAction)
            .collect();
        let on_title = doc.snapshot.analyse(&doc.path).is_some_and(|it| sheets::on_title(&it, range.start));
        if on_title && wanted(&CodeActionKind::SOURCE) {
            let argument = json!({ "uri": uri, "position": params.range.start, "show": true });
            let title = "open a sheet for the bench".to_owned();
            let command = Command {
                title: title.clone(),
                command: "tenter.benchSheet".to_owned(),
                arguments: Some(vec![argument]),
            };
            let kind = Some(CodeActionKind::SOURCE);
            offered.push(CodeActionOrCommand::CodeAction(CodeAction {
                title,
                kind,
                command: Some(command),
                ..CodeAction::default()
            }));
        }
        Some(offered)
    }

    fn told(&self, view: &View, doc: &Doc, params: &CodeActionParams, action: &Action) -> Option<CodeAction> {
        let able = self.shared.client();
        if action.creates.is_some() && (!able.creates_files || view.folder(doc.root).is_none()) {
            return None;
        }
        let settled = action.settles.as_ref().map(|(rule, place)| {
            let place = convert::range(&doc.file, place, view.encoding);
            let told = |diagnostic: &&Diagnostic| {
                diagnostic.range == place && diagnostic.code == Some(NumberOrString::String((*rule).to_owned()))
            };
            params.context.diagnostics.iter().filter(told).cloned().collect::<Vec<_>>()
        });
        let mut told = CodeAction {
            title: action.title.clone(),
            kind: Some(items::action_kind(action)),
            diagnostics: settled.filter(|list| !list.is_empty()),
            is_preferred: action.preferred.then_some(true),
            ..CodeAction::default()
        };
        if able.resolves_actions {
            let uri = &params.text_document.uri;
            told.data = Some(json!({ "uri": uri, "range": params.range, "title": action.title }));
        } else {
            told.edit = Some(self.edit_of(view, doc, action));
        }
        Some(told)
    }

    /// The edits of an action that was offered without them.
    pub(super) fn resolved(&self, mut action: CodeAction) -> CodeAction {
        let data = action.data.clone().unwrap_or_default();
        let uri: Option<Url> = data.get("uri").and_then(|uri| serde_json::from_value(uri.clone()).ok());
        let range: Option<Range> = data.get("range").and_then(|range| serde_json::from_value(range.clone()).ok());
        if let (Some(uri), Some(range)) = (uri, range)
            && let Some((view, doc)) = self.doc(&uri)
        {
            let bytes = convert::bytes(&doc.file, range, view.encoding);
            let found = actions::actions(&doc.snapshot, &doc.path, &bytes, Some(&outside::today()));
            let same = found.iter().find(|other| other.title == action.title);
            action.edit = same.map(|same| self.edit_of(&view, &doc, same));
        }
        action
    }

    fn edit_of(&self, view: &View, doc: &Doc, action: &Action) -> WorkspaceEdit {
        let edit = convert::workspace_edit(view, doc.root, &action.edits, self.shared.client().versioned_edits);
        match &action.creates {
            Some(new) => convert::with_new_file(view, doc.root, edit, &new.path, &new.text),
            None => edit,
        }
    }
}

fn within(kind: &CodeActionKind, base: &CodeActionKind) -> bool {
    let (kind, base) = (kind.as_str(), base.as_str());
    base.is_empty() || kind == base || kind.strip_prefix(base).is_some_and(|rest| rest.starts_with('.'))
}
