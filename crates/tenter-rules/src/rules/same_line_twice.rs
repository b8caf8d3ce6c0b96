//! A line copied once too often.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "same-line-twice",
    summary: "The same amount of the same material twice in one mix.",
    group: Group::Amounts,
    level: Level::Warning,
    since: "1",
    page: include_str!("same_line_twice.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for mix in &context.recipe.mixes {
        for (at, later) in mix.ingredients.iter().enumerate() {
            let water = match later.what {
                tenter_resolve::recipe::Substance::Material(id) => context.material(id).is_water(),
                tenter_resolve::recipe::Substance::Mix(_) => false,
            };
            let words = |each: &tenter_resolve::recipe::Ingredient| -> Vec<String> {
                context.text(each.place).split_whitespace().map(str::to_lowercase).collect()
            };
            let earlier = mix.ingredients.iter().take(at).find(|earlier| {
                earlier.what == later.what && earlier.amount.is_some() && words(earlier) == words(later)
            });
            let Some(earlier) = earlier.filter(|_| !water) else { continue };
            found.push(
                Finding::new(
                    &RULE,
                    later.place,
                    format!("`{}` stands twice in {}, and both count", words(later).join(" "), mix.name.text),
                )
                .note(earlier.place, "here for the first time")
                .help(
                    "Take one of the two out. If it goes in at two times, add the second portion in a step of its own.",
                ),
            );
        }
    }
}
