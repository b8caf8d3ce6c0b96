//! What a file declares, kept for every file of the collection; the tree itself is kept only for those in use.

use std::sync::Arc;

use tenter_resolve::inside_collection;
use tenter_resolve::usage::read_use;
use tenter_syntax::{BlockKind, Document, fold_name, lookup_kind};

use crate::text::Range;

/// A file in brief.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The named blocks, in order.
    pub blocks: Vec<Entry>,
    /// The files its `use` lines name, as paths inside the collection.
    pub uses: Vec<Arc<str>>,
}

/// A named block.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its kind.
    pub kind: BlockKind,
    /// Its name as written.
    pub name: Box<str>,
    /// Where the name stands.
    pub at: Range,
}

impl Outline {
    /// Reads it off a document.
    pub fn of(document: &Document, path: &str) -> Self {
        let mut outline = Self::default();
        for placed in &document.blocks {
            let block = &placed.block;
            let name = block.slice(block.name);
            match block.kind {
                BlockKind::Use => {
                    let target = read_use(name, block.name.start)
                        .ok()
                        .and_then(|request| inside_collection(path, request.path.0).ok());
                    outline.uses.extend(target.map(Arc::from));
                }
                BlockKind::Edition | BlockKind::Unknown | BlockKind::Loose => {}
                _ if name.is_empty() => {}
                kind => outline.blocks.push(Entry {
                    kind,
                    name: name.into(),
                    at: placed.start + block.name.start as usize..placed.start + block.name.end as usize,
                }),
            }
        }
        outline
    }

    /// Reads it off a text without reading the bodies: for files that are only listed.
    pub fn scan(text: &str, path: &str) -> Self {
        let mut outline = Self::default();
        let mut at = 0;
        for row in text.split_inclusive(['\n', '\r']) {
            let start = at;
            at += row.len();
            // Bodies are indented; a comment opens nothing.
            if row.starts_with(|c: char| c.is_whitespace() || c == '#') {
                continue;
            }
            let word = row.split(char::is_whitespace).next().unwrap_or("");
            let Some(kind) = lookup_kind(word.trim_start_matches('\u{feff}')).map(|kind| kind.kind) else { continue };
            let rest = row.get(word.len()..).unwrap_or("");
            let rest = rest.find(" #").map_or(rest, |comment| rest.get(..comment).unwrap_or(rest));
            let name = rest.trim();
            let from = start + word.len() + (rest.len() - rest.trim_start().len());
            match kind {
                BlockKind::Use => {
                    let target =
                        read_use(name, 0).ok().and_then(|request| inside_collection(path, request.path.0).ok());
                    outline.uses.extend(target.map(Arc::from));
                }
                BlockKind::Edition => {}
                _ if name.is_empty() => {}
                kind => outline.blocks.push(Entry { kind, name: name.into(), at: from..from + name.len() }),
            }
        }
        outline
    }

    /// Whether one of its names, folded, holds the folded words.
    pub fn named<'a>(&'a self, wanted: &'a str) -> impl Iterator<Item = &'a Entry> {
        let wanted = fold_name(wanted);
        self.blocks.iter().filter(move |entry| fold_name(&entry.name).contains(&wanted))
    }
}
