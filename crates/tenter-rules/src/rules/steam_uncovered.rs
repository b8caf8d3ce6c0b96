//! Steam without a cover.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::Cover;

pub(crate) const RULE: Rule = Rule {
    name: "steam-uncovered",
    summary: "Goods are microwaved or steamed without a cover.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("steam_uncovered.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let Some(verb) = step.verb.filter(|verb| matches!(verb.name, "microwave" | "steam")) else { continue };
        let open = match &step.cover {
            Some((Cover::Uncovered, _)) => true,
            Some(_) => false,
            None => verb.name == "microwave" && step.liquor.is_none(),
        };
        if !open || context.troubled_line(step.place) {
            continue;
        }
        found.push(
            Finding::new(&RULE, step.place, format!("{} without a cover: the goods dry at the edges before the dye has fixed", verb.name))
                .help("Add `covered` or `in sealed bag` (not airtight in a microwave: leave a corner open). Never microwave dry cloth; it can catch fire."),
        );
    }
}
