//! A date in no known form.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "date-form",
    summary: "A date in another order than year, month, day.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("date_form.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::DateForm { written, suggestion } = &problem.kind else { continue };
        let finding = Finding::new(&RULE, problem.place, format!("`{written}` is no date in the order year-month-day"))
            .help(match suggestion {
                Some(date) => format!("If it is what it seems, write `{date}`."),
                None => "Write it like `2026-05-03`.".to_owned(),
            });
        found.push(match suggestion {
            Some(date) => finding.fix(Fix::replace(problem.place, &**date, false)),
            None => finding,
        });
    }
}
