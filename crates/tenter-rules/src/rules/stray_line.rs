//! A line in the wrong column.

use tenter_resolve::ProblemKind;
use tenter_syntax::OddityKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "stray-line",
    summary: "A body line at the left edge, or so deep that it runs on from the line above.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("stray_line.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let finding = match &problem.kind {
            ProblemKind::Oddity(OddityKind::LooksLikeOwnLine) => {
                Finding::new(&RULE, problem.place, "this line is indented so far that it runs on from the line above")
                    .help("If it is a line of its own, put it under the others.")
            }
            _ => {
                let start = tenter_quantity::Place { end: problem.place.start, ..problem.place };
                Finding::new(
                    &RULE,
                    problem.place,
                    "this line stands at the left edge, where blocks open; it was read as a line of the block above",
                )
                .help("Indent it by two blanks.")
                .fix(Fix::replace(start, "  ", true).titled("indent it"))
            }
        };
        found.push(finding);
    }
}
