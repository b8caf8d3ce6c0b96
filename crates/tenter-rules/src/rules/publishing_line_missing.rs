//! Half a title page.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use crate::say::list;

pub(crate) const RULE: Rule = Rule {
    name: "publishing-line-missing",
    summary: "Some of author, licence and version are given, but not all three.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("publishing_line_missing.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let recipe = context.recipe;
    if !recipe.is_recipe() || recipe.variant.is_some() {
        return;
    }
    let lines = [
        (&recipe.header.by, "`by`", "Without a name nobody can be asked about it"),
        (&recipe.header.licence, "`licence`", "Without a licence nobody else may pass it on"),
        (&recipe.header.version, "`version`", "Without a version nobody can tell an old copy from a new one"),
    ];
    let given: Vec<&str> = lines.iter().filter(|line| line.0.is_some()).map(|line| line.1).collect();
    let lacking: Vec<&str> = lines.iter().filter(|line| line.0.is_none()).map(|line| line.1).collect();
    let Some(first) = lines.iter().find_map(|line| line.0.as_ref()) else { return };
    let place = context.whole_line(first.place);
    // A name alone is how people sign what they keep to themselves.
    let private = recipe.header.licence.is_none() && recipe.header.version.is_none();
    if private || lacking.is_empty() || context.troubled_block(place) {
        return;
    }
    let why: Vec<&str> = lines.iter().filter(|line| line.0.is_none()).map(|line| line.2).collect();
    found.push(
        Finding::new(
            &RULE,
            place,
            format!("the recipe gives {}, but no {}", list(&given, "and"), list(&lacking, "and no")),
        )
        .help(format!("{}. Add what is missing before you publish it.", why.join(". "))),
    );
}
