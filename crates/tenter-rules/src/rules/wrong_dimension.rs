//! A quantity of the wrong kind.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "wrong-dimension",
    summary: "A quantity of the wrong kind, such as litres where a time is needed.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("wrong_dimension.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::WrongDimension { written, given, needed, purpose, probably } = &problem.kind else { continue };
        let wanted: Vec<&str> = needed.iter().map(|dimension| dimension.name()).collect();
        let examples: Vec<&str> = needed.iter().take(2).map(|dimension| dimension.example()).collect();
        let mut finding = Finding::new(
            &RULE,
            problem.place,
            format!("`{written}` is {}; {purpose} needs {}", given.name(), say::list(&wanted, "or")),
        )
        .help(match probably {
            Some(probably) => {
                format!("Did you mean {probably}? It could be written in {}.", say::list(&examples, "or"))
            }
            None => format!("Write it in {}.", say::list(&examples, "or")),
        });
        if let Some(probably) = probably {
            finding = finding.fix(Fix::replace(problem.place, &**probably, false));
        }
        found.push(finding);
    }
}
