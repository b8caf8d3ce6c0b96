//! For how long?

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::Step;

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
    let steps: Vec<&Step> = context.steps().collect();
    for (at, step) in steps.iter().enumerate() {
        let Some(verb) = step.verb.filter(|verb| TIMED.contains(&verb.name)) else { continue };
        if step.duration.is_some() || step.until.is_some() || context.troubled_line(step.place) {
            continue;
        }
        // Goods put into a bath that the next lines heat, hold and salt by the clock: those say how long.
        let later = steps.get(at + 1..).unwrap_or_default();
        let in_the_bath = || later.iter().take_while(|next| next.verb.is_some_and(|verb| STAYS.contains(&verb.name)));
        if verb.name == "immerse" && in_the_bath().any(|next| next.duration.is_some() || next.until.is_some()) {
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
/// Steps during which goods stay in their bath.
const STAYS: [&str; 10] = ["raise", "hold", "heat", "cool", "add", "stir", "turn", "simmer", "boil", "check"];
