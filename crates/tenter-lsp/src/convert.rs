//! Bytes to lines and columns and back; edits.

use std::collections::BTreeMap;

use tenter_features::{Edit, File, Range};
use tenter_syntax::{Encoding, LineIndex, Position};
use tower_lsp::lsp_types::{
    self as lsp, CreateFile, CreateFileOptions, DocumentChangeOperation, DocumentChanges, OneOf,
    OptionalVersionedTextDocumentIdentifier, ResourceOp, TextDocumentContentChangeEvent, TextDocumentEdit, TextEdit,
    Url, WorkspaceEdit,
};

use crate::world::View;

/// The position of an offset.
pub(crate) fn position(file: &File, offset: usize, encoding: Encoding) -> lsp::Position {
    let position = file.lines.position(&file.text, offset, encoding);
    lsp::Position { line: position.line, character: position.column }
}

/// The offset of a position; outside the text, the nearest there is.
pub(crate) fn offset(file: &File, position: lsp::Position, encoding: Encoding) -> usize {
    at(&file.text, &file.lines, position, encoding)
}

fn at(text: &str, lines: &LineIndex, position: lsp::Position, encoding: Encoding) -> usize {
    lines.offset(text, Position { line: position.line, column: position.character }, encoding)
}

/// The range of some bytes.
pub(crate) fn range(file: &File, range: &Range, encoding: Encoding) -> lsp::Range {
    lsp::Range { start: position(file, range.start, encoding), end: position(file, range.end, encoding) }
}

/// The bytes of a range; an inverted one is empty.
pub(crate) fn bytes(file: &File, range: lsp::Range, encoding: Encoding) -> Range {
    let start = offset(file, range.start, encoding);
    start..offset(file, range.end, encoding).max(start)
}

/// The text after some changes, each made to what the one before left.
pub(crate) fn changed(file: &File, changes: &[TextDocumentContentChangeEvent], encoding: Encoding) -> String {
    let mut text = file.text.to_string();
    let mut lines: Option<LineIndex> = None;
    for change in changes {
        match change.range {
            None => text.clone_from(&change.text),
            Some(range) => {
                let table = lines.as_ref().unwrap_or(&file.lines);
                let start = at(&text, table, range.start, encoding);
                let end = at(&text, table, range.end, encoding).max(start);
                text.replace_range(start..end, &change.text);
            }
        }
        if changes.len() > 1 {
            lines = Some(LineIndex::new(&text));
        }
    }
    text
}

/// Edits of one file.
pub(crate) fn text_edits(file: &File, edits: &[Edit], encoding: Encoding) -> Vec<TextEdit> {
    edits
        .iter()
        .map(|edit| TextEdit { range: range(file, &edit.at.range(), encoding), new_text: edit.new_text.clone() })
        .collect()
}

/// Edits of any files of a collection, with the versions they are made for where the client can take them.
pub(crate) fn workspace_edit(view: &View, root: usize, edits: &[Edit], versioned: bool) -> WorkspaceEdit {
    let mut by_path: BTreeMap<&str, Vec<&Edit>> = BTreeMap::new();
    for edit in edits {
        by_path.entry(&edit.at.path).or_default().push(edit);
    }
    let mut files: Vec<(Url, Option<i32>, Vec<TextEdit>)> = Vec::new();
    for (path, edits) in by_path {
        let file = view.snapshot(root).and_then(|snapshot| snapshot.file_once(path));
        if let (Some(uri), Some(file)) = (view.uri(root, path), file) {
            let edits = edits
                .iter()
                .map(|edit| TextEdit {
                    range: range(&file, &edit.at.range(), view.encoding),
                    new_text: edit.new_text.clone(),
                })
                .collect();
            files.push((uri, view.version(root, path), edits));
        }
    }
    if versioned {
        let changes = files
            .into_iter()
            .map(|(uri, version, edits)| TextDocumentEdit {
                text_document: OptionalVersionedTextDocumentIdentifier { uri, version },
                edits: edits.into_iter().map(OneOf::Left).collect(),
            })
            .collect();
        WorkspaceEdit { document_changes: Some(DocumentChanges::Edits(changes)), ..WorkspaceEdit::default() }
    } else {
        let changes = files.into_iter().map(|(uri, _, edits)| (uri, edits)).collect();
        WorkspaceEdit { changes: Some(changes), ..WorkspaceEdit::default() }
    }
}

/// The edits of two collections in one.
pub(crate) fn together(mut one: WorkspaceEdit, other: WorkspaceEdit) -> WorkspaceEdit {
    if let (Some(DocumentChanges::Edits(edits)), Some(DocumentChanges::Edits(more))) =
        (&mut one.document_changes, other.document_changes)
    {
        edits.extend(more);
    }
    if let (Some(changes), Some(more)) = (&mut one.changes, other.changes) {
        changes.extend(more);
    }
    one
}

/// The same edits, a new file made before them.
pub(crate) fn with_new_file(view: &View, root: usize, edit: WorkspaceEdit, path: &str, text: &str) -> WorkspaceEdit {
    let (Some(uri), Some(DocumentChanges::Edits(edits))) = (view.uri(root, path), &edit.document_changes) else {
        return edit;
    };
    // What is there already is left alone, and the client then makes none of the edits.
    let options = Some(CreateFileOptions { overwrite: Some(false), ignore_if_exists: Some(false) });
    let create = CreateFile { uri: uri.clone(), options, annotation_id: None };
    let filled = TextDocumentEdit {
        text_document: OptionalVersionedTextDocumentIdentifier { uri, version: None },
        edits: vec![OneOf::Left(TextEdit { range: lsp::Range::default(), new_text: text.to_owned() })],
    };
    let mut operations =
        vec![DocumentChangeOperation::Op(ResourceOp::Create(create)), DocumentChangeOperation::Edit(filled)];
    operations.extend(edits.iter().cloned().map(DocumentChangeOperation::Edit));
    WorkspaceEdit { document_changes: Some(DocumentChanges::Operations(operations)), ..WorkspaceEdit::default() }
}
