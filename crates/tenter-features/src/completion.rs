//! The right word at every place of a line, also of one half typed.

mod keys;
mod line;
mod names;
mod place;
mod units;

use tenter_syntax::{BlockKind, KINDS};

use crate::hover;
use crate::text::Range;
use crate::workspace::Snapshot;

pub(crate) use names::{WATERS, ZONES};
pub use place::Place;

/// What a proposal is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum ItemKind {
    Block,
    Verb,
    Key,
    Clause,
    Goods,
    Mix,
    Material,
    Layout,
    Zone,
    Vessel,
    Steps,
    Unit,
    Value,
    Rule,
    File,
}

/// A proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Completion {
    /// What is replaced.
    pub range: Range,
    /// What is shown.
    pub label: String,
    /// What it is.
    pub kind: ItemKind,
    /// A few words beside it.
    pub detail: String,
    /// What is put in; `${1:…}` marks places to fill when `snippet` is set.
    pub insert: String,
    /// Whether `insert` holds places to fill.
    pub snippet: bool,
    /// Smaller comes first.
    pub rank: u16,
}

impl Completion {
    fn plain(range: &Range, label: impl Into<String>, kind: ItemKind, detail: impl Into<String>, rank: u16) -> Self {
        let label = label.into();
        let insert = label.clone();
        Self { range: range.clone(), label, kind, detail: detail.into(), insert, snippet: false, rank }
    }

    fn snippet(mut self, insert: String) -> Self {
        self.insert = insert;
        self.snippet = true;
        self
    }
}

/// The proposals at an offset, in order of rank.
pub fn complete(snapshot: &Snapshot, path: &str, offset: usize) -> Vec<Completion> {
    let Some(analysis) = snapshot.analyse(path) else { return Vec::new() };
    let offset = analysis.file.clamp(offset);
    let mut found = match Place::at(&analysis.file, offset) {
        Place::Comment => Vec::new(),
        Place::Edge { typed } => edge(&typed),
        Place::Header { kind, typed } => keys::header(snapshot, &analysis, kind, &typed),
        Place::Body(body) => line::complete(&analysis, &body, offset),
    };
    found.sort_by(|a, b| (a.rank, &a.label).cmp(&(b.rank, &b.label)));
    let mut met = std::collections::BTreeSet::new();
    found.retain(|item| met.insert(item.label.clone()));
    found
}

fn edge(typed: &Range) -> Vec<Completion> {
    KINDS
        .iter()
        .enumerate()
        .map(|(rank, row)| {
            let item = Completion::plain(typed, row.name, ItemKind::Block, row.summary, rank as u16);
            match skeleton(row.kind) {
                Some(text) => item.snippet(text.to_owned()),
                None => item,
            }
        })
        .collect()
}

/// What a new block starts out as.
const fn skeleton(kind: BlockKind) -> Option<&'static str> {
    Some(match kind {
        BlockKind::Edition => "edition 1\n",
        BlockKind::Use => "use ${1:everything} from \"${2:house.dye}\"\n",
        BlockKind::Recipe => {
            "recipe ${1:name}\n  by       ${2:who}\n  about    ${3:what it is}\n  room     ${4:22} °C\n"
        }
        BlockKind::Goods => {
            "goods ${1:tees}\n  pieces   ${2:6}\n  weight   ${3:165} g each\n  fibre    100% ${4:cotton}\n  state    scoured, dry\n"
        }
        BlockKind::Dye => "dye ${1:name}\n  class    ${2:reactive dichlorotriazine}\n  colour   #${3:1d5fa6}\n",
        BlockKind::Chemical => "chemical ${1:name}\n  is       ${2:soda ash}\n",
        BlockKind::Mix => "mix ${1:name}\n  ${2:8} L      water at ${3:40} °C\n  ${4:60} g/L   ${5:soda ash}\n",
        BlockKind::Layout => "layout ${1:name}\n  zone ${2:60}% ${3:rim}\n  zone ${4:40}% ${5:heart}\n",
        BlockKind::Vessel => {
            "vessel ${1:name}\n  holds    ${2:5} L\n  material ${3:steel}\n  rated    ${4:100} °C\n  food     never\n"
        }
        BlockKind::Steps => "steps ${1:prepare}\n  $0",
        BlockKind::Variant => "variant ${1:name}\n  $0",
        BlockKind::Log => "log ${1:2026-05-03}\n  made     $0\n",
        BlockKind::Shelf => "shelf\n  ${1:250} g ${2:dye} bought ${3:2026-02-01} at ${4:12} EUR\n",
        BlockKind::Unknown | BlockKind::Loose => return None,
    })
}

/// The words shown beside a chosen proposal, in Markdown.
pub fn documentation(kind: ItemKind, label: &str) -> String {
    let reference = tenter_reference::Reference::bundled();
    match kind {
        ItemKind::Verb => hover::head_words(BlockKind::Steps, label).unwrap_or_default(),
        ItemKind::Rule => hover::rule_words(label).unwrap_or_default(),
        ItemKind::Material | ItemKind::Value => reference.find(label).map(crate::types::page).unwrap_or_default(),
        ItemKind::Block => {
            KINDS.iter().find(|row| row.name == label).map(|row| row.summary.to_owned()).unwrap_or_default()
        }
        _ => String::new(),
    }
}
