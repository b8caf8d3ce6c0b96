//! Acid dye wants heat.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::{DyeFamily, Uptake};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "acid-dye-too-cold",
    summary: "An acid dye is never brought hot enough to go on.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("acid_dye_too_cold.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for (goods, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let acid = context.class(dye).is_some_and(|class| class.family == DyeFamily::Acid);
        if !acid || !takes_acid(context, goods) {
            continue;
        }
        let mut hottest: Option<&Figure> = None;
        for event in context.events() {
            let temperature = match &event.kind {
                EventKind::BathTemperature { to, .. } => to,
                EventKind::Immersed { temperature, .. } => temperature,
                EventKind::Heated { temperature, .. } => temperature,
                _ => continue,
            };
            if hottest.is_none_or(|most| temperature.value.best > most.value.best) {
                hottest = Some(temperature);
            }
        }
        if hottest.is_some_and(|hottest| hottest.value.high >= HOT_ENOUGH) {
            continue;
        }
        if found.iter().any(|have| have.rule == RULE.name) {
            return;
        }
        let name = &context.material(dye).name;
        let message = hottest.map_or_else(
            || format!("{name} is an acid dye, and nothing heats the goods once it is on them"),
            |hottest| format!("{name} is an acid dye, and nothing here gets hotter than {}", hottest.show()),
        );
        let mut finding = Finding::new(&RULE, place, message);
        if let Some(hottest) = hottest {
            finding = finding.noted(hottest, "the hottest there is").figure(hottest);
        }
        found.push(
            finding.help("Bring it slowly to 85 to 95 °C and hold it there for half an hour or more, or steam it."),
        );
    }
}

/// Wool, silk and nylon: at least half of the goods.
fn takes_acid(context: &Context<'_>, goods: tenter_resolve::recipe::GoodsId) -> bool {
    context.goods(goods).is_some_and(|goods| {
        let taking = goods.fibres.iter().filter(|part| {
            part.fibre.and_then(|fibre| fibre.takes(DyeFamily::Acid)).is_some_and(|how| how.uptake == Uptake::Yes)
        });
        taking.map(|part| part.share.value.best).sum::<f64>() >= 0.5
    })
}

/// 70 °C in K.
const HOT_ENOUGH: f64 = 343.15;
