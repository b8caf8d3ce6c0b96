//! `#` without a blank.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "comment-without-blank",
    summary: "A comment without a blank behind `#`.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("comment_without_blank.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let after = tenter_quantity::Place {
            block: problem.place.block,
            start: problem.place.start + 1,
            end: problem.place.start + 1,
        };
        found.push(
            Finding::new(
                &RULE,
                problem.place,
                "a comment has a blank behind `#`; without it, it may be taken for a colour",
            )
            .help("Write `# ` and then the comment.")
            .fix(Fix::replace(after, " ", true).titled("put a blank behind `#`")),
        );
    }
}
