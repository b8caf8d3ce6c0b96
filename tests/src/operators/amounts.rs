//! Bottles, baths and goods: more drawn than there is, slips in volume and weight.

use tenter_reference::Role;
use tenter_resolve::recipe::{Ingredient, Substance};
use tenter_syntax::BlockKind;

use super::{times, unit};
use crate::good::Good;
use crate::harm::{always, overdrawn};
use crate::mutant::Operator;
use crate::numbers::scaled;

const DRAWN: &[&str] = &["mix-overdrawn", "more-than-cloth-holds", "far-out-number"];

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "bottle-overdrawn",
        what: "half as much again drawn from a bottle; harm where it does not hold that",
        answers: DRAWN,
        make: |good| times(good, draws(good), 1.5),
        harms: overdrawn,
    },
    Operator {
        name: "volume-decimal-slip-up",
        what: "ten times the liquor out of a bottle; harm where it does not hold that",
        answers: DRAWN,
        make: |good| times(good, draws(good), 10.0),
        harms: overdrawn,
    },
    Operator {
        name: "volume-decimal-slip-down",
        what: "a tenth of the liquor out of a bottle made for all of it: a tenth of the dye on the cloth",
        answers: &["far-more-than-needed", "too-little-dye"],
        make: |good| times(good, draws(good), 0.1),
        harms: always,
    },
    Operator {
        name: "litres-for-millilitres-drawn",
        what: "L for mL out of a bottle",
        answers: DRAWN,
        make: |good| {
            let mut found = unit(good, draws(good), "mL/piece", "L/piece");
            found.extend(unit(good, draws(good), "mL", "L"));
            found
        },
        harms: overdrawn,
    },
    Operator {
        name: "bottle-decimal-slip-down",
        what: "a tenth of the water in a bottle; harm where more is drawn",
        answers: &["mix-overdrawn", "far-out-number", "more-than-dissolves"],
        make: |good| times(good, bottle_water(good), 0.1),
        harms: overdrawn,
    },
    Operator {
        name: "millilitres-for-litres",
        what: "mL for L of the water of a mix; harm where more is drawn or a bath of goods is left with less than a cup",
        answers: &[
            "mix-overdrawn",
            "soak-bath-spent",
            "far-out-number",
            "more-than-dissolves",
            "bath-cannot-cover",
            "far-too-much-alkali",
        ],
        make: |good| unit(good, good.of_role(Role::Water), "L", "mL"),
        harms: always,
    },
    Operator {
        name: "litres-for-millilitres",
        what: "L for mL of the water of a bottle: a thousandth of the strength",
        answers: &["far-more-than-needed", "too-little-alkali", "too-little-dye", "vessel-too-small", "no-alkali"],
        make: |good| unit(good, bottle_water(good), "mL", "L"),
        harms: always,
    },
    Operator {
        name: "mix-left-out",
        what: "a mix is not declared although it is used",
        answers: &["unknown-name", "missing-value", "bath-never-made", "no-alkali"],
        make: |good| {
            good.recipe()
                .into_iter()
                .flat_map(|recipe| &recipe.mixes)
                .filter(|mix| !mix.draws.is_empty())
                .filter_map(|mix| good.line(0, mix.name.place))
                .map(|header| {
                    let end = good.text.lines().skip(header).take_while(|line| line.starts_with(' ')).count();
                    good.without_all(&(header..=header + end).collect::<Vec<_>>())
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "twice-the-pieces",
        what: "twice as many pieces, nothing else changed; harm where a bottle runs dry",
        answers: DRAWN,
        make: |good| {
            let lines = good.key_lines(BlockKind::Goods, "pieces").into_iter();
            lines
                .filter(|line| !good.text_of(*line).contains("lots"))
                .filter_map(|line| Some(good.instead(line, scaled(good.text_of(line), 2.0)?)))
                .collect()
        },
        harms: overdrawn,
    },
    Operator {
        name: "goods-in-kilograms",
        what: "a piece of so many kilograms, for grams",
        answers: &["far-out-number", "too-little-dye", "vessel-too-small", "soak-bath-spent", "mix-overdrawn"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Goods, "weight").into_iter();
            lines.filter_map(|line| good.reword(line, " g", " kg")).collect()
        },
        harms: always,
    },
];

/// What is drawn from mixes, by volume.
fn draws(good: &Good) -> Vec<&Ingredient> {
    let Some(recipe) = good.recipe() else { return Vec::new() };
    let steps = recipe.steps().flat_map(|(_, step)| &step.applied);
    steps.filter(|each| matches!(each.what, Substance::Mix(_)) && good.words(each.place).contains("mL")).collect()
}

/// The water of mixes that steps draw from by volume.
fn bottle_water(good: &Good) -> Vec<&Ingredient> {
    let drawn = draws(good);
    let Some(recipe) = good.recipe() else { return Vec::new() };
    recipe
        .mixes
        .iter()
        .enumerate()
        .filter(|(at, _)| drawn.iter().any(|each| matches!(each.what, Substance::Mix(id) if id.0 == *at)))
        .flat_map(|(_, mix)| &mix.ingredients)
        .filter(|each| good.material(each).is_some_and(tenter_resolve::recipe::Material::is_water))
        .filter(|each| good.range(0, each.place).is_some())
        .collect()
}
