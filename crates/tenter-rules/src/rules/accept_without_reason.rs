//! Accepted, but why?

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "accept-without-reason",
    summary: "An `accept` that gives no reason.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("accept_without_reason.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for acceptance in context.recipe.acceptances.iter().filter(|acceptance| acceptance.reason.is_none()) {
        found.push(
            Finding::new(
                &RULE,
                acceptance.place,
                format!("no reason is given for accepting `{}`, so it is not accepted", acceptance.rule.text),
            )
            .help(format!("Write `accept {} because` and what speaks for it.", acceptance.rule.text)),
        );
    }
}
