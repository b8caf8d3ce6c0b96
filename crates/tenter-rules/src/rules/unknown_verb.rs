//! No such verb.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-verb",
    summary: "A step that opens with no verb of the notation.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_verb.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::UnknownVerb { written, nearest } = &problem.kind else { continue };
        let finding = Finding::new(&RULE, problem.place, format!("`{written}` is no step this notation knows")).help(
            say::sentence(&say::did_you_mean(
                nearest.as_slice(),
                "open the line with a verb such as soak, squirt, batch, rinse; a remark starts with `note` or `#`",
            )),
        );
        found.push(match nearest {
            Some(near) => finding.fix(Fix::replace(problem.place, &**near, true)),
            None => finding,
        });
    }
}
