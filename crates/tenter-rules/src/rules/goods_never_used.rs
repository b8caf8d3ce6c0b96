//! Goods left lying.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::GoodsId;

pub(crate) const RULE: Rule = Rule {
    name: "goods-never-used",
    summary: "Goods that no step works on.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("goods_never_used.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if !context.recipe.is_recipe() || context.troubled_steps() || context.steps().next().is_none() {
        return;
    }
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        if context.steps().any(|step| step.goods.contains(&GoodsId(index)))
            || context.named_in_trouble(&goods.name.text)
        {
            continue;
        }
        found.push(
            Finding::new(&RULE, goods.name.place, format!("no step works on {}", goods.name.text))
                .help("Name them in the steps, or take them away: their weight counts in what follows the goods."),
        );
    }
}
