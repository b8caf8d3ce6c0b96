//! A number alone.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "missing-unit",
    summary: "A number without a unit where an amount is needed.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("missing_unit.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::MissingUnit { written } = &problem.kind else { continue };
        found.push(
            Finding::new(&RULE, problem.place, format!("`{written}` has no unit"))
                .help("Say what it counts: g, mL, L, g/L, °C, min, or pieces."),
        );
    }
}
