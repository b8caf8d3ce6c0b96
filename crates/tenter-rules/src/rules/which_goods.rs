//! Of which goods?

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "which-goods",
    summary: "An amount that follows the goods where it is in doubt which goods.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("which_goods.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::WhichGoods { choices } = &problem.kind else { continue };
        found.push(
            Finding::new(
                &RULE,
                problem.place,
                format!("`{}` follows the goods, but which of them?", context.text(problem.place)),
            )
            .help(format!("Name them behind it: `of {}`.", say::list(choices, "or"))),
        );
    }
}
