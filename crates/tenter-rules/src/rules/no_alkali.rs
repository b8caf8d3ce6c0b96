//! Reactive dye without alkali.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{FibreFamily, Role};

pub(crate) const RULE: Rule = Rule {
    name: "no-alkali",
    summary: "A reactive dye on cellulose, and no alkali anywhere near it.",
    group: Group::Alkali,
    level: Level::Error,
    since: "1",
    page: include_str!("no_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        if !context.is_reactive(dyeing.dye) || told.contains(&dyeing.goods) {
            continue;
        }
        // On wool and silk reactive dyes go on with acid.
        if context.share_of(dyeing.goods, FibreFamily::Cellulose).is_none_or(|share| share < 0.5) {
            continue;
        }
        let then = dyeing
            .zone_then
            .as_ref()
            .map(|zone| &zone.contents)
            .or(dyeing.bath_then.as_ref().map(|bath| &bath.contents));
        let any =
            then.is_some_and(|contents| context.holds(contents, Role::Alkali) || context.holds(contents, Role::Buffer));
        let elsewhere = context.dyeings().any(|other| {
            other.goods == dyeing.goods && other.dye == dyeing.dye && (other.usable.high > 0.0 || other.base.high > 0.0)
        });
        if any || elsewhere || dyeing.usable.high > 0.0 || dyeing.base.high > 0.0 {
            continue;
        }
        told.push(dyeing.goods);
        let name = &context.material(dyeing.dye).name;
        let goods = context.goods_name(dyeing.goods);
        let mut finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!("{name} is a reactive dye, and no alkali reaches {goods}: it will wash out"),
        )
        .figure(&dyeing.mass)
        .help("Soak the goods in 30 to 67 g/L soda ash before (common practice), or put soda ash into the bottle or bath; then let it react.");
        if let Some(place) = context.material(dyeing.dye).class_place {
            finding = finding.note(place, "its class is written here");
        }
        found.push(finding);
    }
}
