//! Soda left out, weakened, or mistaken for something else.

use tenter_reference::Role;
use tenter_resolve::recipe::{Ingredient, Substance};

use super::{times, unit};
use crate::good::Good;
use crate::harm::{always, starved};
use crate::mutant::{Mutant, Operator};

const ANSWERS: &[&str] = &["no-alkali", "too-little-alkali", "bicarbonate-without-heat", "mix-never-used"];
/// Bicarbonate beside soda slows the dye.
const SLOWED: &[&str] =
    &["no-alkali", "too-little-alkali", "bicarbonate-without-heat", "mix-never-used", "batch-too-short"];

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "drop-alkali",
        what: "the line that brings an alkali is left out; harm where less soda than dye is left",
        answers: ANSWERS,
        make: drop,
        harms: starved,
    },
    Operator {
        name: "halve-alkali",
        what: "half the alkali; harm where less soda than dye is left, for a rich soak forgives it",
        answers: ANSWERS,
        make: |good| times(good, alkali(good), 0.5),
        harms: starved,
    },
    Operator {
        name: "quarter-alkali",
        what: "a quarter of the alkali; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| times(good, alkali(good), 0.25),
        harms: starved,
    },
    Operator {
        name: "alkali-decimal-slip",
        what: "a tenth of the alkali; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| times(good, alkali(good), 0.1),
        harms: starved,
    },
    Operator {
        name: "alkali-gram-for-gram-per-litre",
        what: "g for g/L of an alkali; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| unit(good, alkali(good), "g/L", "g"),
        harms: starved,
    },
    Operator {
        name: "alkali-milligrams",
        what: "mg for g of an alkali; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| {
            let mut found = unit(good, alkali(good), "g/L", "mg/L");
            found.extend(unit(good, alkali(good), "g", "mg"));
            found.extend(unit(good, alkali(good), "g/piece", "mg/piece"));
            found
        },
        harms: starved,
    },
    Operator {
        name: "alkali-tenfold",
        what: "ten times the alkali in a soak or bath: above 200 g/L soda ash no longer dissolves in cool water",
        answers: &["far-too-much-alkali", "far-out-number"],
        make: |good| {
            times(good, alkali(good).into_iter().filter(|each| good.words(each.place).contains("g/L")).collect(), 10.0)
        },
        harms: strong,
    },
    Operator {
        name: "bicarbonate-for-soda",
        what: "sodium bicarbonate for soda ash; harm where nothing is steamed",
        answers: SLOWED,
        make: |good| rename(good, "sodium bicarbonate"),
        harms: starved,
    },
    Operator {
        name: "washing-soda-for-soda-ash",
        what: "washing soda, 37% of it carbonate, for soda ash; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| rename(good, "washing soda"),
        harms: starved,
    },
    Operator {
        name: "salt-for-soda",
        what: "sodium chloride taken for soda ash; harm where less soda than dye is left",
        answers: ANSWERS,
        make: |good| rename(good, "sodium chloride"),
        harms: starved,
    },
    Operator {
        name: "acid-into-bottle-of-soda",
        what: "vinegar put into a bottle with soda: it foams and bursts it",
        answers: &["acid-and-soda-in-a-bottle", "acid-in-alkali-step", "never-mix"],
        make: |good| acid(good, true, "  50 mL    vinegar"),
        harms: always,
    },
    Operator {
        name: "acid-into-soak",
        what: "citric acid put into a soda soak by the handful: it eats the alkali; harm where less soda than dye is left",
        answers: &["acid-in-alkali-step", "never-mix", "no-alkali", "too-little-alkali"],
        make: |good| acid(good, false, "  80 g/L   citric acid"),
        harms: starved,
    },
];

/// The alkali of a reactive dyeing on cotton.
fn alkali(good: &Good) -> Vec<&Ingredient> {
    if good.reactive_on_cellulose() { good.of_role(Role::Alkali) } else { Vec::new() }
}

fn drop(good: &Good) -> Vec<Mutant> {
    let lines = alkali(good).into_iter().filter_map(|each| good.line(0, each.place));
    lines.map(|line| good.without(line)).collect()
}

fn rename(good: &Good, to: &str) -> Vec<Mutant> {
    let soda = alkali(good).into_iter().filter(|each| good.words(each.name_place) == "soda ash");
    soda.filter_map(|each| good.put(each.name_place, to)).collect()
}

/// An acid under the line of soda ash of a mix, drawn from by the millilitre or not.
fn acid(good: &Good, bottle: bool, line: &str) -> Vec<Mutant> {
    let Some(recipe) = good.recipe() else { return Vec::new() };
    let drawn = |header: usize| {
        let mix = recipe.mixes.iter().position(|mix| good.line(0, mix.name.place) == Some(header));
        good.steps().iter().any(|(_, verb, step)| {
            matches!(*verb, "squirt" | "spray")
                && step.applied.iter().any(|each| matches!(each.what, Substance::Mix(id) if Some(id.0) == mix))
        })
    };
    let soda = alkali(good).into_iter().filter(|each| good.words(each.name_place) == "soda ash");
    soda.filter_map(|each| good.line(0, each.place))
        .filter(|at| good.text_of(good.header(*at)).starts_with("mix ") && drawn(good.header(*at)) == bottle)
        .map(|at| good.insert(at, line))
        .collect()
}

/// Some alkali stands at more than 200 g/L.
fn strong(_: &Good, after: &Good) -> bool {
    alkali(after).iter().any(|each| {
        each.amount.as_ref().is_some_and(|amount| {
            amount.written.dimension == tenter_quantity::Dimension::MassConcentration
                && amount.written.value.best > 200.0
        })
    })
}
