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
    let Some((Evenness::Level, said)) = context.recipe.header.shade else { return };
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
