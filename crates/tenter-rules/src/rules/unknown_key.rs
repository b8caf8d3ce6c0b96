//! No such key.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-key",
    summary: "A key the block does not have.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_key.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::UnknownKey { written, block, nearest } = &problem.kind else { continue };
        let kind = tenter_syntax::kind_row(*block).map_or("this", |row| row.name);
        let finding = Finding::new(&RULE, problem.place, format!("a {kind} block has no line `{written}`"))
            .help(say::sentence(&say::did_you_mean(nearest.as_slice(), "a remark starts with `note` or `#`")));
        found.push(match nearest {
            Some(near) => finding.fix(Fix::replace(problem.place, &**near, true)),
            None => finding,
        });
    }
}
