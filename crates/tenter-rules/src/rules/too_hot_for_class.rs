//! Too hot a bath.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Place;
use tenter_rehearse::{EventKind, Medium};

pub(crate) const RULE: Rule = Rule {
    name: "too-hot-for-class",
    summary: "A bath far hotter than the class of dye fixes at.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_hot_for_class.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    dips(context, &mut told, found);
    for dyeing in context.dyeings() {
        let Medium::Bath(liquor) = dyeing.medium else { continue };
        let Some(window) = context.class(dyeing.dye).and_then(|class| class.fixation_celsius.as_ref()) else {
            continue;
        };
        if !context.is_reactive(dyeing.dye) || dyeing.usable.best <= 0.0 {
            continue;
        }
        let most = window.high + ABOVE + 273.15;
        let hot = context.events().find_map(|event| match &event.kind {
            EventKind::Immersed { liquor: at, temperature, .. } if *at == liquor && temperature.value.low > most => {
                Some((event.place, temperature))
            }
            EventKind::BathTemperature { liquor: at, to, .. } if *at == liquor && to.value.low > most => {
                Some((event.place, to))
            }
            _ => None,
        });
        let Some((place, warmest)) = hot.filter(|(place, _)| !context.washes(*place) && !told.contains(place)) else {
            continue;
        };
        told.push(place);
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} fixes at {} to {} °C, and the bath is at {}",
                    context.material(dyeing.dye).name,
                    number(window.low),
                    number(window.high),
                    warmest.show()
                ),
            )
            .noted(warmest, "the temperature")
            .figure(warmest)
            .help("Keep the bath in the window of the class: hotter, the dye binds to the water faster than to the cloth, and comes off again."),
        );
    }
}

/// Goods dipped into a bath of reactive dye with its alkali and taken out again.
fn dips(context: &Context<'_>, told: &mut Vec<Place>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::SoakUptake { mix: Some(mix), temperature, strength_actual: Some(_), .. } = &event.kind else {
            continue;
        };
        let hot = context.materials_of_mix(*mix).into_iter().find_map(|(id, _)| {
            let class = context.class(id).filter(|_| context.is_reactive(id))?;
            let window = class.fixation_celsius.as_ref()?;
            (temperature.value.low > window.high + ABOVE + 273.15).then_some((id, window))
        });
        let Some((dye, window)) = hot.filter(|_| told.is_empty() && !context.troubled_line(event.place)) else {
            continue;
        };
        told.push(event.place);
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} fixes at {} to {} °C, and {} is at {}",
                    context.material(dye).name,
                    number(window.low),
                    number(window.high),
                    context.recipe.mix(*mix).name.text,
                    temperature.show()
                ),
            )
            .noted(temperature, "the temperature")
            .figure(temperature)
            .help("Let it cool into the window of the class first: hotter, the dye binds to the water faster than to the cloth."),
        );
    }
}

/// Kelvins above the window.
const ABOVE: f64 = 20.0;
