//! A spelling that means two units.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "doubtful-unit",
    summary: "A spelling that two people read as two different units.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("doubtful_unit.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::DoubtfulUnit { spelling, meant, why } = &problem.kind else { continue };
        let mut finding = Finding::new(&RULE, problem.place, format!("`{spelling}` is in doubt: {why}"))
            .help(format!("Write {}.", say::quoted(meant)));
        let written = context.text(problem.place);
        if let Some(at) = written.rfind(&**spelling) {
            let start = problem.place.start + at as u32;
            let place = tenter_quantity::Place { start, end: start + spelling.len() as u32, ..problem.place };
            for unit in meant {
                finding = finding.fix(Fix::replace(place, spaced(written, at, unit), false));
            }
        }
        found.push(finding);
    }
}

/// The unit with a blank in front where the number ran into it.
fn spaced(written: &str, at: usize, unit: &str) -> String {
    if written[..at].ends_with(|letter: char| letter.is_ascii_digit()) { format!(" {unit}") } else { unit.to_owned() }
}
