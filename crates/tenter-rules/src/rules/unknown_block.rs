//! No such kind of block.

use tenter_resolve::ProblemKind;
use tenter_syntax::OddityKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-block",
    summary: "A line at the left edge that opens no kind of block.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_block.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let finding = match &problem.kind {
            ProblemKind::UnknownBlock { written, nearest } => {
                let finding = Finding::new(&RULE, problem.place, format!("`{written}` opens no block this notation knows"))
                    .help(say::sentence(&say::did_you_mean(nearest.as_slice(), "a block is opened by recipe, goods, dye, chemical, mix, layout, vessel, steps, variant, log or shelf; a remark starts with `#`")));
                match nearest {
                    Some(near) => finding.fix(Fix::replace(problem.place, &**near, true)),
                    None => finding,
                }
            }
            ProblemKind::Oddity(OddityKind::HeaderReadsAsStep) => Finding::new(
                &RULE,
                problem.place,
                "this reads as a step, but at the left edge it opens a block",
            )
            .help("If it is a step, indent it under a `steps` line. If it is a name, put it between double quotes.")
            .level(Level::Warning),
            _ => continue,
        };
        found.push(finding);
    }
}
