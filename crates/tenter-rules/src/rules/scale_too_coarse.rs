//! Too little to weigh.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::Substance;

pub(crate) const RULE: Rule = Rule {
    name: "scale-too-coarse",
    summary: "An amount too small to weigh well.",
    group: Group::Amounts,
    level: Level::Advice,
    since: "1",
    page: include_str!("scale_too_coarse.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for mix in &context.recipe.mixes {
        for ingredient in &mix.ingredients {
            let Substance::Material(id) = ingredient.what else { continue };
            let Some(mass) = ingredient.amount.as_ref().and_then(|amount| amount.mass.as_ref()) else { continue };
            if !context.material(id).is_dye
                || context.material(id).liquid
                || mass.value.best <= 0.0
                || mass.value.high >= LEAST
            {
                continue;
            }
            found.push(
                Finding::new(
                    &RULE,
                    ingredient.place,
                    format!("{} of {}: a kitchen scale shows steps of 0.1 g", mass.show(), context.material(id).name),
                )
                .figure(mass)
                .help("Make a stock, 1 g in 100 mL of water, and measure millilitres of it."),
            );
        }
    }
}

/// kg.
const LEAST: f64 = 5e-4;
