//! No such unit.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-unit",
    summary: "A unit that no table knows, or half of one.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_unit.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let finding = match &problem.kind {
            ProblemKind::UnknownUnit { written, nearest } => {
                let finding = Finding::new(&RULE, problem.place, format!("there is no unit `{written}`")).help(
                    say::sentence(&say::did_you_mean(
                        nearest.as_slice(),
                        "write a unit the notation knows, such as g, mL, L, g/L, °C, min",
                    )),
                );
                match nearest {
                    Some(near) => finding.fix(Fix::replace(problem.place, &**near, true)),
                    None => finding,
                }
            }
            ProblemKind::HalfUnit { written } => {
                Finding::new(&RULE, problem.place, format!("`{written}` breaks off: per what?"))
                    .help("Write what it is per, as in `g/L`, `g/piece` or `g per 100 g goods`.")
            }
            _ => continue,
        };
        found.push(finding);
    }
}
