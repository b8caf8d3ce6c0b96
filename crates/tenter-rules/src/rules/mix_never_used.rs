//! Made, and not used.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "mix-never-used",
    summary: "A mix that no step and no other mix draws on.",
    group: Group::Amounts,
    level: Level::Warning,
    since: "1",
    page: include_str!("mix_never_used.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let recipe = context.recipe;
    if !recipe.is_recipe() || context.steps().next().is_none() {
        return;
    }
    for mix in &recipe.mixes {
        if mix.shared
            || !mix.draws.is_empty()
            || context.named_in_trouble(&mix.name.text)
            || context.unknown_mix_named()
        {
            continue;
        }
        let what = if mix.ingredients.is_empty() { "is empty and" } else { "is" };
        let finding = Finding::new(&RULE, mix.name.place, format!("{} {what} used by no step and no other mix", mix.name.text))
            .help("Use it (`soak … in`, `squirt … from`, `add … to`), or take it away: what it holds is in the weighing list.");
        found.push(match mix.made_by_step {
            Some(place) => finding.note(place, "it is made here"),
            None => finding,
        });
    }
}
