//! Too hot for the vessel.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{LiquorKind, Source};

pub(crate) const RULE: Rule = Rule {
    name: "hotter-than-rated",
    summary: "Liquid hotter than the vessel it is put into is rated for.",
    group: Group::People,
    level: Level::Error,
    since: "1",
    page: include_str!("hotter_than_rated.md"),
    check,
};

const HELP: &str =
    "Use a vessel that stands the heat, or let the water cool first. Sprayers and bottles soften and burst.";

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let id = match (&step.source, step.liquor.as_ref().map(|liquor| &liquor.kind)) {
            (Some(Source::Vessel(id)), _) | (_, Some(LiquorKind::Vessel(id))) => *id,
            _ => continue,
        };
        let Some(vessel) = context.recipe.vessels.get(id.0) else { continue };
        let Some(rated) = &vessel.rated else { continue };
        let hottest = step
            .applied
            .iter()
            .chain(&step.with)
            .filter_map(|ingredient| ingredient.temperature.as_ref())
            .chain(step.temperature.as_ref())
            .chain(step.to_temperature.as_ref())
            .find(|temperature| temperature.value.low > rated.value.high + 0.5);
        let Some(temperature) = hottest else { continue };
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!("{} at {}, and it is rated for {}", vessel.name.text, temperature.show(), rated.show()),
            )
            .noted(rated, "rated here")
            .figure(temperature)
            .figure(rated)
            .help(HELP),
        );
    }
    standing(context, found);
    squeezed(context, found);
}

/// A bottle or sprayer of which nothing is said, filled with something hot.
fn squeezed(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Drawn { mix, temperature, .. } = &event.kind else { continue };
        let bottle = context.verb_at(event.place).is_some_and(|verb| matches!(verb, "squirt" | "spray"));
        let told = found.iter().any(|have| have.rule == RULE.name && have.place == event.place);
        if !bottle || told || temperature.value.low <= SOFTENS {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} is at {} when it is squeezed or sprayed; common bottles and sprayers bear about 60 °C",
                    context.recipe.mix(*mix).name.text,
                    temperature.show()
                ),
            )
            .level(Level::Warning)
            .noted(temperature, "the temperature")
            .figure(temperature)
            .help(HELP),
        );
    }
}

/// 62 °C in K: polyethylene softens from about 60 °C on (common practice, no source).
const SOFTENS: f64 = 335.15;

/// A bath that stands in a vessel, made or heated too hot for it.
fn standing(context: &Context<'_>, found: &mut Vec<Finding>) {
    for frame in &context.rehearsal.frames {
        for liquor in frame.liquors.iter() {
            let vessel = liquor.vessel.and_then(|id| context.recipe.vessels.get(id.0));
            let Some((vessel, rated)) = vessel.and_then(|vessel| Some((vessel, vessel.rated.as_ref()?))) else {
                continue;
            };
            let told = found.iter().any(|have| {
                have.rule == RULE.name && (have.place == frame.place || have.message.starts_with(&*vessel.name.text))
            });
            if liquor.temperature.value.low <= rated.value.high + 0.5 || told {
                continue;
            }
            found.push(
                Finding::new(
                    &RULE,
                    frame.place,
                    format!(
                        "{} with liquor at {}, and it is rated for {}",
                        vessel.name.text,
                        liquor.temperature.show(),
                        rated.show()
                    ),
                )
                .noted(rated, "rated here")
                .figure(&liquor.temperature)
                .figure(rated)
                .help(HELP),
            );
        }
    }
}
