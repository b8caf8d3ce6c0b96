//! Who draws on whom.

use tenter_features::calls::{self, Party, PartyKind};
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::{Server, items};
use crate::world::View;

impl Server {
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

    pub(super) fn answer_prepare_call_hierarchy(
        &self,
        params: CallHierarchyPrepareParams,
    ) -> Result<Option<Vec<CallHierarchyItem>>> {
        let Some((view, doc, offset)) = self.at(&params.text_document_position_params) else { return Ok(None) };
        let party = calls::prepare(&doc.snapshot, &doc.path, offset);
        Ok(party.and_then(|party| items::call_item(&view, doc.root, &party)).map(|item| vec![item]))
    }

    pub(super) fn answer_incoming_calls(
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

    pub(super) fn answer_outgoing_calls(
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
}
