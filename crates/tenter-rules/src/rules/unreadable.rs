//! Text with no reading.

use tenter_resolve::ProblemKind;
use tenter_syntax::OddityKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "unreadable",
    summary: "Text that was kept and not read.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("unreadable.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let finding = match &problem.kind {
            ProblemKind::Unreadable { written } => {
                Finding::new(&RULE, problem.place, format!("`{}` was not read", written.trim()))
                    .help("What is meant for people goes behind `#` or on a `note` line; what is meant to count has to be put another way.")
            }
            ProblemKind::Oddity(OddityKind::OpenQuote) => {
                Finding::new(&RULE, problem.place, "a double quote is opened here and not closed on this line")
                    .help("Close it behind the name.")
            }
            ProblemKind::Oddity(OddityKind::OpenBracket) => {
                Finding::new(&RULE, problem.place, "a bracket is opened here and not closed on this line")
                    .help("Close it, or put the remark behind `#`.")
            }
            ProblemKind::Oddity(OddityKind::NotUtf8) => {
                Finding::new(&RULE, problem.place, "the file holds bytes that are no UTF-8 text")
                    .help("Save it as UTF-8 in your editor; letters such as °, µ, é may be wrong until then.")
            }
            _ => continue,
        };
        found.push(finding);
    }
}
