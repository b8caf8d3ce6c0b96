//! A per cent without a basis.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "percent-of-what",
    summary: "A per cent of an ingredient without saying of what.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("percent_of_what.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::PercentOfWhat { written, of } = &problem.kind else { continue };
        let name = if of.is_empty() { String::new() } else { format!(" {of}") };
        let number = written.trim_end_matches('%').trim_end();
        let mut finding =
            Finding::new(&RULE, problem.place, format!("`{written}`{name}: per cent of what?")).help(format!(
                "Write `{number}% owg` for the weight of the dry goods, `{number}% w/v` for grams in 100 mL, or grams."
            ));
        if written.ends_with('%') {
            for basis in ["% owg", "% w/v"] {
                finding = finding.fix(Fix::replace(problem.place, format!("{number}{basis}"), false));
            }
        }
        found.push(finding);
    }
}
