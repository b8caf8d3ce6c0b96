//! Acid eats the soda.

use crate::bench::per_cent;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::FibreFamily;

pub(crate) const RULE: Rule = Rule {
    name: "acid-in-alkali-step",
    summary: "Acid is still there when the alkali has to work.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("acid_in_alkali_step.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for dyeing in context.dyeings() {
        if !context.is_reactive(dyeing.dye)
            || dyeing.usable.best <= 0.0
            || dyeing.acid.best <= SHARE * dyeing.usable.best
        {
            continue;
        }
        if context.share_of(dyeing.goods, FibreFamily::Cellulose).is_none_or(|share| share < 0.5) {
            continue;
        }
        let share = (dyeing.acid.best / dyeing.usable.best).min(1.0);
        found.push(
            Finding::new(
                &RULE,
                context.laid_at(dyeing),
                format!(
                    "acid on {} takes up {} of the alkali that the dye needs",
                    context.zone_name(dyeing.goods, dyeing.zone),
                    per_cent(libm::round(share * 100.0) / 100.0)
                ),
            )
            .figure(&dyeing.mass)
            .help("Rinse the acid out before the alkali comes, or add as much alkali as it takes up."),
        );
    }
}

/// Share of the usable alkali.
const SHARE: f64 = 0.15;
