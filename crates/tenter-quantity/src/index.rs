//! Every spelling of the table, sorted once, and the units that words at the front of a line can mean.

use std::sync::OnceLock;

use crate::currency;
use crate::fold::Folded;
use crate::table::{self, CASE_MATTERS, DOUBTFUL, DoubtfulSpelling};
use crate::unit::{System, Unit};

/// Words a unit may take: `imperial fl oz`, `mg/L as CaCO3`.
const LONGEST_IN_WORDS: usize = 3;

/// Units that share a spelling and differ by less than this are one and the same to a dyer: a level spoon is not
/// read to 2 %.
const ALIKE: f64 = 0.02;

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
        Self { units: [Some(unit), None, None, None] }
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

    pub(crate) fn len(&self) -> usize {
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

    pub(crate) fn alike(&self) -> bool {
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
        entries.sort_by(|a, b| a.lower.as_bytes().cmp(b.lower.as_bytes()));
        entries
    })
}

fn matches(words: Folded) -> Option<(Group, &'static str)> {
    let lower = words.lower();
    let entries = index();
    let start = entries.partition_point(|entry| entry.lower.as_bytes() < lower.as_bytes());
    let run = || {
        entries.get(start..).unwrap_or_default().iter().take_while(|entry| entry.lower.as_bytes() == lower.as_bytes())
    };
    let exactly = run().any(|entry| entry.exact.as_bytes() == words.as_bytes());
    let mut group = Group { units: [None; 4] };
    let mut spelling = None;
    for entry in run() {
        let same_case = entry.exact.as_bytes() == words.as_bytes();
        let fits = if exactly { same_case } else { !entry.case_matters };
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
