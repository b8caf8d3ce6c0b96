//! Salt, liquor and vessels.

use tenter_reference::Role;
use tenter_syntax::BlockKind;

use crate::good::Good;
use crate::harm::{always, level};
use crate::mutant::Operator;
use crate::numbers::scaled;

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "salt-left-out",
        what: "a reactive immersion of cotton without its salt: most of the dye stays in the water",
        answers: &["immersion-without-salt"],
        make: |good| {
            let salt = good.of_role(Role::Salt).into_iter().filter_map(|each| good.line(0, each.place));
            if bath(good) { salt.map(|line| good.without(line)).collect() } else { Vec::new() }
        },
        harms: always,
    },
    Operator {
        name: "salt-grams-for-grams-per-litre",
        what: "g for g/L of salt in a reactive immersion of cotton; harm where under 10 g/L is left",
        answers: &["immersion-without-salt"],
        make: |good| if bath(good) { super::unit(good, good.of_role(Role::Salt), "g/L", "g") } else { Vec::new() },
        harms: |_, after| salt_strength(after) < 10.0,
    },
    Operator {
        name: "vessel-tenth",
        what: "a vessel of a tenth of the size; harm where a bath stands in it",
        answers: &["vessel-too-small"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Vessel, "holds").into_iter();
            lines.filter_map(|line| Some(good.instead(line, scaled(good.text_of(line), 0.1)?))).collect()
        },
        harms: |_, after| bath_in_vessel(after),
    },
    Operator {
        name: "aluminium-vessel",
        what: "an aluminium vessel; harm where an alkali or an acid stands in it",
        answers: &["never-mix"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Vessel, "material").into_iter();
            lines.map(|line| good.instead(line, "  material aluminium".to_owned())).collect()
        },
        harms: |_, after| alkali_in_vessel(after),
    },
    Operator {
        name: "vessel-rated-cool",
        what: "a vessel rated for 35 °C; harm where something hotter stands in it",
        answers: &["hotter-than-rated"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Vessel, "rated").into_iter();
            lines.map(|line| good.instead(line, "  rated    35 °C".to_owned())).collect()
        },
        harms: |_, after| hot_in_vessel(after),
    },
    Operator {
        name: "food-vessel",
        what: "a vessel that food touches too",
        answers: &["food-vessel"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Vessel, "food").into_iter();
            lines.filter_map(|line| good.reword(line, "never", "yes")).collect()
        },
        harms: |_, after| vessel_used(after),
    },
    Operator {
        name: "liquor-ratio-slip",
        what: "1:2 for 1:20 in a bath meant to be level",
        answers: &["bath-too-short-for-level", "bath-cannot-cover", "far-out-number"],
        make: |good| {
            let mut found = Vec::new();
            for (index, line) in good.text.lines().enumerate() {
                let word = line.split_whitespace().next().unwrap_or("");
                if word.starts_with("1:") && word.ends_with('0') && line.contains("water") {
                    found.extend(good.reword(index + 1, word, word.trim_end_matches('0')));
                }
            }
            found
        },
        harms: |_, after| level(after),
    },
];

/// A reactive dyeing of cotton in a bath with salt.
fn bath(good: &Good) -> bool {
    good.reactive_on_cellulose() && !good.verb_lines("immerse").is_empty()
}

fn vessels(good: &Good) -> impl Iterator<Item = &tenter_rehearse::LiquorState> {
    good.rehearsal()
        .into_iter()
        .flat_map(|rehearsal| &rehearsal.frames)
        .flat_map(|frame| frame.liquors.iter())
        .map(AsRef::as_ref)
        .filter(|liquor| liquor.vessel.is_some())
}

fn vessel_used(good: &Good) -> bool {
    vessels(good).next().is_some()
}

fn bath_in_vessel(good: &Good) -> bool {
    vessels(good).any(|liquor| !liquor.inside.is_empty())
}

fn hot_in_vessel(good: &Good) -> bool {
    vessels(good).any(|liquor| liquor.temperature.value.best > 273.15 + 38.0)
}

fn alkali_in_vessel(good: &Good) -> bool {
    let Some(recipe) = good.recipe() else { return false };
    vessels(good).any(|liquor| {
        let strong = |id: tenter_resolve::recipe::MaterialId| recipe.material(id).role() == Role::Alkali;
        liquor.contents.parts.iter().any(|(id, mass)| strong(*id) && mass.value.best > 0.0)
    })
}

/// All salt in the largest bath that holds goods, g/L, without the water of its crystals.
pub(super) fn salt_strength(good: &Good) -> f64 {
    let Some(recipe) = good.recipe() else { return 0.0 };
    let salts = recipe.totals.materials.iter().filter(|total| recipe.material(total.material).role() == Role::Salt);
    let mass: f64 = salts
        .filter_map(|total| {
            let anhydrous = recipe.material(total.material).reference.and_then(|entry| entry.anhydrous.as_ref());
            Some(total.mass.as_ref()?.value.best * anhydrous.map_or(1.0, |form| form.fraction))
        })
        .sum();
    let baths = good.rehearsal().into_iter().flat_map(|rehearsal| &rehearsal.events);
    let volume = baths
        .filter_map(|event| match &event.kind {
            tenter_rehearse::EventKind::Immersed { volume: Some(volume), .. } => Some(volume.value.best),
            _ => None,
        })
        .fold(0.0, f64::max);
    if volume > 0.0 { mass / volume } else { 0.0 }
}
