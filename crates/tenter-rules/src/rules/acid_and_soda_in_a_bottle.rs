//! A bottle that bursts.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;
use tenter_resolve::recipe::{MixId, Substance};

pub(crate) const RULE: Rule = Rule {
    name: "acid-and-soda-in-a-bottle",
    summary: "An acid and a carbonate together in a bottle set gas free.",
    group: Group::People,
    level: Level::Warning,
    since: "1",
    page: include_str!("acid_and_soda_in_a_bottle.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (index, mix) in context.recipe.mixes.iter().enumerate() {
        let id = MixId(index);
        let drawn = context.steps().find(|step| {
            step.verb.is_some_and(|verb| matches!(verb.name, "squirt" | "spray"))
                && step.applied.iter().any(|each| each.what == Substance::Mix(id))
        });
        let Some(drawn) = drawn else { continue };
        let materials = context.materials_of_mix(id);
        let acid = materials.iter().find(|(id, _)| context.material(*id).role() == Role::Acid);
        let soda = materials.iter().find(|(id, _)| {
            context
                .material(*id)
                .reference
                .is_some_and(|entry| entry.hazard_groups.iter().any(|group| group == "carbonate"))
        });
        let (Some((acid, at)), Some((soda, there))) = (acid, soda) else { continue };
        found.push(
            Finding::new(
                &RULE,
                *at,
                format!(
                    "{} and {} both go into {}: carbon dioxide froths up, and a closed bottle bursts",
                    context.material(*acid).name,
                    context.material(*soda).name,
                    mix.name.text
                ),
            )
            .note(*there, format!("{} is here", context.material(*soda).name))
            .note(drawn.place, "used from a bottle here")
            .help("Leave one of the two out. A reactive dye on cotton wants the soda; acid is for wool, or for a rinse of its own."),
        );
    }
}
