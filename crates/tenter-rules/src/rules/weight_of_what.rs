//! Each, or in all?

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "weight-of-what",
    summary: "A weight of several pieces that does not say each or in all.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("weight_of_what.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::WeightOfWhat { written, pieces } = &problem.kind else { continue };
        let count = tenter_quantity::show_number(tenter_quantity::Interval::exact(*pieces));
        let end = tenter_quantity::Place { start: problem.place.end, ..problem.place };
        found.push(
            Finding::new(&RULE, problem.place, format!("{written} of {count} pieces: is that each, or all together?"))
                .help(format!("Write `{written} each` or `{written} in all`."))
                .fix(Fix::replace(end, " each", false).titled(format!("write `{written} each`")))
                .fix(Fix::replace(end, " in all", false).titled(format!("write `{written} in all`"))),
        );
    }
}
