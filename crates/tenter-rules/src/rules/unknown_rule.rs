//! No such rule.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::registry::{self, RULES};
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-rule",
    summary: "An `accept` of a rule that does not exist.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_rule.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for acceptance in &context.recipe.acceptances {
        let name = &acceptance.rule.text;
        if registry::rule(name).is_some() {
            continue;
        }
        let nearest = RULES
            .iter()
            .map(|rule| (strsim::normalized_damerau_levenshtein(rule.name, name), rule.name))
            .filter(|(score, _)| *score >= 0.6)
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, name)| name);
        let finding =
            Finding::new(&RULE, acceptance.rule.place, format!("there is no rule `{name}`, so nothing is accepted"))
                .help(say::sentence(&say::did_you_mean(nearest.as_slice(), "`tenter explain` lists the rules")));
        found.push(match nearest {
            Some(near) => finding.fix(Fix::replace(acceptance.rule.place, near, true)),
            None => finding,
        });
    }
}
