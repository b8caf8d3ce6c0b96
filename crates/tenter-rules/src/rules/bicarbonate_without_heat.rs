//! Bicarbonate wants steam.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::FibreFamily;
use tenter_rehearse::Dyeing;

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
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        let weak_only = dyeing.base.best > 0.0 && dyeing.usable.best <= 0.02 * dyeing.base.best;
        let hot = dyeing.warmest.as_ref().is_some_and(|(warmest, _)| warmest.value.best >= HOT);
        if !cellulose || !context.is_reactive(dyeing.dye) || !weak_only || hot || dyeing.steamed {
            continue;
        }
        let weak = weak(context, dyeing);
        // One packet of bicarbonate is one mistake, however many dyes and zones it lets down.
        let from = (dyeing.goods, weak.and_then(|figure| figure.places().first().copied()));
        if told.contains(&from) {
            continue;
        }
        told.push(from);
        let warm = dyeing.warmest.as_ref().map_or_else(String::new, |(warmest, _)| format!(" at {}", warmest.show()));
        let finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!(
                "bicarbonate is the only alkali on {}, and the dye stays{}",
                context.zone_name(dyeing.goods, dyeing.zone),
                if warm.is_empty() { " cold".to_owned() } else { warm }
            ),
        )
        .figure(&dyeing.mass)
        .help("Steam it (100 °C) so that the bicarbonate turns into soda, or use soda ash instead.");
        found.push(match weak {
            Some(figure) => finding.noted(figure, "the bicarbonate is written here").figure(figure),
            None => finding,
        });
    }
}

/// The bicarbonate that is with a dye.
fn weak<'a>(context: &Context<'_>, dyeing: &'a Dyeing) -> Option<&'a Figure> {
    let cloth = dyeing.zone_then.as_ref().map(|zone| &zone.contents);
    let contents = cloth.or(dyeing.bath_then.as_ref().map(|bath| &bath.contents))?;
    let mut parts = contents.parts.iter();
    parts
        .find(|(id, mass)| context.material(*id).name.contains("bicarbonate") && mass.value.best > 0.0)
        .map(|(_, figure)| figure)
}

/// 70 °C in K: bicarbonate gives off carbon dioxide noticeably above it (common practice, no source).
const HOT: f64 = 343.15;
