//! What could not be read, bound or reckoned: plain data, put into words by the rule book.

use std::sync::Arc;

use tenter_quantity::{Dimension, Place};
use tenter_syntax::{BlockKind, Connector, OddityKind};

/// What kind of name was expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum NameKind {
    Material,
    Mix,
    Goods,
    Zone,
    Layout,
    Vessel,
    Steps,
    Fibre,
    DyeClass,
    /// Several kinds would do here.
    Any,
}

/// One trouble and its numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: ProblemKind,
}

/// The troubles.
#[derive(Clone, Debug, PartialEq)]
pub enum ProblemKind {
    /// A name nothing goes by.
    UnknownName {
        /// As written.
        written: Arc<str>,
        /// What would fit here.
        expected: NameKind,
        /// Known names that look like it, nearest first.
        nearest: Vec<Arc<str>>,
    },
    /// Declared twice.
    SameName {
        /// The name.
        name: Arc<str>,
        /// The first declaration.
        first: Place,
    },
    /// A quantity of the wrong dimension.
    WrongDimension {
        /// What was given, as written.
        written: Arc<str>,
        /// Its dimension.
        given: Dimension,
        /// What would do.
        needed: Vec<Dimension>,
        /// What it is for: `the temperature of the room`.
        purpose: &'static str,
        /// A guess at what was meant.
        probably: Option<Arc<str>>,
    },
    /// `cup`, `gal`, `oz` and the like without a country or kind.
    AmbiguousMeasure {
        /// As written.
        spelling: Arc<str>,
        /// What it may be, with the SI value of the amount under each reading.
        readings: Vec<(Arc<str>, f64)>,
        /// What would settle it.
        settle: Arc<str>,
    },
    /// `T`, `c`, `°`.
    DoubtfulUnit {
        /// As written.
        spelling: Arc<str>,
        /// What may be meant.
        meant: Vec<Arc<str>>,
        /// Why it is in doubt.
        why: Arc<str>,
    },
    /// No unit by that name.
    UnknownUnit {
        /// As written.
        written: Arc<str>,
        /// The nearest known one.
        nearest: Option<Arc<str>>,
    },
    /// `g/` or `g per` with nothing behind.
    HalfUnit {
        /// As written.
        written: Arc<str>,
    },
    /// A number where an amount with a unit is needed.
    MissingUnit {
        /// As written.
        written: Arc<str>,
    },
    /// A bare `%` of an ingredient.
    PercentOfWhat {
        /// As written: `5%`.
        written: Arc<str>,
        /// The name behind it.
        of: Arc<str>,
    },
    /// A number in no known form.
    NumberForm {
        /// As written.
        written: Arc<str>,
        /// What may be meant, ready to put in its place.
        suggestions: Vec<Arc<str>>,
        /// Why it cannot be read.
        why: Arc<str>,
    },
    /// A date in no known form.
    DateForm {
        /// As written.
        written: Arc<str>,
        /// What may be meant.
        suggestion: Option<Arc<str>>,
    },
    /// No verb by that name.
    UnknownVerb {
        /// As written.
        written: Arc<str>,
        /// Nearest known.
        nearest: Option<Arc<str>>,
    },
    /// No key by that name in this block.
    UnknownKey {
        /// As written.
        written: Arc<str>,
        /// The block.
        block: BlockKind,
        /// Nearest known.
        nearest: Option<Arc<str>>,
    },
    /// No block by that name.
    UnknownBlock {
        /// As written.
        written: Arc<str>,
        /// Nearest known.
        nearest: Option<Arc<str>>,
    },
    /// A clause the verb cannot take.
    ClauseNotTaken {
        /// The verb.
        verb: &'static str,
        /// The connecting word.
        connector: Connector,
        /// The clause as written.
        written: Arc<str>,
        /// Clauses it takes: connecting words in use.
        takes: Vec<&'static str>,
    },
    /// The same thing said twice on a line: two durations, two temperatures.
    SaidTwice {
        /// What: `duration`.
        what: &'static str,
        /// The first time.
        first: Place,
        /// Ready-made range when the two read as one (`10 min to 20 min`).
        range: Option<Arc<str>>,
    },
    /// Something that has no reading.
    Unreadable {
        /// As written.
        written: Arc<str>,
    },
    /// A key without a value, a step without what it needs.
    MissingValue {
        /// What is missing: `the weight of a piece`.
        what: Arc<str>,
        /// An example of it.
        example: Arc<str>,
    },
    /// Steps but no goods.
    MissingGoods,
    /// A quantity stands behind its name: `soda ash 250 g`.
    AmountBehindName {
        /// The line the right way round.
        suggestion: Arc<str>,
    },
    /// `weight 990 g` of several pieces: each or in all?
    WeightOfWhat {
        /// As written.
        written: Arc<str>,
        /// Pieces.
        pieces: f64,
    },
    /// Shares that do not sum to 100 %.
    Shares {
        /// Of what: `the fibres of tees`.
        of: Arc<str>,
        /// Their sum, 1 = 100 %.
        sum: f64,
    },
    /// `12 pieces in 3 lots of 5`.
    LotsDoNotAdd {
        /// Pieces.
        pieces: f64,
        /// Lots.
        lots: u32,
        /// In each.
        each: u32,
    },
    /// An amount relative to goods where it is in doubt which.
    WhichGoods {
        /// The goods there are.
        choices: Vec<Arc<str>>,
    },
    /// A `use` line that cannot be followed.
    BrokenUse {
        /// Why.
        why: Arc<str>,
    },
    /// An edition this tool does not know.
    UnknownEdition {
        /// As written.
        written: Arc<str>,
    },
    /// A variant's line that replaces nothing, or could replace several.
    VariantMatch {
        /// How many lines it could stand for.
        candidates: usize,
    },
    /// A name that is also a verb or a unit.
    AwkwardName {
        /// The name.
        name: Arc<str>,
        /// What it is besides.
        also: &'static str,
    },
    /// A mix that is part of itself.
    CircularMix {
        /// The mix.
        name: Arc<str>,
    },
    /// Something the reader noticed in the text itself.
    Oddity(OddityKind),
}
