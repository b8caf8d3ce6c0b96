//! It will not dissolve.

use crate::bench::{number, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, Role};
use tenter_rehearse::{LiquorName, saturation};

pub(crate) const RULE: Rule = Rule {
    name: "more-than-dissolves",
    summary: "More goes into a mix than its water dissolves.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("more_than_dissolves.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for liquor in &context.rehearsal.mixes {
        let LiquorName::Mix(id) = liquor.name else { continue };
        let mix = context.recipe.mix(id);
        if told.contains(&id) || mix.is_dry() || context.troubled_block(mix.name.place) {
            continue;
        }
        told.push(id);
        dyes(context, id, &liquor.contents, found);
        for full in saturation(context.recipe, &liquor.contents, liquor.temperature.value) {
            if full.full.low <= OVER {
                continue;
            }
            let material = context.material(full.material);
            let place = context
                .materials_of_mix(id)
                .into_iter()
                .find(|(brought, _)| *brought == full.material)
                .map_or(mix.name.place, |(_, place)| place);
            let limit = full.dissolves.best * 1000.0;
            let warmer = full.dissolves_at.map_or_else(
                || "No warmth will do; take more water.".to_owned(),
                |kelvin| {
                    format!(
                        "It takes {} °C, and falls out again on cooling; or more water.",
                        number(libm::ceil(kelvin - 273.15))
                    )
                },
            );
            found.push(
                Finding::new(
                    &RULE,
                    place,
                    format!(
                        "{} in {}: {} what the water can dissolve at {} ({} g in a litre)",
                        material.name,
                        mix.name.text,
                        if full.full.best >= 2.0 {
                            format!("{} times", number(full.full.best))
                        } else {
                            format!("{} of", per_cent(libm::round(full.full.best * 20.0) / 20.0))
                        },
                        liquor.temperature.show(),
                        number(limit)
                    ),
                )
                .note(mix.name.place, "in this mix")
                .figure(&liquor.temperature)
                .help(format!("Look for a slip in the amount. {warmer}")),
            );
        }
    }
}

/// Let pass: tables and kitchen scales differ by so much.
const OVER: f64 = 1.1;

/// Reactive, acid and direct dye powder stirred into far too little water. No table of dyes was to be had: the bounds are
/// what the strongest bottles and pastes of the trade hold, and half as much again.
fn dyes(
    context: &Context<'_>,
    mix: tenter_resolve::recipe::MixId,
    contents: &tenter_rehearse::Contents,
    found: &mut Vec<Finding>,
) {
    let water = contents.water_mass().high;
    let dissolving = |id: &tenter_resolve::recipe::MaterialId| {
        context
            .class(*id)
            .is_some_and(|class| matches!(class.family, DyeFamily::Reactive | DyeFamily::Acid | DyeFamily::Direct))
    };
    let dye: Vec<_> = contents.parts.iter().filter(|(id, _)| dissolving(id)).collect();
    let mass: f64 = dye.iter().map(|(_, mass)| mass.value.low).sum();
    let most = if context.holds(contents, Role::Humectant) { MOST_WITH_UREA } else { MOST_DYE };
    let Some((first, figure)) = dye.first().filter(|_| water > 0.0 && mass / water > most) else { return };
    let named = context.recipe.mix(mix);
    let brought = context.materials_of_mix(mix).into_iter().find(|(id, _)| id == first);
    let place = brought.map_or(named.name.place, |(_, place)| place);
    found.push(
        Finding::new(
            &RULE,
            place,
            format!(
                "{} has {} g of dye in a litre of water; the strongest bottles have about {} g",
                named.name.text,
                number(mass / water * 1000.0),
                number(most * 1000.0 / 1.5)
            ),
        )
        .note(named.name.place, "in this mix")
        .figure(figure)
        .help("Take more water, or weigh less: what does not dissolve makes specks. Look for a slip of mL for L, or a decimal point."),
    );
}

/// kg of dye to a kilogram of water.
const MOST_DYE: f64 = 0.15;
/// The same with urea, which helps it dissolve.
const MOST_WITH_UREA: f64 = 0.3;
