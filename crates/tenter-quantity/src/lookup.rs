//! Finding the unit that words mean.

use std::sync::OnceLock;

use crate::composed::COMPOSED;
use crate::currency;
use crate::distance::edits;
use crate::fold::Folded;
use crate::table::{self, CASE_MATTERS, DOUBTFUL, DoubtfulSpelling};
use crate::unit::{System, Unit};

/// Words a unit may take: `imperial fl oz`, `mg/L as CaCO3`.
const LONGEST_IN_WORDS: usize = 3;

/// Units that share a spelling and differ by less than this are one and the same to a dyer: a level spoon is not
/// read to 2 %.
const ALIKE: f64 = 0.02;

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

/// Every unit that words at the front can mean, before `measures` is asked.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Found {
    /// These units, by position in the index.
    Units(Group),
    /// A currency.
    Currency(&'static Unit),
    /// Nobody should guess.
    Doubtful(&'static DoubtfulSpelling),
}

/// Up to four units that share one spelling.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Group {
    units: [Option<&'static Unit>; 4],
}

impl Group {
    pub(crate) fn one(unit: &'static Unit) -> Self {
        Self {
            units: [Some(unit), None, None, None],
        }
    }

    /// The unit and all that share its first spelling.
    pub(crate) fn sharing(unit: &'static Unit) -> Self {
        let shared = unit
            .spellings
            .first()
            .and_then(|spelling| spelling.split(' ').try_fold(Folded::EMPTY, Folded::with))
            .and_then(matches);
        match shared {
            Some((group, _)) if group.iter().any(|other| other == unit) => group,
            _ => Self::one(unit),
        }
    }

    fn push(&mut self, unit: &'static Unit) {
        if let Some(free) = self.units.iter_mut().find(|slot| slot.is_none()) {
            *free = Some(unit);
        }
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = &'static Unit> + '_ {
        self.units.iter().flatten().copied()
    }

    pub(crate) fn first(&self) -> Option<&'static Unit> {
        self.iter().next()
    }

    fn len(&self) -> usize {
        self.iter().count()
    }

    /// Those of the country whose measures are used; all of them where it has none of this spelling.
    pub(crate) fn of(self, measures: Option<System>) -> Self {
        if self.len() < 2 {
            return self;
        }
        for &system in measures.map_or(&[][..], System::preference) {
            let mut chosen = Self { units: [None; 4] };
            for unit in self.iter().filter(|unit| unit.system == system) {
                chosen.push(unit);
            }
            if chosen.len() > 0 {
                return chosen;
            }
        }
        self
    }

    fn alike(&self) -> bool {
        let factors = || self.iter().map(|unit| unit.factor);
        let least = factors().fold(f64::INFINITY, f64::min);
        let most = factors().fold(0.0, f64::max);
        most <= least * (1.0 + ALIKE)
    }
}

struct Entry {
    lower: Folded,
    exact: Folded,
    case_matters: bool,
    spelling: &'static str,
    unit: &'static Unit,
}

/// Every spelling, sorted without regard to case; units of one spelling in the order of the table.
fn index() -> &'static [Entry] {
    static INDEX: OnceLock<Vec<Entry>> = OnceLock::new();
    INDEX.get_or_init(|| {
        let mut entries: Vec<Entry> = table::all()
            .flat_map(|unit| unit.spellings.iter().map(move |&spelling| (unit, spelling)))
            .filter_map(|(unit, spelling)| {
                let exact = spelling.split(' ').try_fold(Folded::EMPTY, Folded::with)?;
                Some(Entry {
                    lower: exact.lower(),
                    exact,
                    case_matters: CASE_MATTERS.contains(&spelling),
                    spelling,
                    unit,
                })
            })
            .collect();
        entries.sort_by(|a, b| a.lower.as_str().cmp(b.lower.as_str()));
        entries
    })
}

fn matches(words: Folded) -> Option<(Group, &'static str)> {
    let lower = words.lower();
    let entries = index();
    let start = entries.partition_point(|entry| entry.lower.as_str() < lower.as_str());
    let run = || {
        entries
            .get(start..)
            .unwrap_or_default()
            .iter()
            .take_while(|entry| entry.lower.as_str() == lower.as_str())
    };
    let exactly = run().any(|entry| entry.exact.as_str() == words.as_str());
    let mut group = Group { units: [None; 4] };
    let mut spelling = None;
    for entry in run() {
        let same_case = entry.exact.as_str() == words.as_str();
        let fits = if exactly {
            same_case
        } else {
            !entry.case_matters
        };
        if fits && !group.iter().any(|unit| unit == entry.unit) {
            group.push(entry.unit);
            spelling.get_or_insert(entry.spelling);
        }
    }
    Some((group, spelling?))
}

/// The longest unit at the front of `words`, before `measures` is asked: what it may be, its spelling, words used.
pub(crate) fn find(words: &[&str]) -> Option<(Found, &'static str, usize)> {
    let mut joined = [None; LONGEST_IN_WORDS];
    let mut so_far = Folded::EMPTY;
    for (slot, word) in joined.iter_mut().zip(words) {
        let Some(longer) = so_far.with(word) else {
            break;
        };
        so_far = longer;
        *slot = Some(longer);
    }
    for (position, spelling) in joined.iter().enumerate().rev() {
        let Some(folded) = *spelling else { continue };
        if position == 0
            && let Some(doubt) = DOUBTFUL.iter().find(|d| d.spelling == folded.as_str())
        {
            return Some((Found::Doubtful(doubt), doubt.spelling, 1));
        }
        if let Some((group, spelling)) = matches(folded) {
            return Some((Found::Units(group), spelling, position + 1));
        }
    }
    let money = currency::lookup_currency(words.first()?)?;
    Some((Found::Currency(money), money.symbol, 1))
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
        Found::Doubtful(doubt) => Lookup::Doubtful {
            spelling: doubt.spelling,
            meant: meant_units(doubt),
            why: doubt.why,
        },
        Found::Units(group) => {
            let chosen = group.of(measures);
            if chosen.alike() {
                Lookup::Unit(chosen.first()?)
            } else {
                Lookup::Ambiguous {
                    spelling,
                    candidates: chosen.iter().collect(),
                    why: WHOSE,
                }
            }
        }
    };
    Some((lookup, used))
}

/// Why a shared spelling matters.
pub(crate) const WHOSE: &str = "US, metric and imperial measures of this name differ; a `measures` line in the recipe says whose";

pub(crate) fn meant_units(doubt: &DoubtfulSpelling) -> Vec<&'static Unit> {
    doubt
        .meant
        .iter()
        .filter_map(|symbol| unit_by_symbol(symbol))
        .collect()
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
    table::all()
        .chain(COMPOSED)
        .find(|unit| unit.symbol == symbol)
        .or_else(|| currency::by_symbol(symbol))
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
