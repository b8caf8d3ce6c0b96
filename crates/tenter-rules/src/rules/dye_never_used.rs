//! A dye on the list and not in the pot.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::{LiquorKind, Source, Substance};

pub(crate) const RULE: Rule = Rule {
    name: "dye-never-used",
    summary: "A dye the recipe describes and never uses.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("dye_never_used.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let recipe = context.recipe;
    if !recipe.is_recipe()
        || context.troubled_steps()
        || context.troubled_mixes()
        || context.unknown_mix_named()
        || context.steps().next().is_none()
    {
        return;
    }
    for (index, material) in recipe.materials.iter().enumerate() {
        let Some(declared) = material.declared.filter(|_| material.is_dye) else { continue };
        // A house file brings all its dyes; what counts is a dye written for this recipe.
        let own = context.sheet.blocks.get(declared.block as usize).is_some_and(|entry| !entry.shared);
        if !own || context.named_in_trouble(&material.name) || used(context, index) {
            continue;
        }
        let finding = Finding::new(&RULE, declared, format!("no mix and no step uses {}", material.name))
            .help("Use it, or take it away. If it was meant, look for another dye written twice.");
        // Where no other dye reaches the goods either, it was meant.
        let coloured = context.rehearsal.dyeings.iter().any(|dyeing| dyeing.mass.value.best > 0.0);
        found.push(if coloured { finding } else { finding.level(Level::Warning) });
    }
}

fn used(context: &Context<'_>, index: usize) -> bool {
    let is = |what: &Substance| matches!(what, Substance::Material(id) if id.0 == index);
    let mixes = context.recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
    let in_steps = context.steps().any(|step| {
        let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(inside)) => inside.as_slice(),
            _ => &[],
        };
        let from = matches!(step.source, Some(Source::Mix(_)));
        !from && step.applied.iter().any(|one| is(&one.what)) || step.with.iter().chain(bath).any(|one| is(&one.what))
    });
    in_steps || mixes.into_iter().any(|one| is(&one.what))
}
