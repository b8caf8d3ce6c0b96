//! Answers of features as items of the protocol.

use tenter_features::actions::{Action, ActionKind};
use tenter_features::calls::{Party, PartyKind};
use tenter_features::completion::{Completion, ItemKind};
use tenter_features::symbols::Symbol;
use tenter_features::{File, SymbolKind};
use tenter_syntax::Encoding;
use tower_lsp::lsp_types::{
    self as lsp, CallHierarchyItem, CodeActionKind, CompletionItem, CompletionItemKind, CompletionTextEdit,
    DocumentSymbol, InsertTextFormat, SymbolInformation, TextEdit, Url,
};

use crate::convert;
use crate::world::View;

/// The protocol's kind of a name.
pub(super) const fn symbol_kind(kind: SymbolKind) -> lsp::SymbolKind {
    match kind {
        SymbolKind::Recipe => lsp::SymbolKind::MODULE,
        SymbolKind::Goods => lsp::SymbolKind::CLASS,
        SymbolKind::Mix => lsp::SymbolKind::STRUCT,
        SymbolKind::Dye | SymbolKind::Chemical | SymbolKind::Reference => lsp::SymbolKind::CONSTANT,
        SymbolKind::Layout => lsp::SymbolKind::INTERFACE,
        SymbolKind::Zone => lsp::SymbolKind::ENUM_MEMBER,
        SymbolKind::Vessel => lsp::SymbolKind::OBJECT,
        SymbolKind::Steps => lsp::SymbolKind::FUNCTION,
        SymbolKind::Variant => lsp::SymbolKind::EVENT,
    }
}

/// A named part with what it holds.
pub(super) fn nested(file: &File, symbol: Symbol, encoding: Encoding) -> DocumentSymbol {
    let children: Vec<DocumentSymbol> =
        symbol.children.into_iter().map(|child| nested(file, child, encoding)).collect();
    #[allow(deprecated, reason = "the field has to be filled")]
    DocumentSymbol {
        name: symbol.name,
        detail: Some(symbol.detail),
        kind: symbol_kind(symbol.kind),
        tags: None,
        deprecated: None,
        range: convert::range(file, &symbol.range, encoding),
        selection_range: convert::range(file, &symbol.name_range, encoding),
        children: (!children.is_empty()).then_some(children),
    }
}

/// The same in a row, for clients that nest nothing.
pub(super) fn flat(file: &File, uri: &Url, symbols: Vec<Symbol>, encoding: Encoding) -> Vec<SymbolInformation> {
    let mut found = Vec::new();
    let mut waiting: Vec<(Symbol, Option<String>)> = symbols.into_iter().rev().map(|symbol| (symbol, None)).collect();
    while let Some((symbol, container)) = waiting.pop() {
        #[allow(deprecated, reason = "the field has to be filled")]
        found.push(SymbolInformation {
            name: symbol.name.clone(),
            kind: symbol_kind(symbol.kind),
            tags: None,
            deprecated: None,
            location: lsp::Location { uri: uri.clone(), range: convert::range(file, &symbol.range, encoding) },
            container_name: container,
        });
        waiting.extend(symbol.children.into_iter().rev().map(|child| (child, Some(symbol.name.clone()))));
    }
    found
}

/// A proposal. Without snippets the places to fill become the words they hold.
pub(super) fn proposal(file: &File, item: Completion, snippets: bool, encoding: Encoding) -> CompletionItem {
    let mut range = convert::range(file, &item.range, encoding);
    // What is replaced stays on the line of the caret.
    if range.start.line != range.end.line {
        range.start = range.end;
    }
    let snippet = item.snippet && snippets;
    let new_text = if item.snippet && !snippets { without_places(&item.insert) } else { item.insert };
    CompletionItem {
        label: item.label.clone(),
        kind: Some(match item.kind {
            ItemKind::Block => CompletionItemKind::MODULE,
            ItemKind::Verb => CompletionItemKind::FUNCTION,
            ItemKind::Key => CompletionItemKind::PROPERTY,
            ItemKind::Clause => CompletionItemKind::KEYWORD,
            ItemKind::Goods => CompletionItemKind::CLASS,
            ItemKind::Mix => CompletionItemKind::STRUCT,
            ItemKind::Material => CompletionItemKind::CONSTANT,
            ItemKind::Layout => CompletionItemKind::INTERFACE,
            ItemKind::Zone => CompletionItemKind::ENUM_MEMBER,
            ItemKind::Vessel => CompletionItemKind::VARIABLE,
            ItemKind::Steps => CompletionItemKind::METHOD,
            ItemKind::Unit => CompletionItemKind::UNIT,
            ItemKind::Value => CompletionItemKind::VALUE,
            ItemKind::Rule => CompletionItemKind::EVENT,
            ItemKind::File => CompletionItemKind::FILE,
        }),
        detail: (!item.detail.is_empty()).then_some(item.detail),
        sort_text: Some(format!("{:05}", item.rank)),
        filter_text: Some(item.label.clone()),
        insert_text_format: Some(if snippet { InsertTextFormat::SNIPPET } else { InsertTextFormat::PLAIN_TEXT }),
        text_edit: Some(CompletionTextEdit::Edit(TextEdit { range, new_text })),
        data: Some(serde_json::json!({ "kind": item.kind as u8, "label": item.label })),
        ..CompletionItem::default()
    }
}

/// `${1:60} g/L $0` becomes `60 g/L `.
fn without_places(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('$') {
        out.push_str(before);
        if let Some(inner) = after.strip_prefix('{')
            && let Some((place, behind)) = inner.split_once('}')
        {
            out.push_str(place.split_once(':').map_or("", |(_, words)| words));
            rest = behind;
        } else {
            rest = after.trim_start_matches(|c: char| c.is_ascii_digit());
        }
    }
    out.push_str(rest);
    out
}

/// The kind of proposal behind its number.
pub(super) fn item_kind(number: u64) -> Option<ItemKind> {
    let all = [ItemKind::Block, ItemKind::Verb, ItemKind::Material, ItemKind::Value, ItemKind::Rule];
    all.into_iter().find(|kind| *kind as u64 == number)
}

/// The protocol's kind of an action.
pub(super) fn action_kind(action: &Action) -> CodeActionKind {
    match action.kind {
        ActionKind::Fix => CodeActionKind::QUICKFIX,
        ActionKind::Rewrite => CodeActionKind::REFACTOR_REWRITE,
        ActionKind::FixAll => CodeActionKind::SOURCE_FIX_ALL,
        ActionKind::Source => CodeActionKind::SOURCE,
        ActionKind::Extract => CodeActionKind::REFACTOR_EXTRACT,
    }
}

/// A party of the call hierarchy.
pub(super) fn call_item(view: &View, root: usize, party: &Party) -> Option<CallHierarchyItem> {
    let file = view.snapshot(root)?.file_once(&party.path)?;
    Some(CallHierarchyItem {
        name: party.name.clone(),
        kind: match party.kind {
            PartyKind::Mix => lsp::SymbolKind::STRUCT,
            PartyKind::Steps => lsp::SymbolKind::FUNCTION,
            PartyKind::File => lsp::SymbolKind::FILE,
        },
        tags: None,
        detail: (party.kind != PartyKind::File).then(|| party.path.to_string()),
        uri: view.uri(root, &party.path)?,
        range: convert::range(&file, &party.range, view.encoding),
        selection_range: convert::range(&file, &party.name_range, view.encoding),
        data: None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_to_fill_become_their_words() {
        assert_eq!(without_places("${1:60} g/L   ${2:soda ash}"), "60 g/L   soda ash");
        assert_eq!(without_places("soak     $0"), "soak     ");
        assert_eq!(without_places("plain"), "plain");
    }
}
