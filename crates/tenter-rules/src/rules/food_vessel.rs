//! Dye in the soup pot.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::LiquorKind;
use tenter_resolve::recipe::Source;

pub(crate) const RULE: Rule = Rule {
    name: "food-vessel",
    summary: "A vessel that food touches is used for dye or chemicals.",
    group: Group::People,
    level: Level::Error,
    since: "1",
    page: include_str!("food_vessel.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let vessels = [
            match step.liquor.as_ref().map(|liquor| &liquor.kind) {
                Some(LiquorKind::Vessel(id)) => Some(*id),
                _ => None,
            },
            match &step.source {
                Some(Source::Vessel(id)) => Some(*id),
                _ => None,
            },
        ];
        for id in vessels.into_iter().flatten() {
            let Some(vessel) = context.recipe.vessels.get(id.0) else { continue };
            let Some((true, said)) = vessel.food else { continue };
            if found
                .iter()
                .any(|have| have.rule == RULE.name && have.notes.first().is_some_and(|note| note.place == said))
            {
                continue;
            }
            found.push(
                Finding::new(&RULE, step.place, format!("{} is used here, and food touches it too", vessel.name.text))
                    .note(said, "said here")
                    .help("Keep pots, spoons, cups and machines for dyeing apart from the kitchen for good, and write `food never`."),
            );
        }
    }
}
