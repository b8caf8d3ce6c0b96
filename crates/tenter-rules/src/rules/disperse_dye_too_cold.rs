//! A disperse dye that stays outside.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::{DyeFamily, FibreFamily};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "disperse-dye-too-cold",
    summary: "A disperse dye on polyester that never comes near the boil.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("disperse_dye_too_cold.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for (goods, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let disperse = context.class(dye).is_some_and(|class| class.family == DyeFamily::Disperse);
        let polyester = context.share_of(goods, FibreFamily::Synthetic).is_some_and(|share| share >= 0.5);
        // Nylon and acetate take it cooler.
        let named = context.goods(goods).is_some_and(|goods| {
            goods.fibres.iter().any(|part| part.fibre.is_some_and(|fibre| fibre.id == "polyester"))
        });
        if !disperse || !polyester || !named || found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        let mut hottest: Option<&Figure> = None;
        for event in context.events() {
            let temperature = match &event.kind {
                EventKind::BathTemperature { to, .. } => to,
                EventKind::Immersed { temperature, .. } | EventKind::Heated { temperature, .. } => temperature,
                _ => continue,
            };
            if hottest.is_none_or(|most| temperature.value.best > most.value.best) && !context.washes(event.place) {
                hottest = Some(temperature);
            }
        }
        let Some(hottest) = hottest.filter(|hottest| hottest.value.high < HOT_ENOUGH) else { continue };
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is a disperse dye on polyester, and nothing here gets hotter than {}",
                    context.material(dye).name,
                    hottest.show()
                ),
            )
            .noted(hottest, "the hottest there is")
            .figure(hottest)
            .help("Bring it to the boil with a carrier and hold it there for an hour or more, or set it by heat as its supplier says."),
        );
    }
}

/// 85 °C in K.
const HOT_ENOUGH: f64 = 358.15;
