//! Two durations, two temperatures.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "said-twice",
    summary: "The same thing said twice on one line.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("said_twice.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::SaidTwice { what, first, range } = &problem.kind else { continue };
        let finding = Finding::new(
            &RULE,
            problem.place,
            format!("a second {what} on this line: `{}`", context.text(problem.place)),
        )
        .note(*first, format!("the first is `{}`", context.text(*first)));
        found.push(match range {
            Some(range) => {
                let place = tenter_quantity::Place {
                    start: first.start.min(problem.place.start),
                    end: first.end.max(problem.place.end),
                    ..problem.place
                };
                finding.help(format!("If it is a range, write `{range}`.")).fix(Fix::replace(place, &**range, false))
            }
            None => finding.help("Keep one of them, or make two steps of it."),
        });
    }
}
