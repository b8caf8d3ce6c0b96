//! What a unit is: its spellings, its kind, its factor to SI and where the factor comes from.

use crate::dimension::Dimension;
use crate::interval::Interval;
use crate::quantity::Basis;

/// Whose measures a unit belongs to; `measures US` in a recipe picks among units that share a spelling.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, serde::Serialize)]
pub enum System {
    /// The same everywhere.
    Any,
    /// Metric kitchen measures: 5, 15 and 250 mL.
    Metric,
    /// United States customary measures.
    Us,
    /// British imperial measures.
    Imperial,
    /// Australian measures: metric, with a tablespoon of 20 mL.
    Australian,
}

impl System {
    /// Reads the value of a `measures` line, in any case.
    pub fn parse(word: &str) -> Option<Self> {
        const NAMES: &[(&str, System)] = &[
            ("us", System::Us),
            ("u.s.", System::Us),
            ("usa", System::Us),
            ("american", System::Us),
            ("metric", System::Metric),
            ("imperial", System::Imperial),
            ("uk", System::Imperial),
            ("british", System::Imperial),
            ("australian", System::Australian),
            ("australia", System::Australian),
        ];
        NAMES.iter().find(|(name, _)| word.eq_ignore_ascii_case(name)).map(|&(_, system)| system)
    }

    /// As written after `measures`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Any => "any",
            Self::Metric => "metric",
            Self::Us => "US",
            Self::Imperial => "imperial",
            Self::Australian => "Australian",
        }
    }

    /// In whose units a shared spelling is looked for, first to last: British and Australian cooks use metric spoons
    /// where their own table has none.
    pub(crate) const fn preference(self) -> &'static [System] {
        match self {
            Self::Any => &[],
            Self::Metric => &[Self::Metric],
            Self::Us => &[Self::Us],
            Self::Imperial => &[Self::Imperial, Self::Metric],
            Self::Australian => &[Self::Australian, Self::Metric, Self::Imperial],
        }
    }
}

/// One unit. `SI value = written × factor + offset`.
#[derive(Debug)]
pub struct Unit {
    /// The spelling the formatter writes, for one.
    pub symbol: &'static str,
    /// The spelling the formatter writes for any other number.
    pub plural: &'static str,
    /// Its name in full.
    pub name: &'static str,
    /// Every spelling it is read from (see [`crate::fold`] for what is ignored), the symbol among them.
    pub spellings: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    /// To SI.
    pub factor: f64,
    /// To SI, after the factor: only temperatures have one.
    pub offset: f64,
    /// Half-width of the factor as a share of it: zero for a defined unit, more for a drop.
    pub spread: f64,
    /// Whose measure it is.
    pub system: System,
    /// What it is counted on: `% owg` on the goods, `g/piece` on one piece.
    pub basis: Basis,
    /// Where the factor comes from.
    pub source: &'static str,
}

/// Symbols are unique (a test holds it), so they say which unit it is.
impl PartialEq for Unit {
    fn eq(&self, other: &Self) -> bool {
        self.symbol == other.symbol
    }
}

impl Eq for Unit {}

impl Unit {
    /// The factor with its spread.
    pub fn factor_interval(&self) -> Interval {
        Interval::plus_minus(self.factor, self.factor * self.spread)
    }

    /// A number of these to SI.
    pub fn to_si(&self, written: Interval) -> Interval {
        if self.spread == 0.0 {
            written * self.factor + self.offset
        } else {
            written * self.factor_interval() + self.offset
        }
    }

    /// An SI value to a number of these.
    pub fn from_si(&self, value: Interval) -> Interval {
        (value - self.offset) / self.factor
    }

    /// The symbol that goes with this number: `1 cup`, `2 cups`.
    pub fn symbol_for(&self, number: f64) -> &'static str {
        if number == 1.0 { self.symbol } else { self.plural }
    }
}
