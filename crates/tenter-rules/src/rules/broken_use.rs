//! Nothing to take.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "broken-use",
    summary: "A `use` line that cannot be followed.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("broken_use.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::BrokenUse { why } = &problem.kind else { continue };
        found.push(Finding::new(&RULE, problem.place, format!("this cannot be taken over: {why}")).help(
            "A `use` line names what it takes and a file of the same collection: `use soda soak from \"house.dye\"`.",
        ));
    }
}
