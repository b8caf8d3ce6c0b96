//! For how long?

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "time-not-said",
    summary: "A step that lives by its time does not say how long.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("time_not_said.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let Some(verb) = step.verb.filter(|verb| TIMED.contains(&verb.name)) else { continue };
        if step.duration.is_some() || step.until.is_some() || context.troubled_line(step.place) {
            continue;
        }
        found.push(
            Finding::new(&RULE, step.verb_place, format!("{} for how long?", verb.name))
                .help("Add `for` and a time, as in `for 20 min`. Until then a usual one is taken, and whatever rests on it is wide."),
        );
    }
}

/// Steps that live by their time.
const TIMED: [&str; 8] = ["soak", "batch", "steam", "microwave", "hold", "simmer", "boil", "immerse"];
