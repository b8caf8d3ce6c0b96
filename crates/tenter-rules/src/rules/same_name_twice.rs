//! Declared twice.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "same-name-twice",
    summary: "Two things of one kind with one name.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("same_name_twice.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::SameName { name, first } = &problem.kind else { continue };
        found.push(
            Finding::new(&RULE, problem.place, format!("`{name}` is declared a second time"))
                .note(*first, "declared here first")
                .help("Give one of them another name, or take one of them away."),
        );
    }
}
