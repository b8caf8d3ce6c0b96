//! Softener too soon.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "softener-too-early",
    summary: "Softener goes in before soaping-off is done.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("softener_too_early.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps().filter(|step| step.verb.is_some_and(|verb| verb.name == "soften")) {
        let later = context.steps().skip_while(|other| other.place != step.place).skip(1).find(|other| {
            other.verb.is_some_and(|verb| verb.name == "soap off")
                && other.goods.iter().any(|goods| step.goods.contains(goods))
        });
        let Some(later) = later else { continue };
        found.push(
            Finding::new(&RULE, step.place, "the softener goes in before the goods are soaped off")
                .note(later.place, "soaped off here")
                .help(
                    "Soften last. Softener wraps loose dye into the cloth, and the soap takes the softener out again.",
                ),
        );
    }
}
