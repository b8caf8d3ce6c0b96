//! Steps in an order in which they cannot work.

use tenter_reference::Role;

use crate::good::Good;
use crate::harm::{always, level};
use crate::mutant::{Mutant, Operator};

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "batch-before-dye",
        what: "the goods are left to react before dye is on them",
        answers: &["batch-before-dye", "batch-too-short"],
        make: |good| move_first(good, &["batch"], &["sift", "sprinkle", "squirt", "pour", "brush", "print", "dip"]),
        harms: always,
    },
    Operator {
        name: "rinse-before-batch",
        what: "the dye is rinsed out before it has reacted",
        answers: &["batch-too-short", "batch-before-dye"],
        make: |good| move_first(good, &["rinse"], &["batch"]),
        harms: after_dye,
    },
    Operator {
        name: "soften-before-soaping",
        what: "softener wraps loose dye into the cloth before the soaping",
        answers: &["softener-too-early"],
        make: |good| move_first(good, &["soften"], &["soap off"]),
        harms: always,
    },
    Operator {
        name: "dry-before-wash-off",
        what: "cotton dried with loose reactive dye and soda in it; harm where nothing is steamed",
        answers: &["dried-before-wash-off"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let dry = good.verb_lines("dry");
            match (dry.last(), first_after_dye(good), good.verb_lines("steam").is_empty()) {
                (Some(dry), Some(rinse), true) => vec![good.moved_before(*dry, rinse)],
                _ => Vec::new(),
            }
        },
        harms: has_dyeing,
    },
    Operator {
        name: "soda-before-salt",
        what: "soda into a level bath as soon as the goods are in it; harm where they were in it for less than 15 min",
        answers: &["alkali-before-level"],
        make: |good| {
            let soda = good.steps().into_iter().find(|(_, verb, step)| {
                *verb == "add"
                    && step
                        .applied
                        .iter()
                        .any(|each| good.material(each).is_some_and(|found| found.role() == Role::Alkali))
            });
            match (soda, good.verb_lines("immerse").first()) {
                (Some((soda, _, _)), Some(immerse)) if soda > *immerse + 1 => {
                    vec![good.moved_before(soda, immerse + 1)]
                }
                _ => Vec::new(),
            }
        },
        harms: |_, after| level(after) && short_immersion(after),
    },
    Operator {
        name: "fold-after-dye",
        what: "the goods are folded after dye was laid on the zones of the fold",
        answers: &["zone-before-fold"],
        make: |good| {
            let laying: Vec<usize> = good
                .steps()
                .into_iter()
                .filter(|(_, _, step)| {
                    step.zones.iter().any(|zone| matches!(zone.zone, tenter_resolve::recipe::ZoneRef::Of(..)))
                })
                .map(|(line, _, _)| line)
                .collect();
            match (good.verb_lines("fold").first(), laying.last()) {
                (Some(fold), Some(last)) => vec![good.moved_before(*fold, last + 1)],
                _ => Vec::new(),
            }
        },
        harms: always,
    },
    Operator {
        name: "soak-after-dye",
        what: "the goods go into the soda soak after dry dye was strewn on them: the bath takes it",
        answers: &["powder-soaked-off", "no-alkali", "too-little-alkali"],
        make: |good| match (good.verb_lines("soak").first(), good.verb_lines("sprinkle").first()) {
            (Some(soak), Some(sprinkle)) if soak < sprinkle => vec![good.moved_before(*soak, sprinkle + 1)],
            _ => Vec::new(),
        },
        harms: always,
    },
    Operator {
        name: "powder-never-wetted",
        what: "the water that dissolves dry dye is left out",
        answers: &["powder-never-wetted", "batch-too-short"],
        make: |good| good.verb_lines("irrigate").into_iter().map(|line| good.without(line)).collect(),
        harms: always,
    },
    Operator {
        name: "dye-step-left-out",
        what: "a bottle is made, and the step that uses it left out",
        answers: &["mix-never-used"],
        make: |good| {
            let drawn = good.steps().into_iter().filter(|(_, verb, step)| {
                matches!(*verb, "squirt" | "pour" | "print" | "brush")
                    && step.applied.iter().any(|each| matches!(each.what, tenter_resolve::recipe::Substance::Mix(_)))
            });
            drawn.map(|(line, _, _)| good.without(line)).collect()
        },
        harms: |_, after| after.recipe().is_some_and(|recipe| recipe.mixes.iter().any(|mix| mix.draws.is_empty())),
    },
];

/// The rinse that follows the dye.
fn first_after_dye(good: &Good) -> Option<usize> {
    good.verb_lines("rinse").into_iter().find(|line| good.text_of(*line).contains("nearly clear"))
}

/// The first step of some verbs moved before the first of others, where it stands behind it.
fn move_first(good: &Good, which: &[&str], target: &[&str]) -> Vec<Mutant> {
    let steps = good.steps();
    let line = |verbs: &[&str]| steps.iter().find(|(_, verb, _)| verbs.contains(verb)).map(|(line, _, _)| *line);
    match (line(which), line(target)) {
        (Some(moved), Some(first)) if moved > first => vec![good.moved_before(moved, first)],
        _ => Vec::new(),
    }
}

fn has_dyeing(_: &Good, after: &Good) -> bool {
    after.rehearsal().is_some_and(|rehearsal| !rehearsal.dyeings.is_empty())
}

/// The batch that comes too late was the one that fixes: nothing was steamed.
fn after_dye(before: &Good, _: &Good) -> bool {
    before.reactive_on_cellulose() && before.verb_lines("steam").is_empty() && before.verb_lines("microwave").is_empty()
}

fn short_immersion(good: &Good) -> bool {
    let immersed = good.steps().into_iter().find(|(_, verb, _)| *verb == "immerse");
    immersed.and_then(|(_, _, step)| step.duration.as_ref()).is_some_and(|time| time.value.best < 900.0)
}
