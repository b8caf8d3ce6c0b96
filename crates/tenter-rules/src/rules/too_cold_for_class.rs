//! A hot dye left cold.

use crate::bench::{bath_of, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::{DyeFamily, FibreFamily};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{GoodsId, MaterialId};

pub(crate) const RULE: Rule = Rule {
    name: "too-cold-for-class",
    summary: "A class of dye that needs heat never gets it.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_cold_for_class.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for (goods, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let Some((low, high, warmest)) = too_cold(context, goods, dye) else { continue };
        if found.iter().any(|have| have.rule == RULE.name && have.place == place) {
            continue;
        }
        let mut finding = Finding::new(
            &RULE,
            place,
            format!(
                "{} fixes at {} to {} °C, and never gets warmer than {}",
                context.material(dye).name,
                number(low),
                number(high),
                warmest.show()
            ),
        )
        .figure(&warmest)
        .help("Dye it in a hot bath, steam it, or take a class that fixes in the cold.");
        if let Some(class) = context.material(dye).class_place {
            finding = finding.note(class, "the class is written here");
        }
        found.push(finding);
    }
}

/// The window of a hot class, °C, and the warmest a dye of it gets, where that is too cold.
pub(crate) fn too_cold(context: &Context<'_>, goods: GoodsId, dye: MaterialId) -> Option<(f64, f64, Figure)> {
    let class = context.class(dye)?;
    let window = class.fixation_celsius.as_ref().filter(|window| window.low >= HOT_CLASS)?;
    let cold_class = class.room_temperature.as_ref().is_none_or(|room| room.value);
    let cellulose = context.share_of(goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
    if !(context.is_reactive(dye) || class.family == DyeFamily::Direct) || cold_class || !cellulose {
        return None;
    }
    let mut warmest: Option<&Figure> = None;
    let mut steamed = false;
    for dyeing in context.dyeings().filter(|dyeing| dyeing.goods == goods && dyeing.dye == dye) {
        steamed |= dyeing.steamed;
        let on_cloth = dyeing.warmest.as_ref().map(|(figure, _)| figure);
        let bathed = bath_of(context, dyeing).map(|(index, _)| index);
        let in_bath = context.events().filter_map(|event| match (&event.kind, bathed) {
            (EventKind::Immersed { liquor, temperature, .. }, Some(bath)) if *liquor == bath => Some(temperature),
            (EventKind::BathTemperature { liquor, to, .. }, Some(bath)) if *liquor == bath => Some(to),
            (EventKind::Batch { goods: lying, surroundings, .. }, _) if *lying == goods => Some(surroundings),
            _ => None,
        });
        for figure in on_cloth.into_iter().chain(in_bath) {
            if warmest.is_none_or(|most| figure.value.best > most.value.best) {
                warmest = Some(figure);
            }
        }
    }
    let warmest = warmest.filter(|warmest| !steamed && warmest.value.best - 273.15 < window.low - BELOW)?;
    Some((window.low, window.high, warmest.clone()))
}

/// °C: the lowest window of a hot class.
const HOT_CLASS: f64 = 60.0;
/// Kelvins below the window.
const BELOW: f64 = 20.0;
