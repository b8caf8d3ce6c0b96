//! Slips of the pen that leave a number or a name without sense.

use tenter_reference::Role;
use tenter_resolve::recipe::{Ingredient, ZoneRef};

use crate::good::Good;
use crate::harm::always;
use crate::mutant::Operator;

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "no-unit",
        what: "an amount of dye with no unit",
        answers: &["missing-unit", "unknown-name", "wrong-dimension"],
        make: |good| {
            amounts(good)
                .into_iter()
                .filter_map(|each| each.amount.as_ref())
                .filter_map(|amount| {
                    let (number, _) = good.words(amount.place).split_once(' ')?;
                    number.parse::<f64>().is_ok().then(|| good.put(amount.place, number))?
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "percent-of-what",
        what: "per cent with nothing to say of what: 2% owg and 2% of the liquor are far apart",
        answers: &["percent-of-what"],
        make: |good| {
            let mut found = Vec::new();
            for (index, line) in good.text.lines().enumerate() {
                if line.starts_with("  ") && line.contains("% owg") {
                    found.extend(good.reword(index + 1, "% owg", "%"));
                }
            }
            found
        },
        harms: always,
    },
    Operator {
        name: "decimal-comma",
        what: "2,5 for 2.5: read as two thousand five hundred by some",
        answers: &["number-form"],
        make: |good| {
            amounts(good)
                .into_iter()
                .filter_map(|each| each.amount.as_ref())
                .filter_map(|amount| {
                    let words = good.words(amount.place);
                    words.contains('.').then(|| good.put(amount.place, &words.replace('.', ",")))?
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "unknown-unit",
        what: "a unit nobody knows: 60 gl",
        answers: &["unknown-unit", "unknown-name", "doubtful-unit"],
        make: |good| super::unit(good, good.amounts(), "g/L", "gl"),
        harms: always,
    },
    Operator {
        name: "zone-misspelt",
        what: "dye laid on a part that is not in the layout",
        answers: &["unknown-name"],
        make: |good| {
            let zones = good.recipe().into_iter().flat_map(|recipe| recipe.steps()).flat_map(|(_, step)| &step.zones);
            zones
                .filter(|zone| matches!(zone.zone, ZoneRef::Of(..)))
                .filter_map(|zone| {
                    let words = good.words(zone.place);
                    let name = words.strip_prefix("on ").unwrap_or(words);
                    good.put(zone.place, &words.replace(name, "sleeves"))
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "beyond-boiling",
        what: "water hotter than it can be: a digit too many",
        answers: &["far-out-number"],
        make: |good| {
            let mut found = Vec::new();
            for (index, line) in good.text.lines().enumerate() {
                if line.contains("water at ") && line.contains("0 °C") {
                    found.extend(good.reword(index + 1, "0 °C", "00 °C"));
                }
            }
            found
        },
        harms: always,
    },
    Operator {
        name: "dye-line-twice",
        what: "the line of a dye copied twice",
        answers: &["same-line-twice"],
        make: |good| {
            let dyes = good.of_role(Role::Dye).into_iter().filter_map(|each| good.line(0, each.place));
            dyes.filter(|line| good.text_of(good.header(*line)).starts_with("mix "))
                .map(|line| {
                    let words = good.text_of(line).to_owned();
                    good.insert(line, &words)
                })
                .collect()
        },
        harms: always,
    },
];

fn amounts(good: &Good) -> Vec<&Ingredient> {
    good.of_role(Role::Dye)
}
