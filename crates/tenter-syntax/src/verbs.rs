//! The verbs of the trade: words that open a step.

use crate::tree::Connector;

/// One verb.
#[derive(Clone, Copy, Debug)]
pub struct Verb {
    /// Canonical spelling, one or two words.
    pub name: &'static str,
    /// Other words that mean the same.
    pub synonyms: &'static [&'static str],
    /// What it does, in a line.
    pub summary: &'static str,
    /// What may follow it.
    pub takes: &'static [ClauseUse],
}

/// One thing a verb takes.
#[derive(Clone, Copy, Debug)]
pub struct ClauseUse {
    /// The connecting word; none for what stands right after the verb.
    pub connector: Option<Connector>,
    /// What is expected there.
    pub what: Expect,
    /// Those words in a step.
    pub example: &'static str,
}

/// What a place in a step expects.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Expect {
    /// Goods by name.
    Goods,
    /// A zone of the goods.
    Zone,
    /// A mix, water, or an amount of either.
    Liquor,
    /// A vessel, rack or tray.
    Vessel,
    /// An amount of a material or mix.
    Material,
    /// Things to wear.
    Equipment,
    /// A layout by name.
    Layout,
    /// A time.
    Duration,
    /// A temperature.
    Temperature,
    /// Liquor held, as a share of the dry weight.
    Pickup,
    /// A number of equal parts, and the time between them.
    Portions,
    /// A group of steps by name.
    Steps,
    /// A lot, or each of them.
    Lot,
    /// A covering.
    Cover,
    /// A rule's name.
    Rule,
    /// Words.
    Text,
}

const fn verb(
    name: &'static str,
    synonyms: &'static [&'static str],
    summary: &'static str,
    takes: &'static [ClauseUse],
) -> Verb {
    Verb { name, synonyms, summary, takes }
}

const fn direct(what: Expect, example: &'static str) -> ClauseUse {
    ClauseUse { connector: None, what, example }
}

const fn with(connector: Connector, what: Expect, example: &'static str) -> ClauseUse {
    ClauseUse { connector: Some(connector), what, example }
}

mod applying;
mod liquor;
mod preparing;
mod record;
mod shaping;
mod time;

const GROUPS: [&[Verb]; 6] = [preparing::ROWS, shaping::ROWS, applying::ROWS, liquor::ROWS, time::ROWS, record::ROWS];

/// All verbs, by the kind of work.
pub fn verbs() -> impl Iterator<Item = &'static Verb> {
    GROUPS.iter().flat_map(|rows| rows.iter())
}

/// The verb of a canonical name.
pub fn verb_row(name: &str) -> Option<&'static Verb> {
    verbs().find(|verb| verb.name == name)
}
