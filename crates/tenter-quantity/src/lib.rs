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
mod derivation;
pub mod dimension;
pub mod dimension_problem;
pub mod distance;
pub mod figure;
pub mod fold;
mod index;
pub mod interval;
pub mod interval_ops;
pub mod lookup;
pub mod measure;
pub mod numeral;
mod numeral_fix;
pub mod numeral_problem;
pub mod origin;
mod pieces;
pub mod place;
pub mod problem;
pub mod quantity;
mod quotient;
pub mod read;
pub mod show;
pub mod standard;
pub mod table;
pub mod unit;

pub use bound::{Bound, about, at_least, at_most, parse_amount};
pub use currency::{is_currency, lookup_currency, price_per_kilogram, price_per_litre};
pub use dimension::Dimension;
pub use dimension_problem::DimensionProblem;
pub use figure::Figure;
pub use interval::Interval;
pub use lookup::{Lookup, candidates, canonical_spelling, lookup_unit, nearest_unit, unit_by_symbol};
pub use measure::{Ambiguity, Denominator, Token, UnitExpression};
pub use numeral::parse_numeral;
pub use numeral_problem::{NumeralProblem, NumeralProblemKind};
pub use origin::Origin;
pub use place::Place;
pub use problem::UnitProblem;
pub use quantity::{Basis, Quantity, liquor_ratio};
pub use read::{read_denominator, read_price, read_unit};
pub use show::{show, show_difference, show_in, show_number};
pub use unit::{System, Unit};
