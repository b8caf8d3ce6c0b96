//! Acid dye wants heat.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::{DyeFamily, FibreFamily};
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
        if !acid || context.share_of(goods, FibreFamily::Protein).is_none_or(|share| share < 0.5) {
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
        let Some(hottest) = hottest.filter(|hottest| hottest.value.high < HOT_ENOUGH) else { continue };
        if found.iter().any(|have| have.rule == RULE.name) {
            return;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is an acid dye, and nothing here gets hotter than {}",
                    context.material(dye).name,
                    hottest.show()
                ),
            )
            .noted(hottest, "the hottest there is")
            .figure(hottest)
            .help("Bring it slowly to 85 to 95 °C and hold it there for half an hour or more, or steam it."),
        );
    }
}

/// 70 °C in K.
const HOT_ENOUGH: f64 = 343.15;
