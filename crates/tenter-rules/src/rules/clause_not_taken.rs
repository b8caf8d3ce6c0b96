//! A clause the verb has no use for.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "clause-not-taken",
    summary: "A clause this verb cannot take.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("clause_not_taken.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::ClauseNotTaken { verb, written, takes, .. } = &problem.kind else { continue };
        found.push(
            Finding::new(&RULE, problem.place, format!("`{verb}` has no use for `{written}`"))
                .help(if takes.is_empty() {
                    format!("`{verb}` takes nothing behind what it is done to; put the rest in a step of its own.")
                } else {
                    format!("`{verb}` takes {}; put the rest in a step of its own.", say::list(takes, "or"))
                })
                .fix(Fix::replace(problem.place, "", false)),
        );
    }
}
