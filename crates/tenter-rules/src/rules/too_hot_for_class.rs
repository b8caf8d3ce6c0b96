//! Too hot a bath.

use crate::bench::number;
use crate::context::Context;
use crate::dips::dips;
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
    hot_dips(context, &mut told, found);
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

/// Goods dipped into a hot bath of reactive dye, with alkali in it or on them, and taken out again.
fn hot_dips(context: &Context<'_>, told: &mut Vec<Place>, found: &mut Vec<Finding>) {
    for dip in dips(context) {
        let Some(window) = context.class(dip.dyeing.dye).and_then(|class| class.fixation_celsius.as_ref()) else {
            continue;
        };
        let temperature = &dip.bath.temperature;
        if temperature.value.low <= window.high + ABOVE + 273.15
            || dip.dyeing.usable.best <= 0.0
            || told.contains(&dip.place)
            || context.troubled_line(dip.place)
        {
            continue;
        }
        told.push(dip.place);
        found.push(
            Finding::new(
                &RULE,
                dip.place,
                format!(
                    "{} fixes at {} to {} °C, and the bath to dip into is at {}",
                    context.material(dip.dyeing.dye).name,
                    number(window.low),
                    number(window.high),
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
