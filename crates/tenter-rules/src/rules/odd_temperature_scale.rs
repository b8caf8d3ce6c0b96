//! One °F among °C.

use tenter_quantity::{Figure, Place};
use tenter_resolve::recipe::LiquorKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "odd-temperature-scale",
    summary: "A single temperature in °F in a recipe that is written in °C.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("odd_temperature_scale.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let all = temperatures(context);
    let (fahrenheit, celsius): (Vec<&Figure>, Vec<&Figure>) =
        all.into_iter().partition(|figure| figure.unit.symbol == "°F");
    let [odd] = fahrenheit.as_slice() else { return };
    let number = odd.value.best * 9.0 / 5.0 - 459.67;
    // Beyond 100 the same number would be no temperature of a bath in °C.
    let (Some(place), true) = (odd.place(), celsius.len() >= OTHERS && number < 100.5) else { return };
    // A bath that is brought up to it goes cold; elsewhere it may just be what the thermometer shows.
    let heated = context.steps().any(|step| {
        step.verb.is_some_and(|verb| matches!(verb.name, "raise" | "heat"))
            && step.to_temperature.as_ref().and_then(Figure::place) == Some(place)
    });
    let mut finding = Finding::new(
        &RULE,
        place,
        format!(
            "{} is {} °C, and the other {} temperatures here are in °C",
            odd.show(),
            crate::bench::number(odd.value.best - 273.15),
            celsius.len()
        ),
    )
    .figure(odd)
    .level(if heated { Level::Warning } else { Level::Advice })
    .help("Look whether °C was meant; if not, write it in °C like the others.");
    let written = context.text(place);
    let meant = written.replace("°F", "°C");
    if meant != written {
        finding = finding.fix(Fix::replace(place, meant, false));
    }
    found.push(finding);
}

/// Every temperature that is written in the recipe.
fn temperatures<'a>(context: &Context<'a>) -> Vec<&'a Figure> {
    let mut found: Vec<&Figure> = Vec::new();
    for mix in &context.recipe.mixes {
        found.extend(mix.ingredients.iter().filter_map(|each| each.temperature.as_ref()));
    }
    for step in context.steps() {
        let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(inside)) => inside.as_slice(),
            _ => &[],
        };
        let inside = step.applied.iter().chain(&step.with).chain(bath);
        found.extend(inside.filter_map(|each| each.temperature.as_ref()));
        found.extend([&step.temperature, &step.from_temperature, &step.to_temperature].into_iter().flatten());
    }
    found.extend(&context.recipe.header.room);
    found.extend(context.recipe.vessels.iter().filter_map(|vessel| vessel.rated.as_ref()));
    let mut places: Vec<Place> = Vec::new();
    found.retain(|figure| match figure.place() {
        Some(place) if !places.contains(&place) => {
            places.push(place);
            true
        }
        _ => false,
    });
    found
}

/// Temperatures in °C that make °C the scale of a recipe.
const OTHERS: usize = 3;
