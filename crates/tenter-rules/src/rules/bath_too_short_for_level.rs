//! Crowded in the bath.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::Evenness;

pub(crate) const RULE: Rule = Rule {
    name: "bath-too-short-for-level",
    summary: "Too little bath for a level shade.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("bath_too_short_for_level.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let said = match context.recipe.header.shade {
        Some((Evenness::Level, said)) => Some(said),
        Some(_) => None,
        None => {
            exhausting(context, found);
            None
        }
    };
    let Some(said) = said else { return };
    for event in context.events() {
        let EventKind::Immersed { goods, liquor_ratio: Some(ratio), dye, .. } = &event.kind else { continue };
        if dye.best <= 0.0
            || ratio.value.high >= LEAST
            || context.washes(event.place)
            || context.troubled_line(event.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} have {} L of bath for each kilogram, and the shade is to be level",
                    context.goods_name(*goods),
                    number(ratio.value.best * 1000.0)
                ),
            )
            .note(said, "a level shade is wanted")
            .figure(ratio)
            .help("Take 15 to 30 L for each kilogram so that they can move, and keep them moving."),
        );
    }
}

/// m³ for a kilogram.
const LEAST: f64 = 8e-3;

/// Nothing is said of the shade, but the bath is salted or heated as for a plain one, and the goods are packed into it.
fn exhausting(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Immersed { goods, liquor, liquor_ratio: Some(ratio), dye, salt, .. } = &event.kind else {
            continue;
        };
        // A padding is short by nature: through the liquor and out again.
        if !context.verb_at(event.place).is_some_and(|verb| matches!(verb, "immerse" | "dye" | "simmer" | "boil")) {
            continue;
        }
        let heated = || {
            context.events().find_map(|other| match &other.kind {
                EventKind::BathTemperature { liquor: at, from, to, goods_inside: true, .. }
                    if at == liquor && to.value.low - from.value.high > HEATED =>
                {
                    Some(other.place)
                }
                _ => None,
            })
        };
        if dye.best <= 0.0
            || ratio.value.high >= PACKED
            || context.washes(event.place)
            || context.troubled_line(event.place)
        {
            continue;
        }
        let sign = if salt.low >= SALTED { Some(event.place) } else { heated() };
        let Some(sign) = sign.filter(|_| found.iter().all(|have| have.rule != RULE.name)) else { continue };
        let mut finding = Finding::new(
            &RULE,
            event.place,
            format!(
                "{} have {} L of bath for each kilogram: too little to move in, and the dye goes on in clouds",
                context.goods_name(*goods),
                number(ratio.value.best * 1000.0)
            ),
        )
        .figure(ratio)
        .help("Take 15 to 30 L for each kilogram. If clouds are what you want, write `shade mottled` in the recipe block.");
        if sign != event.place {
            finding = finding.note(sign, "heated here, as for a plain shade");
        }
        found.push(finding);
    }
}

/// m³ for a kilogram: goods packed like this cannot move.
const PACKED: f64 = 6e-3;
/// kg/m³ of salt, as in a bath that is to be exhausted.
const SALTED: f64 = 20.0;
/// K.
const HEATED: f64 = 15.0;
