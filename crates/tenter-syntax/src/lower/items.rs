//! Items and clauses from the grammar's pairs.

use pest::iterators::Pair;

use crate::grammar::Rule;
use crate::lower::number::number;
use crate::prepare::offset;
use crate::tree::{Clause, Connector, Item, Span};

/// The span of a pair in its block.
pub(super) fn span_of(pair: &Pair<'_, Rule>, base: usize) -> Span {
    let span = pair.as_span();
    Span::new(offset(base + span.start()), offset(base + span.end()))
}

/// Reads an item; `None` for pairs that are none.
pub(super) fn item(pair: Pair<'_, Rule>, base: usize) -> Option<Item> {
    let span = span_of(&pair, base);
    Some(match pair.as_rule() {
        Rule::number | Rule::start_number => Item::Number(number(pair, base)),
        Rule::words | Rule::condition | Rule::reason => Item::Words(span),
        Rule::quoted => Item::Quoted(span),
        Rule::colour => Item::Colour(span),
        Rule::aside => Item::Aside(span),
        Rule::comma => Item::Comma(span),
        Rule::odd => Item::Odd(span),
        _ => return None,
    })
}

/// Reads a clause; `None` if its connecting word is missing, which the grammar excludes.
pub(super) fn clause(pair: Pair<'_, Rule>, base: usize) -> Option<Clause> {
    let mut parts = pair.into_inner();
    let opener = parts.next()?;
    let word = span_of(&opener, base);
    let connector = connector(opener.as_str())?;
    let items: Vec<Item> = parts.filter_map(|part| item(part, base)).collect();
    let span = items.last().map_or(word, |last| word.cover(last.span()));
    Some(Clause { connector, word, items, span })
}

/// The connecting words, as written and as a kind.
const CONNECTORS: [(&str, Connector); 22] = [
    ("in", Connector::In),
    ("into", Connector::Into),
    ("with", Connector::With),
    ("without", Connector::Without),
    ("at", Connector::At),
    ("for", Connector::For),
    ("from", Connector::From),
    ("to", Connector::To),
    ("on", Connector::On),
    ("onto", Connector::Onto),
    ("over", Connector::Over),
    ("under", Connector::Under),
    ("until", Connector::Until),
    ("as", Connector::As),
    ("every", Connector::Every),
    ("through", Connector::Through),
    ("by", Connector::By),
    ("before", Connector::Before),
    ("after", Connector::After),
    ("bought", Connector::Bought),
    ("because", Connector::Because),
    ("and", Connector::And),
];

/// The connecting word a text is, without regard to case.
pub(crate) fn connector(word: &str) -> Option<Connector> {
    CONNECTORS.iter().find(|(name, _)| name.eq_ignore_ascii_case(word)).map(|(_, connector)| *connector)
}

impl Connector {
    /// All of them.
    pub fn all() -> impl Iterator<Item = Self> {
        CONNECTORS.iter().map(|(_, connector)| *connector)
    }

    /// The word.
    pub fn word(self) -> &'static str {
        CONNECTORS.iter().find(|(_, connector)| *connector == self).map_or("", |(name, _)| name)
    }

    /// The connecting word `text` is, without regard to case.
    pub fn from_word(text: &str) -> Option<Self> {
        connector(text)
    }
}
