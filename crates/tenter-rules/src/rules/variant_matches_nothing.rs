//! A variant line without its counterpart.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "variant-matches-nothing",
    summary: "A line of a variant with nothing, or too much, to replace.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("variant_matches_nothing.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::VariantMatch { candidates } = &problem.kind else { continue };
        let text = context.text(problem.place);
        found.push(match candidates {
            0 => Finding::new(&RULE, problem.place, format!("nothing in the recipe above for `{text}` to stand in for"))
                .help("A line of a variant replaces the line with the same verb or key, or the same material. To replace a whole group write `in steps NAME instead`."),
            several => Finding::new(&RULE, problem.place, format!("`{text}` could stand in for {several} lines of the recipe above"))
                .help("Say where it belongs with a line such as `in mix soda soak` or `in steps colour` above it."),
        });
    }
}
