//! A mix within itself.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "circular-mix",
    summary: "A mix that is part of itself.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("circular_mix.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::CircularMix { name } = &problem.kind else { continue };
        found.push(
            Finding::new(
                &RULE,
                problem.place,
                format!("`{name}` is made from itself, directly or through another mix"),
            )
            .help("Take one of the lines out of the circle; amounts of these mixes cannot be worked out."),
        );
    }
}
