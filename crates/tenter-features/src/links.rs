//! Links: the files of `use` lines, addresses in prose.

use std::sync::Arc;

use tenter_resolve::inside_collection;
use tenter_resolve::usage::read_use;
use tenter_syntax::BlockKind;

use crate::file::File;
use crate::text::Range;
use crate::workspace::Snapshot;

/// A stretch of text that leads somewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// Where it stands.
    pub range: Range,
    /// Where it leads.
    pub target: Target,
}

/// Where a link leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Target {
    /// A file of the collection.
    File(Arc<str>),
    /// An address.
    Web(String),
}

/// The links of a file.
pub fn links(snapshot: &Snapshot, file: &File) -> Vec<Link> {
    let mut links = Vec::new();
    for (position, placed) in file.document.blocks.iter().enumerate() {
        let block = &placed.block;
        if block.kind == BlockKind::Use
            && let Ok(request) = read_use(block.slice(block.name), block.name.start)
            && let Ok(target) = inside_collection(&file.path, request.path.0)
            && snapshot.has(&target)
        {
            let whole = file.range(position, request.path.1);
            links.push(Link { range: whole.start + 1..whole.end - 1, target: Target::File(target.into()) });
        }
    }
    for start in addresses(&file.text) {
        let rest = file.slice(start..file.text.len());
        let end = rest.find(|c: char| c.is_whitespace() || matches!(c, '"' | '<' | '>' | '`')).unwrap_or(rest.len());
        let address = rest.get(..end).unwrap_or("").trim_end_matches(['.', ',', ';', ':', ')', '!', '?']);
        if address.len() > "https://".len() {
            links.push(Link { range: start..start + address.len(), target: Target::Web(address.to_owned()) });
        }
    }
    links.sort_by_key(|link| link.range.start);
    links
}

fn addresses(text: &str) -> impl Iterator<Item = usize> {
    text.match_indices("http").map(|(at, _)| at).filter(|at| {
        let rest = text.get(*at..).unwrap_or("");
        rest.starts_with("https://") || rest.starts_with("http://")
    })
}
