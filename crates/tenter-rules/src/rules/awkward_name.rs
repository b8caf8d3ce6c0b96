//! A name that is a verb or a unit too.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
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
    for problem in told_by(context, RULE.name) {
        let ProblemKind::AwkwardName { name, also } = &problem.kind else { continue };
        found.push(
            Finding::new(&RULE, problem.place, format!("`{name}` is also {also}"))
                .help("Another name, or the name between double quotes, makes lines easier to read."),
        );
    }
}
