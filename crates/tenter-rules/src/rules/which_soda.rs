//! Two powders of one name.

use crate::finding::Fix;
use tenter_resolve::recipe::{Ingredient, LiquorKind, Substance};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "which-soda",
    summary: "`washing soda`: crystals or powder, of which one holds nearly three times as much alkali.",
    group: Group::Alkali,
    level: Level::Advice,
    since: "1",
    page: include_str!("which_soda.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mixes = context.recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
    let steps = context.steps().flat_map(|step| {
        let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(inside)) => inside.as_slice(),
            _ => &[],
        };
        step.applied.iter().chain(&step.with).chain(bath)
    });
    let both: Vec<&Ingredient> = mixes.chain(steps).collect();
    for ingredient in both {
        let Substance::Material(id) = ingredient.what else { continue };
        let decahydrate = context.material(id).reference.is_some_and(|entry| entry.id == "washing-soda");
        let written = context.text(ingredient.name_place);
        if !decahydrate || !DOUBTFUL.iter().any(|word| written.eq_ignore_ascii_case(word)) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                ingredient.name_place,
                format!("`{written}` is taken as the crystals, of which 37% is sodium carbonate; packs of that name may hold the powder, which is all of it"),
            )
            .help("Look at the pack: `sodium carbonate decahydrate` for crystals, `soda ash` for powder.")
            .fix(Fix::replace(ingredient.name_place, "sodium carbonate decahydrate", false))
            .fix(Fix::replace(ingredient.name_place, "soda ash", false)),
        );
        return;
    }
}

/// Household names that are given to both.
const DOUBTFUL: [&str; 3] = ["washing soda", "soda crystals", "sal soda"];
