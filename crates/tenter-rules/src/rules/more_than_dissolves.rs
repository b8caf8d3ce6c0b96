//! It will not dissolve.

use crate::bench::{number, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
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
