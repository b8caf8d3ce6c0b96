//! A wash in a teacup.

use crate::bench::litres;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::{LiquorKind, Step};

pub(crate) const RULE: Rule = Rule {
    name: "wash-bath-too-small",
    summary: "Goods are scoured, soaped or washed in less water than wets them.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("wash_bath_too_small.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let Some(verb) =
            step.verb.filter(|verb| matches!(verb.name, "scour" | "soap off" | "wash" | "bleach" | "strip"))
        else {
            continue;
        };
        if context.troubled_line(step.place) || context.doubtful_weight() {
            continue;
        }
        let Some(volume) = volume(step) else { continue };
        let dry: f64 =
            step.goods.iter().filter_map(|id| context.goods(*id)?.dry_mass.as_ref()).map(|mass| mass.value.low).sum();
        if dry <= 0.0 || volume / dry >= LEAST {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!("{} in {} for {}: the cloth alone soaks up more", verb.name, litres(volume), crate::bench::grams(tenter_quantity::Interval::exact(dry))),
            )
            .help("Take 8 to 20 L for each kilogram, so that what comes off has water to go to. Look for a slip: mL for L, each for all."),
        );
    }
}

/// m³ of the bath written on the line.
fn volume(step: &Step) -> Option<f64> {
    let Some(LiquorKind::Bath(inside)) = step.liquor.as_ref().map(|liquor| &liquor.kind) else { return None };
    let mut all = 0.0;
    for ingredient in inside {
        all += ingredient.amount.as_ref()?.volume.as_ref()?.value.high;
    }
    (all > 0.0).then_some(all)
}

/// m³ for a kilogram: below it the cloth is not even wet through.
const LEAST: f64 = 2e-3;
