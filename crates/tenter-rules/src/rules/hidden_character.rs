//! A character nobody sees.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "hidden-character",
    summary: "A character that shows nothing.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("hidden_character.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let code = context.text(problem.place).chars().next().map_or(0, u32::from);
        found.push(
            Finding::new(&RULE, problem.place, format!("a character that shows nothing stands here (U+{code:04X})"))
                .help("It usually comes along when text is copied from a web page. Take it out.")
                .fix(Fix::replace(problem.place, "", true)),
        );
    }
}
