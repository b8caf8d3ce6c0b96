//! Shares that do not make a whole.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "zone-shares",
    summary: "Shares that do not sum to 100%.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("zone_shares.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::Shares { of, sum } = &problem.kind else { continue };
        let percent = tenter_quantity::show_number(tenter_quantity::Interval::exact(sum * 100.0));
        let (word, off) = if *sum > 1.0 { ("more", sum - 1.0) } else { ("less", 1.0 - sum) };
        let off = tenter_quantity::show_number(tenter_quantity::Interval::exact(off * 100.0));
        found.push(
            Finding::new(&RULE, problem.place, format!("{of} sum to {percent}%, {off}% {word} than the whole"))
                .help("Put the shares right so that they make 100% together."),
        );
    }
}
