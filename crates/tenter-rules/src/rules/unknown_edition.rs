//! An edition this tool does not know.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "unknown-edition",
    summary: "An edition of the notation that is not known.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("unknown_edition.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::UnknownEdition { written } = &problem.kind else { continue };
        found.push(
            Finding::new(
                &RULE,
                problem.place,
                format!("edition `{written}` is not known to this tool; the file is read as edition 1"),
            )
            .help("Get a newer tool, or write `edition 1` if the file holds nothing newer.")
            .fix(Fix::replace(problem.place, "1", false)),
        );
    }
}
