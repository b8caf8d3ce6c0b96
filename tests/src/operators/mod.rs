//! The ways to spoil a recipe, one file a family.

mod alkali;
mod amounts;
mod dye;
mod finish;
mod heat;
mod order;
mod people;
mod soak;
mod swaps;
mod units;
mod vats;
mod water;
mod writing;

use tenter_resolve::recipe::Ingredient;

use crate::good::Good;
use crate::mutant::{Mutant, Operator};
use crate::numbers::scaled;

/// All operators, family by family.
pub fn all() -> Vec<Operator> {
    [
        alkali::OPERATORS,
        soak::OPERATORS,
        dye::OPERATORS,
        amounts::OPERATORS,
        heat::OPERATORS,
        water::OPERATORS,
        order::OPERATORS,
        finish::OPERATORS,
        people::OPERATORS,
        writing::OPERATORS,
        units::OPERATORS,
        swaps::OPERATORS,
        vats::OPERATORS,
    ]
    .concat()
}

/// Each amount times a factor.
fn times(good: &Good, which: Vec<&Ingredient>, factor: f64) -> Vec<Mutant> {
    which
        .into_iter()
        .filter_map(|each| each.amount.as_ref())
        .filter_map(|amount| good.put(amount.place, &scaled(good.words(amount.place), factor)?))
        .collect()
}

/// Each amount's unit changed for another, the number kept.
fn unit(good: &Good, which: Vec<&Ingredient>, from: &str, to: &str) -> Vec<Mutant> {
    which
        .into_iter()
        .filter_map(|each| each.amount.as_ref())
        .filter_map(|amount| {
            let words = good.words(amount.place);
            let (number, have) = words.rsplit_once(' ')?;
            (have == from).then(|| good.put(amount.place, &format!("{number} {to}")))?
        })
        .collect()
}
