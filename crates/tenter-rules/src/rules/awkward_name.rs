//! A name that is a verb or a unit too.

use tenter_resolve::recipe::Named;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "awkward-name",
    summary: "A name that is also a word of the notation.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("awkward_name.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let recipe = context.recipe;
    let zones = recipe.layouts.iter().flat_map(|layout| &layout.zones).map(|zone| &zone.name);
    let names = recipe.mixes.iter().map(|mix| &mix.name).chain(recipe.goods.iter().map(|goods| &goods.name));
    for name in names.chain(recipe.vessels.iter().map(|vessel| &vessel.name)).chain(zones) {
        let Some(also) = also(name) else { continue };
        found.push(
            Finding::new(&RULE, name.place, format!("`{}` is also {also}", name.text)).help(
                "Another name, or the name between double quotes wherever it is used, makes lines easier to read.",
            ),
        );
    }
}

/// What a name is besides.
fn also(name: &Named) -> Option<&'static str> {
    if tenter_syntax::verb_row(&name.text).is_some() {
        Some("a verb of the steps")
    } else if !tenter_quantity::candidates(&[&name.text]).is_empty() {
        Some("a unit")
    } else {
        None
    }
}
