//! Two steps on a line.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "two-steps-on-a-line",
    summary: "Two steps joined by `and`.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("two_steps_on_a_line.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let and = problem.place;
        let words = context.text(and);
        let mut finding = Finding::new(&RULE, and, "two steps stand on this line; both are carried out, in that order")
            .help("Give each step a line of its own: on the sheet the second is easily overlooked.");
        let gap = words.len() - words.strip_prefix("and").map_or(words, str::trim_start).len();
        let line = context.whole_line(and);
        let before = context.text(tenter_quantity::Place { start: line.start, end: and.start, ..and });
        let blanks = before.len() - before.trim_end().len();
        if gap > 3
            && let (Ok(gap), Ok(blanks)) = (u32::try_from(gap), u32::try_from(blanks))
        {
            let place = tenter_quantity::Place { start: and.start - blanks, end: and.start + gap, ..and };
            finding = finding.fix(Fix::replace(place, "\n  ", true).titled("give the second step a line of its own"));
        }
        found.push(finding);
    }
}
