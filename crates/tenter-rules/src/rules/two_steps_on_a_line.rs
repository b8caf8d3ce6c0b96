//! Two steps on a line.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "two-steps-on-a-line",
    summary: "Two steps joined by `and`.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("two_steps_on_a_line.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        found.push(
            Finding::new(&RULE, problem.place, "two steps stand on this line; only the first is read")
                .help("Give each step a line of its own."),
        );
    }
}
