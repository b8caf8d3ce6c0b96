//! Other names, for things and for files.

use tenter_features::{rename, renamed_files};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;

impl Server {
    pub(super) fn answer_prepare_rename(
        &self,
        params: TextDocumentPositionParams,
    ) -> Result<Option<PrepareRenameResponse>> {
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

    pub(super) fn answer_rename(&self, params: RenameParams) -> Result<Option<WorkspaceEdit>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position) else { return Ok(None) };
        match rename::rename(&doc.snapshot, &doc.path, offset, &params.new_name) {
            Ok(edits) => {
                let versioned = self.shared.client().versioned_edits;
                Ok(Some(convert::workspace_edit(&view, doc.root, &edits, versioned)))
            }
            Err(refusal) => Err(Self::invalid(refusal.to_string())),
        }
    }

    pub(super) fn answer_linked_editing_range(
        &self,
        params: LinkedEditingRangeParams,
    ) -> Result<Option<LinkedEditingRanges>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let ranges: Vec<Range> = rename::linked(&doc.snapshot, &doc.path, offset)
            .iter()
            .map(|range| convert::range(&doc.file, range, view.encoding))
            .collect();
        // A name is words with single blanks between them.
        let word_pattern = Some(r#"[^\s,"()#]+(?: [^\s,"()#]+)*"#.to_owned());
        Ok((!ranges.is_empty()).then_some(LinkedEditingRanges { ranges, word_pattern }))
    }

    pub(super) fn answer_will_rename_files(&self, params: RenameFilesParams) -> Result<Option<WorkspaceEdit>> {
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
        let of_root = by_root.iter().filter_map(|(root, moves)| {
            let edits = renamed_files::edits(view.snapshot(*root)?, moves);
            (!edits.is_empty()).then(|| convert::workspace_edit(&view, *root, &edits, versioned))
        });
        Ok(of_root.reduce(convert::together))
    }
}
