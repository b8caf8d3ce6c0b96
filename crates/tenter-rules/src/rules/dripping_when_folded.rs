//! No room for the dye.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "dripping-when-folded",
    summary: "Goods are folded dripping wet, and dye is squirted on.",
    group: Group::WaterAndSalt,
    level: Level::Advice,
    since: "1",
    page: include_str!("dripping_when_folded.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Shaped { goods, water_ratio, .. } = &event.kind else { continue };
        if water_ratio.best < DRIPPING || context.troubled_line(event.place) {
            continue;
        }
        let squirted = context.steps().skip_while(|step| step.place != event.place).find(|step| {
            step.goods.contains(goods)
                && step.verb.is_some_and(|verb| matches!(verb.name, "squirt" | "spray" | "brush"))
        });
        let Some(squirted) = squirted else { continue };
        if found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} are folded with about {}% water, as much as they hold: there is little room for what is squirted on",
                    context.goods_name(*goods),
                    number(libm::round(water_ratio.best * 10.0) * 10.0)
                ),
            )
            .note(squirted.place, "squirted on here")
            .help("Wring or spin them first (`spin tees to 65% pickup`), and write what they hold then."),
        );
    }
}

/// Water held, kg/kg.
const DRIPPING: f64 = 1.8;
