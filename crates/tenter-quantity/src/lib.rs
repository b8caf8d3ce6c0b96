//! Quantities: numbers with bounds, units of the dyer's bench, and the story of where each figure came from.
//!
//! Inside everything is SI (kg, m³, K, s, m, mol); outside it is the dyer's unit. This crate knows no notation,
//! no recipe and no chemistry.
//!
//! * [`Interval`]: a best estimate with bounds.
//! * [`Dimension`], [`Unit`], [`lookup_unit`], [`read_unit`]: what a written unit means.
//! * [`parse_numeral`], [`parse_amount`]: what a written number means.
//! * [`Quantity`]: a value with its dimension and what it is counted on.
//! * [`Figure`]: a value that can say where it came from.

pub mod bound;
pub mod composed;
pub mod currency;
pub mod dimension;
pub mod distance;
pub mod figure;
pub mod fold;
pub mod interval;
pub mod interval_ops;
pub mod lookup;
pub mod measure;
pub mod numeral;
pub mod origin;
mod pieces;
pub mod place;
pub mod problem;
pub mod quantity;
pub mod show;
pub mod standard;
pub mod table;
pub mod unit;

pub use bound::{Bound, about, at_least, at_most, parse_amount};
pub use currency::{is_currency, lookup_currency, price_per_kilogram, price_per_litre};
pub use dimension::{Dimension, DimensionProblem};
pub use figure::Figure;
pub use interval::Interval;
pub use lookup::{
    Lookup, candidates, canonical_spelling, lookup_unit, nearest_unit, unit_by_symbol,
};
pub use measure::{
    Ambiguity, Denominator, Token, UnitExpression, read_denominator, read_price, read_unit,
};
pub use numeral::{NumeralProblem, NumeralProblemKind, parse_numeral};
pub use origin::Origin;
pub use place::Place;
pub use problem::UnitProblem;
pub use quantity::{Basis, Quantity, liquor_ratio};
pub use show::{show, show_difference, show_in, show_number};
pub use unit::{System, Unit};
