//! Nothing behind a key or connecting word.

use tenter_resolve::ProblemKind;
use tenter_syntax::OddityKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "missing-value",
    summary: "A key, a connecting word or a step with nothing behind it.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("missing_value.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let finding = match &problem.kind {
            ProblemKind::MissingValue { what, example } => {
                Finding::new(&RULE, problem.place, format!("missing here: {what}"))
                    .help(format!("For example `{}`.", example.trim()))
            }
            ProblemKind::Oddity(OddityKind::MissingName) => {
                Finding::new(&RULE, problem.place, "this block needs a name behind its first word")
                    .help("Other lines speak of it by that name, as in `mix soda soak`.")
            }
            _ => continue,
        };
        found.push(finding);
    }
}
