//! Bicarbonate wants steam.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::FibreFamily;

pub(crate) const RULE: Rule = Rule {
    name: "bicarbonate-without-heat",
    summary: "Bicarbonate is the only alkali, and no heat turns it into soda.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("bicarbonate_without_heat.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for dyeing in context.dyeings() {
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        let weak_only = dyeing.base.best > 0.0 && dyeing.usable.best <= 0.02 * dyeing.base.best;
        let hot = dyeing.warmest.as_ref().is_some_and(|(warmest, _)| warmest.value.best >= HOT);
        if !cellulose || !context.is_reactive(dyeing.dye) || !weak_only || hot || dyeing.steamed {
            continue;
        }
        let warm = dyeing.warmest.as_ref().map_or_else(String::new, |(warmest, _)| format!(" at {}", warmest.show()));
        let then = dyeing
            .zone_then
            .as_ref()
            .map(|zone| &zone.contents)
            .or(dyeing.bath_then.as_ref().map(|bath| &bath.contents));
        let weak = then.and_then(|contents| {
            contents
                .parts
                .iter()
                .find(|(id, mass)| context.material(*id).name.contains("bicarbonate") && mass.value.best > 0.0)
        });
        let finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!(
                "{} has only bicarbonate for an alkali, and stays{}",
                context.zone_name(dyeing.goods, dyeing.zone),
                if warm.is_empty() { " cold".to_owned() } else { warm }
            ),
        )
        .figure(&dyeing.mass)
        .help("Steam it (100 °C) so that the bicarbonate turns into soda, or use soda ash instead.");
        found.push(match weak {
            Some((_, figure)) => finding.noted(figure, "the bicarbonate is written here").figure(figure),
            None => finding,
        });
    }
}

/// 70 °C in K: bicarbonate gives off carbon dioxide noticeably above it (common practice, no source).
const HOT: f64 = 343.15;
