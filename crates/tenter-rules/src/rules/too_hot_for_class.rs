//! Too hot a bath.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
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

/// Kelvins above the window.
const ABOVE: f64 = 20.0;
