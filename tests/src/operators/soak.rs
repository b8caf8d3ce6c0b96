//! What goes wrong at the soak.

use tenter_resolve::recipe::LiquorKind;
use tenter_syntax::BlockKind;

use crate::good::Good;
use crate::harm::{soak_not_through, soak_weakened};
use crate::mutant::{Mutant, Operator};
use crate::numbers::scaled;

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "damp-goods",
        what: "goods come damp into the soak; harm where they take up less than three quarters of its strength",
        answers: &["damp-goods-dilute-soak", "too-little-alkali"],
        make: |good| state(good, "damp at 80% pickup"),
        harms: soak_weakened,
    },
    Operator {
        name: "dripping-goods",
        what: "goods come dripping wet into the soak; harm where they take up less than three quarters of its strength",
        answers: &["damp-goods-dilute-soak", "too-little-alkali"],
        make: |good| state(good, "wet at 180% pickup"),
        harms: soak_weakened,
    },
    Operator {
        name: "wetted-out-before-the-soak",
        what: "goods wetted with plain water, not wrung, and then soaked in soda; harm as above",
        answers: &["damp-goods-dilute-soak", "too-little-alkali"],
        make: |good| {
            good.verb_lines("soak")
                .into_iter()
                .take(1)
                .map(|line| good.insert(line - 1, "  wet out  in 10 L water at 40 °C for 10 min"))
                .collect()
        },
        harms: soak_weakened,
    },
    Operator {
        name: "soak-for-a-minute",
        what: "a soak of a minute; harm where less than two thirds of the cloth is wetted through",
        answers: &["soak-too-short"],
        make: |good| soaks(good).into_iter().filter_map(|line| minutes(good, line)).collect(),
        harms: soak_not_through,
    },
    Operator {
        name: "soak-bath-of-a-cupful",
        what: "a tenth of the water in the soak; harm where it is less than the goods carry off",
        answers: &["soak-bath-spent", "mix-overdrawn", "vessel-too-small"],
        make: cupful,
        harms: |_, after| too_little_bath(after),
    },
];

fn state(good: &Good, wet: &str) -> Vec<Mutant> {
    good.key_lines(BlockKind::Goods, "state")
        .into_iter()
        .filter_map(|line| good.reword(line, "scoured, dry", &format!("scoured, {wet}")))
        .collect()
}

fn soaks(good: &Good) -> Vec<usize> {
    good.verb_lines("soak")
}

fn minutes(good: &Good, line: usize) -> Option<Mutant> {
    let old = good.text_of(line).to_owned();
    let (before, _) = old.split_once(" for ")?;
    Some(good.instead(line, format!("{before} for 1 min")))
}

fn cupful(good: &Good) -> Vec<Mutant> {
    let mut found = Vec::new();
    for (_, verb, step) in good.steps() {
        let Some(LiquorKind::Mix(id)) = step.liquor.as_ref().map(|liquor| &liquor.kind) else { continue };
        if verb != "soak" {
            continue;
        }
        let Some(recipe) = good.recipe() else { continue };
        let Some(amount) = recipe.mix(*id).ingredients.first().and_then(|water| water.amount.as_ref()) else {
            continue;
        };
        found.extend(scaled(good.words(amount.place), 0.1).and_then(|new| good.put(amount.place, &new)));
    }
    found.dedup_by(|a, b| a.text == b.text);
    found
}

/// A bath in which goods are soaked is smaller than what they take up: 0.8 L to the kilogram.
fn too_little_bath(good: &Good) -> bool {
    let Some(recipe) = good.recipe() else { return false };
    let dry = recipe.totals.dry_mass.as_ref().map_or(0.0, |dry| dry.value.best);
    good.steps().iter().any(|(_, verb, step)| {
        *verb == "soak"
            && match step.liquor.as_ref().map(|liquor| &liquor.kind) {
                Some(LiquorKind::Mix(id)) => {
                    recipe.mix(*id).volume.as_ref().is_some_and(|volume| volume.value.best * 1000.0 < 0.8 * dry)
                }
                _ => false,
            }
    })
}
