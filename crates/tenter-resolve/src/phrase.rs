//! The phrases of a line: quantities with the name behind them, names, and words that say how.

use tenter_quantity::{Interval, Quantity, Unit};
use tenter_syntax::{Connector, Span};

use crate::names::Referent;

/// A phrase and the connecting word that opened its clause.
#[derive(Clone, Debug)]
pub(crate) struct Phrase {
    /// `None` before the first connecting word.
    pub connector: Option<(Connector, Span)>,
    /// Number of the clause on the line, 0 for what stands before the first connecting word.
    pub clause: usize,
    /// All of the phrase, in its block.
    pub span: Span,
    /// What it is.
    pub kind: PhraseKind,
}

#[derive(Clone, Debug)]
pub(crate) enum PhraseKind {
    /// An amount with a unit, and what it is an amount of.
    Measured(Measured, Option<NameUse>),
    /// A number without a unit, and the name behind it if any.
    Bare(Interval, Span, Option<NameUse>),
    /// `3 times`, `3 parts`, `3 lots`, `6 pieces`, `6 tees`.
    Count(Counted, Interval, Span),
    /// A name, or words no name matches.
    Name(NameUse),
    /// A word that says how.
    Manner(Manner),
    /// `1:20`, `14:30`: as written on either side.
    Pair(f64, f64),
    /// `2026-05-03`.
    Date,
    /// `#1d5fa6`.
    Colour([u8; 3]),
    /// `until …`, `because …`.
    Text,
    /// A number or unit that could not be read; the problem is already told.
    Broken(Option<NameUse>),
    /// A connecting word with nothing behind it.
    Empty,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Counted {
    Times,
    Lots,
    Pieces,
}

/// A quantity as read.
#[derive(Clone, Debug)]
pub(crate) struct Measured {
    /// SI value, dimension and basis.
    pub quantity: Quantity,
    /// The unit to show it in.
    pub unit: &'static Unit,
    /// Number and unit.
    pub span: Span,
    /// `bare %`.
    pub pickup: bool,
    /// The goods named in `g/tee`.
    pub per_goods: Option<Vec<Referent>>,
}

/// Words standing where a name may stand.
#[derive(Clone, Debug)]
pub(crate) struct NameUse {
    /// Where.
    pub span: Span,
    /// What they may mean; empty when no name matches.
    pub referents: Vec<Referent>,
}

impl NameUse {
    /// The first meaning that `pick` takes.
    pub(crate) fn find<T>(&self, pick: impl Fn(&Referent) -> Option<T>) -> Option<T> {
        self.referents.iter().find_map(pick)
    }
}

/// Words that say how.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Manner {
    Covered,
    Uncovered,
    Apart,
    Each,
    InAll,
    Overnight,
    Fixed,
    Once,
    Twice,
    /// Says nothing that is reckoned with: gently, evenly, well.
    Neutral,
}

/// Words of manner, one row each, folded.
const MANNERS: [(&str, Manner); 42] = [
    ("covered", Manner::Covered),
    ("wrapped", Manner::Covered),
    ("lidded", Manner::Covered),
    ("uncovered", Manner::Uncovered),
    ("open", Manner::Uncovered),
    ("apart", Manner::Apart),
    ("each", Manner::Each),
    ("apiece", Manner::Each),
    ("overnight", Manner::Overnight),
    ("fixed", Manner::Fixed),
    ("once", Manner::Once),
    ("twice", Manner::Twice),
    ("together", Manner::InAll),
    ("altogether", Manner::InAll),
    ("total", Manner::InAll),
    ("gently", Manner::Neutral),
    ("evenly", Manner::Neutral),
    ("well", Manner::Neutral),
    ("slowly", Manner::Neutral),
    ("quickly", Manner::Neutral),
    ("thoroughly", Manner::Neutral),
    ("lightly", Manner::Neutral),
    ("loosely", Manner::Neutral),
    ("tightly", Manner::Neutral),
    ("flat", Manner::Neutral),
    ("damp", Manner::Neutral),
    ("dry", Manner::Neutral),
    ("wet", Manner::Neutral),
    ("again", Manner::Neutral),
    ("only", Manner::Neutral),
    ("off", Manner::Neutral),
    ("out", Manner::Neutral),
    ("up", Manner::Neutral),
    ("down", Manner::Neutral),
    ("away", Manner::Neutral),
    ("constantly", Manner::Neutral),
    ("often", Manner::Neutral),
    ("still", Manner::Neutral),
    ("powder", Manner::Neutral),
    ("crystals", Manner::Neutral),
    ("more", Manner::Neutral),
    ("longer", Manner::Neutral),
];

/// The manner a word says, if it is one.
pub(crate) fn manner(word: &str) -> Option<Manner> {
    MANNERS.iter().find(|(known, _)| word.eq_ignore_ascii_case(known)).map(|(_, manner)| *manner)
}

/// Articles and the like, dropped in front of a name unless the name has them.
pub(crate) fn is_article(word: &str) -> bool {
    ["the", "a", "an", "all", "its", "some"].iter().any(|article| word.eq_ignore_ascii_case(article))
}
