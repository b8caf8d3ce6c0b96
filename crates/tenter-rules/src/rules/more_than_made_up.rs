//! More in than comes out.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::{Dimension, Interval};

pub(crate) const RULE: Rule = Rule {
    name: "more-than-made-up",
    summary: "What goes into a mix is more than it is made up to.",
    group: Group::Amounts,
    level: Level::Error,
    since: "1",
    page: include_str!("more_than_made_up.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for mix in &context.recipe.mixes {
        let Some(whole) = &mix.made_up_to else { continue };
        if context.troubled_block(mix.name.place) {
            continue;
        }
        let by_mass = whole.dimension == Dimension::Mass;
        let parts: Option<Vec<Interval>> = mix
            .ingredients
            .iter()
            .map(|ingredient| {
                let amount = ingredient.amount.as_ref()?;
                if by_mass {
                    amount.mass.as_ref().map(|mass| mass.value)
                } else if amount.by_volume_of_solid {
                    None
                } else {
                    amount.volume.as_ref().map(|volume| volume.value).or_else(|| {
                        // What is weighed takes at least a third of its weight in volume once dissolved.
                        amount.mass.as_ref().map(|mass| {
                            Interval::new(mass.value.low / 3000.0, mass.value.best / 1600.0, mass.value.high / 1000.0)
                        })
                    })
                }
            })
            .collect();
        let Some(parts) = parts else { continue };
        let sum: Interval = parts.into_iter().sum();
        if sum.low <= whole.value.high * MARGIN {
            continue;
        }
        let shown = if by_mass { crate::bench::grams(sum) } else { crate::bench::litres(sum.best) };
        let place = whole.place().unwrap_or(mix.name.place);
        found.push(
            Finding::new(&RULE, place, format!("the lines of {} come to {shown}, and it is made up to {}", mix.name.text, whole.show()))
                .figure(whole)
                .help("Look for g against kg and mL against L, or take less water: what is made up to the mark includes everything in it."),
        );
    }
}

/// Let pass for rounding.
const MARGIN: f64 = 1.01;
