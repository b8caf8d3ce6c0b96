//! Name first, amount second.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "amount-behind-name",
    summary: "An amount that stands behind its name.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("amount_behind_name.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::AmountBehindName { suggestion } = &problem.kind else { continue };
        let whole = context.text(problem.place).split_whitespace().count() == suggestion.split_whitespace().count();
        found.push(
            Finding::new(&RULE, problem.place, "the amount stands behind its name; it was read all the same")
                .help(format!("Write `{suggestion}`."))
                .fix(Fix::replace(problem.place, &**suggestion, whole)),
        );
    }
}
