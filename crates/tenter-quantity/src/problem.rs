//! What can be wrong with a written unit.

use std::fmt;

use crate::unit::Unit;

/// What is wrong with a written unit, and how many words it spans.
#[derive(Clone, PartialEq, Debug)]
pub enum UnitProblem {
    /// `g/`, `g per`: what of, is still to be written.
    HalfUnit {
        /// The unit before the stroke.
        numerator: &'static Unit,
        /// Words taken.
        words_used: usize,
    },
    /// A spelling that two people would read differently, such as `T`.
    Doubtful {
        /// As written.
        spelling: String,
        /// What it may be.
        meant: Vec<&'static Unit>,
        /// Why it is doubtful.
        why: &'static str,
        /// Words taken.
        words_used: usize,
    },
    /// A quotient that makes no sense, such as `min/L`.
    Combination {
        /// Above the stroke.
        numerator: &'static Unit,
        /// Below the stroke.
        denominator: &'static Unit,
        /// Words taken.
        words_used: usize,
    },
    /// A number below the stroke and no unit that is known: `g per 100 xy`.
    NumberWithoutUnit {
        /// Above the stroke.
        numerator: &'static Unit,
        /// The number.
        number: f64,
        /// Words taken.
        words_used: usize,
    },
    /// Per nothing, or less: `g per 0 L`.
    PerZero {
        /// Words taken.
        words_used: usize,
    },
    /// Divided twice: `g/L/min`.
    TwoDivisions {
        /// As written.
        spelling: String,
        /// Words taken.
        words_used: usize,
    },
}

impl UnitProblem {
    /// How many words the faulty unit spans, from the first one given.
    pub const fn words_used(&self) -> usize {
        match self {
            Self::HalfUnit { words_used, .. }
            | Self::Doubtful { words_used, .. }
            | Self::Combination { words_used, .. }
            | Self::NumberWithoutUnit { words_used, .. }
            | Self::PerZero { words_used }
            | Self::TwoDivisions { words_used, .. } => *words_used,
        }
    }
}

impl fmt::Display for UnitProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::HalfUnit { numerator, .. } => {
                write!(f, "`{}` per what? Write `{0}/L`, `{0}/piece` or `{0} per 100 g goods`", numerator.symbol)
            }
            Self::Doubtful { spelling, meant, why, .. } => {
                write!(f, "`{spelling}` is doubtful: {why}")?;
                for (position, unit) in meant.iter().enumerate() {
                    let link = match position {
                        0 => ". Write",
                        _ => " or",
                    };
                    write!(f, "{link} `{}`", unit.symbol)?;
                }
                Ok(())
            }
            Self::Combination { numerator, denominator, .. } => write!(
                f,
                "`{}/{}` makes no quantity: {} divided by {}",
                numerator.symbol, denominator.symbol, numerator.dimension, denominator.dimension
            ),
            Self::NumberWithoutUnit { numerator, number, .. } => write!(
                f,
                "`{} per {number}` of what? A unit belongs after the number, as in `per 100 g goods`",
                numerator.symbol
            ),
            Self::PerZero { .. } => {
                f.write_str("an amount per nothing cannot be worked out; the number after `per` must be above zero")
            }
            Self::TwoDivisions { spelling, .. } => {
                write!(f, "`{spelling}` divides twice; a unit may be divided once")
            }
        }
    }
}

impl std::error::Error for UnitProblem {}
