//! A bath too small to lie in.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "bath-cannot-cover",
    summary: "Goods are immersed in less liquor than covers them.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("bath_cannot_cover.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Immersed { goods, liquor_ratio: Some(ratio), .. } = &event.kind else { continue };
        if ratio.value.best >= LEAST
            || !context.verb_at(event.place).is_some_and(|verb| VERBS.contains(&verb))
            || context.troubled_line(event.place)
            || found.iter().any(|have| have.rule == RULE.name && have.place == event.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} of liquor for each kilogram of {}: it does not cover them",
                    crate::bench::litres(ratio.value.best),
                    context.goods_name(*goods)
                ),
            )
            .figure(ratio)
            .help(format!("Take at least {} L for each kilogram, or pour the liquor over the goods in a tub. Look for mL where L was meant.", number(LEAST * 2000.0))),
        );
    }
}

/// m³ for a kilogram.
const LEAST: f64 = 2.5e-3;
/// Verbs that put goods under a liquor and leave them there; `soak` may be a padding.
const VERBS: [&str; 7] = ["immerse", "dye", "simmer", "boil", "strip", "bleach", "dip"];
