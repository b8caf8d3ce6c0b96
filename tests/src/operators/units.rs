//! The number kept, the unit another: ounces for grams, gallons for litres, °F for °C, none at all.

use tenter_reference::Role;
use tenter_syntax::BlockKind;

use super::unit;
use crate::good::Good;
use crate::harm::{always, overdyed, starved, unset};
use crate::mutant::{Mutant, Operator};

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "dye-in-ounces",
        what: "oz for g of dye, 28 times as much; harm as for too much dye",
        answers: &[
            "far-too-much-dye",
            "too-little-alkali",
            "far-out-number",
            "ambiguous-measure",
            "more-than-dissolves",
        ],
        make: |good| unit(good, good.of_role(Role::Dye), "g", "oz"),
        harms: overdyed,
    },
    Operator {
        name: "soda-in-ounces",
        what: "oz/gal for g/L of soda would be seen; oz for g is 28 times as much, a crust that never rinses out",
        answers: &[
            "far-too-much-alkali",
            "more-than-dissolves",
            "ambiguous-measure",
            "far-out-number",
            "vat-out-of-balance",
        ],
        make: |good| unit(good, good.of_role(Role::Alkali), "g", "oz"),
        harms: |_, after| crusted(after),
    },
    Operator {
        name: "water-in-gallons",
        what: "gal for L of the water of a mix: a quarter of the strength; harm where the alkali no longer serves the dye",
        answers: &["too-little-alkali", "no-alkali", "far-more-than-needed", "vessel-too-small", "ambiguous-measure"],
        make: |good| unit(good, good.of_role(Role::Water), "L", "gal"),
        harms: starved,
    },
    Operator {
        name: "weight-in-pounds",
        what: "lb for g of a piece",
        answers: &[
            "far-out-number",
            "too-little-dye",
            "vessel-too-small",
            "soak-bath-spent",
            "mix-overdrawn",
            "far-more-than-needed",
        ],
        make: |good| {
            let lines = good.key_lines(BlockKind::Goods, "weight").into_iter();
            lines.filter_map(|line| good.reword(line, " g ", " lb ")).collect()
        },
        harms: always,
    },
    Operator {
        name: "batch-in-fahrenheit",
        what: "°F for °C of a batch: 22 °F is frost; harm where under a quarter of a full batch is reached",
        answers: &["batch-too-short", "far-out-number", "powder-never-wetted"],
        make: |good| degrees(good, "batch", "°C", "°F"),
        harms: unset,
    },
    Operator {
        name: "bath-in-fahrenheit",
        what: "°F for °C where a bath is raised",
        answers: &[
            "step-without-effect",
            "too-cold-for-class",
            "acid-dye-too-cold",
            "disperse-dye-too-cold",
            "batch-too-short",
            "odd-temperature-scale",
        ],
        make: |good| degrees(good, "raise", "°C", "°F"),
        harms: always,
    },
    Operator {
        name: "soaping-in-celsius-of-fahrenheit",
        what: "°C for °F in the soaping: 140 °C is no water",
        answers: &["far-out-number"],
        make: |good| degrees(good, "soap off", "°F", "°C"),
        harms: always,
    },
    Operator {
        name: "degrees-of-nothing",
        what: "a temperature with no unit in the soaping",
        answers: &["missing-unit", "unknown-unit", "too-few-soapings", "wrong-dimension"],
        make: |good| {
            let lines = good.verb_lines("soap off").into_iter().chain(good.verb_lines("raise"));
            lines.filter_map(|line| good.reword(line, " °C", "")).collect()
        },
        harms: always,
    },
    Operator {
        name: "seconds-for-minutes",
        what: "s for min where a bath is held; harm where under a quarter of a full batch is reached",
        answers: &["batch-too-short", "bath-too-short-for-level"],
        make: |good| good.verb_lines("hold").into_iter().filter_map(|line| good.reword(line, " min", " s")).collect(),
        harms: unset,
    },
];

fn degrees(good: &Good, verb: &str, from: &str, to: &str) -> Vec<Mutant> {
    good.verb_lines(verb).into_iter().filter_map(|line| good.reword(line, from, to)).collect()
}

/// Some alkali of a mix stands at more than 250 g/L of its water.
fn crusted(good: &Good) -> bool {
    let Some(rehearsal) = good.rehearsal() else { return false };
    rehearsal.mixes.iter().any(|mix| {
        let alkali = rehearsal.substances.mass_of_role(&mix.contents, Role::Alkali);
        mix.volume.as_ref().is_some_and(|volume| volume.value.best > 0.0 && alkali.best / volume.value.best > 250.0)
    })
}
