//! Finding the unit that words mean.

use crate::composed::COMPOSED;
use crate::currency;
use crate::distance::edits;
use crate::index::{Found, find};
use crate::table::{self, DoubtfulSpelling};
use crate::unit::{System, Unit};

/// What words turned out to mean.
#[derive(Clone, PartialEq, Debug)]
pub enum Lookup {
    /// One unit. A US and a metric teaspoon are 1.4 % apart and count as one; where nobody said whose, the factor
    /// that [`crate::read_unit`] gives spans both.
    Unit(&'static Unit),
    /// Several units share the spelling and differ: a cup without a country.
    Ambiguous {
        /// The shared spelling.
        spelling: &'static str,
        /// The units it may be, the likeliest first.
        candidates: Vec<&'static Unit>,
        /// Why it matters.
        why: &'static str,
    },
    /// A spelling that people read differently: `T`, `c`, `°`, `in`.
    Doubtful {
        /// The doubtful spelling.
        spelling: &'static str,
        /// What it may mean.
        meant: Vec<&'static Unit>,
        /// Why it is doubtful.
        why: &'static str,
    },
}

/// The longest unit at the front of `words` and how many words it takes (one to three).
///
/// Case is ignored except where it tells units apart (`M` and `m`) and where the spelling is doubtful (`T`, `t`,
/// `c`). Stops are ignored (`tsp.`). `measures` picks among units that share a spelling. A currency is found by its
/// code in capitals, after every unit: `CUP` is a cup (see [`crate::lookup_currency`] where a price is expected).
pub fn lookup_unit(words: &[&str], measures: Option<System>) -> Option<(Lookup, usize)> {
    let (found, spelling, used) = find(words)?;
    let lookup = match found {
        Found::Currency(unit) => Lookup::Unit(unit),
        Found::Doubtful(doubt) => {
            Lookup::Doubtful { spelling: doubt.spelling, meant: meant_units(doubt), why: doubt.why }
        }
        Found::Units(group) => {
            let chosen = group.of(measures);
            if chosen.alike() {
                Lookup::Unit(chosen.first()?)
            } else {
                Lookup::Ambiguous { spelling, candidates: chosen.iter().collect(), why: WHOSE }
            }
        }
    };
    Some((lookup, used))
}

/// Why a shared spelling matters.
pub(crate) const WHOSE: &str =
    "US, metric and imperial measures of this name differ; a `measures` line in the recipe says whose";

pub(crate) fn meant_units(doubt: &DoubtfulSpelling) -> Vec<&'static Unit> {
    doubt.meant.iter().filter_map(|symbol| unit_by_symbol(symbol)).collect()
}

/// Every unit the whole of `words` may mean, whatever the country.
pub fn candidates(words: &[&str]) -> Vec<&'static Unit> {
    match find(words) {
        Some((Found::Units(group), _, used)) if used == words.len() => group.iter().collect(),
        Some((Found::Currency(unit), _, used)) if used == words.len() => vec![unit],
        _ => Vec::new(),
    }
}

/// The spelling the formatter writes for the unit at the front of `words`, in the singular or plural that goes with
/// `number`, and the words it takes. A spelling without a country stays without one; doubtful ones are left alone.
pub fn canonical_spelling(words: &[&str], number: f64) -> Option<(&'static str, usize)> {
    let (found, _, used) = find(words)?;
    let spelling = match found {
        Found::Doubtful(_) => return None,
        Found::Currency(unit) => unit.symbol,
        Found::Units(group) => {
            let unit = group.first()?;
            if group.len() == 1 {
                unit.symbol_for(number)
            } else if unit.plural == unit.symbol || number == 1.0 {
                unit.spellings.first()?
            } else {
                // The table keeps the plural second where a shared spelling has one.
                unit.spellings.get(1)?
            }
        }
    };
    Some((spelling, used))
}

/// The unit of this symbol, exactly, divided units and currencies among them.
pub fn unit_by_symbol(symbol: &str) -> Option<&'static Unit> {
    table::all().chain(COMPOSED).find(|unit| unit.symbol == symbol).or_else(|| currency::by_symbol(symbol))
}

/// The unit whose spelling is nearest to `word`, for "did you mean". `None` for words too short to judge (under three
/// letters) and where nothing is near: one slip up to five letters, two above.
pub fn nearest_unit(word: &str) -> Option<&'static Unit> {
    let letters = word.chars().count();
    if !(3..=20).contains(&letters) {
        return None;
    }
    let limit = if letters <= 5 { 1 } else { 2 };
    table::all()
        .flat_map(|unit| unit.spellings.iter().map(move |spelling| (unit, spelling)))
        .filter(|(_, spelling)| spelling.chars().count() >= 3)
        .filter_map(|(unit, spelling)| Some((edits(word, spelling, limit)?, unit)))
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, unit)| unit)
}
