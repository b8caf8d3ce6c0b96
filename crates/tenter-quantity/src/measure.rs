//! A unit as written: `g/L`, `4 tsp per cup`, `2 L per 100 g goods`, `24 EUR per 500 g`.

use crate::composed::COMPOSED;
use crate::currency;
use crate::dimension::Dimension;
use crate::interval::Interval;
use crate::quantity::{Basis, Quantity};
use crate::unit::Unit;

/// A piece of a line as the parser hands it over.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Token<'a> {
    /// A word, a stroke inside it or not.
    Word(&'a str),
    /// A number.
    Number(f64),
}

/// Below the stroke.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Denominator<'a> {
    /// How many: 100 in `per 100 g`; 1 where no number stands.
    pub number: f64,
    /// The unit below the stroke; `None` for a word or `parts per 1000`.
    pub unit: Option<&'static Unit>,
    /// The word below the stroke where it is no unit: `tee`.
    pub word: Option<&'a str>,
    /// Whether `goods` follows the unit: `per 100 g goods`.
    pub of_goods: bool,
    /// Whether units of several countries share the spelling below the stroke.
    pub shared_spelling: bool,
}

/// A unit whose spelling several countries share, and that nothing settled.
#[derive(Clone, PartialEq, Debug)]
pub struct Ambiguity {
    /// The shared spellings, above and below the stroke.
    pub spellings: Vec<&'static str>,
    /// The units they may be, likeliest first.
    pub candidates: Vec<&'static Unit>,
    /// Why it matters.
    pub why: &'static str,
}

/// A unit as written: simple or divided, with its factor to SI.
#[derive(Clone, PartialEq, Debug)]
pub struct UnitExpression<'a> {
    /// Above the stroke, or all of it. The likeliest one where the spelling is ambiguous.
    pub numerator: &'static Unit,
    /// Below the stroke.
    pub denominator: Option<Denominator<'a>>,
    /// What it is counted on.
    pub basis: Basis,
    /// `tee` in `g per tee`: the resolver checks that it names goods.
    pub per_word: Option<&'a str>,
    /// How many tokens the unit spans.
    pub words_used: usize,
    /// The kind of the whole.
    pub dimension: Dimension,
    /// To SI. Where nothing says whose cup it is, it spans them all, with the US customary one as best estimate.
    pub factor: Interval,
    /// To SI, after the factor: only an undivided temperature has one.
    pub offset: f64,
    /// Set where the spelling stays ambiguous by more than 2 % in all.
    pub ambiguity: Option<Ambiguity>,
}

impl<'a> UnitExpression<'a> {
    /// A number of these to SI.
    pub fn apply(&self, written: Interval) -> Quantity {
        Quantity { value: written * self.factor + self.offset, dimension: self.dimension, basis: self.basis }
    }

    /// A number of these as a difference: the 2 °C of `± 2 °C`. Anything but a temperature as in [`Self::apply`].
    pub fn apply_difference(&self, written: Interval) -> Quantity {
        if self.dimension == Dimension::Temperature {
            Quantity { value: written * self.factor, dimension: Dimension::TemperatureDifference, basis: self.basis }
        } else {
            self.apply(written)
        }
    }

    /// The unit a figure written so is shown in: the same one where the table has it, else the usual one of its kind.
    pub fn display_unit(&self) -> &'static Unit {
        let Some(denominator) = self.denominator else {
            return self.numerator;
        };
        let below = match (denominator.unit, self.basis) {
            (_, Basis::PerPiece) => "piece",
            (_, Basis::PerLot) => "lot",
            (Some(unit), _) => unit.symbol,
            (None, _) => "",
        };
        let same = COMPOSED.iter().find(|unit| {
            unit.basis == self.basis
                && unit.dimension == self.dimension
                && unit.symbol.split_once('/').is_some_and(|(top, bottom)| {
                    top == self.numerator.symbol && bottom.strip_suffix(" goods").unwrap_or(bottom) == below
                })
        });
        let price = match self.dimension {
            Dimension::MoneyPerMass => currency::price_per_kilogram(self.numerator.symbol),
            Dimension::MoneyPerVolume => currency::price_per_litre(self.numerator.symbol),
            Dimension::Money => Some(self.numerator),
            _ => None,
        };
        let plain = matches!(self.basis, Basis::PerPiece | Basis::PerLot).then_some(self.numerator);
        same.or(price).or(plain).unwrap_or_else(|| self.dimension.usual_unit(self.basis))
    }

    /// The unit as the formatter writes it, in the singular: `g/L`, `L per 100 g goods`.
    pub fn text(&self) -> String {
        let top = self.numerator.symbol;
        let Some(below) = self.denominator else {
            return top.to_owned();
        };
        let goods = if below.of_goods { " goods" } else { "" };
        let under = below.unit.map(|unit| unit.symbol).or(below.word).unwrap_or("");
        if below.number == 1.0 {
            format!("{top}/{under}{goods}")
        } else if under.is_empty() {
            format!("{top} per {}", below.number)
        } else {
            format!("{top} per {} {under}{goods}", below.number)
        }
    }
}
