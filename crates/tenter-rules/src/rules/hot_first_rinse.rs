//! Hot too soon.

use crate::bench::grams;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::FibreFamily;
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "hot-first-rinse",
    summary: "The first rinse is hot while soda and loose dye are still in the cloth.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("hot_first_rinse.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Rinse { goods, first: true, temperature, alkali_before, loose_before, dye: true, .. } =
            &event.kind
        else {
            continue;
        };
        if temperature.value.best <= HOT
            || loose_before.best <= 0.0
            || !context.dyeings().any(|dyeing| dyeing.goods == *goods && context.is_reactive(dyeing.dye))
            || context.share_of(*goods, FibreFamily::Cellulose).is_none_or(|share| share < 0.5)
            || context.troubled_line(event.place)
        {
            continue;
        }
        if found.iter().any(|have| have.rule == RULE.name && have.place == event.place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                if alkali_before.best > 0.0 {
                    format!("{} go into water of {} with {} of soda and all their loose dye", context.goods_name(*goods), temperature.show(), grams(*alkali_before))
                } else {
                    format!("{} go into water of {} with all their loose dye", context.goods_name(*goods), temperature.show())
                },
            )
            .figure(temperature)
            .help("Rinse cold first, until the water runs nearly clear; then hot. Hot alkaline water fixes loose dye where it lands and eats into what has bound."),
        );
    }
}

/// 45 °C in K.
const HOT: f64 = 318.15;
