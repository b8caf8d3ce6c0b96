//! A number in no known form.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "number-form",
    summary: "A number in a form that can be read in two ways.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("number_form.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::NumberForm { written, suggestions, why } = &problem.kind else { continue };
        let mut finding = Finding::new(
            &RULE,
            problem.place,
            if why.contains(&**written) { why.to_string() } else { format!("`{written}`: {why}") },
        )
        .help(if suggestions.is_empty() {
            "Write it like `7.5`, `1 1/2` or `10 to 20`.".to_owned()
        } else {
            format!("Write {}.", say::quoted(suggestions))
        });
        for suggestion in suggestions {
            finding = finding.fix(Fix::replace(problem.place, &**suggestion, suggestions.len() == 1));
        }
        found.push(finding);
    }
}
