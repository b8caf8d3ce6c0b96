//! Cooked vat.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::DyeFamily;
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "vat-too-hot",
    summary: "A vat is hotter than its dye and its reducing agent bear.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("vat_too_hot.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let Some(class) = context.class(dyeing.dye) else { continue };
        if !matches!(class.family, DyeFamily::Vat | DyeFamily::Indigo) || told.contains(&dyeing.dye) {
            continue;
        }
        let Some(window) = class.fixation_celsius.as_ref() else { continue };
        let most = window.high + ABOVE + 273.15;
        let hot = context.events().find_map(|event| {
            let temperature = match &event.kind {
                EventKind::Immersed { temperature, dye, .. } if dye.best > 0.0 => temperature,
                EventKind::SoakUptake { temperature, mix: Some(mix), .. }
                    if context.materials_of_mix(*mix).iter().any(|(id, _)| *id == dyeing.dye) =>
                {
                    temperature
                }
                _ => return None,
            };
            (temperature.value.low > most && !context.washes(event.place)).then_some((event.place, temperature))
        });
        let Some((place, temperature)) = hot else { continue };
        told.push(dyeing.dye);
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "the vat of {} is at {}; {} is dyed at {} to {} °C",
                    context.material(dyeing.dye).name,
                    temperature.show(),
                    class.name,
                    number(window.low),
                    number(window.high)
                ),
            )
            .noted(temperature, "the temperature")
            .figure(temperature)
            .help("Let it cool first. In a hotter vat the reducing agent is used up in minutes and the dye goes on unevenly, or is reduced too far and lost."),
        );
    }
}

/// Kelvins above the window of the class.
const ABOVE: f64 = 10.0;
