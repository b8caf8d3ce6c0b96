//! Running off.

use crate::bench::{litres, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "more-than-cloth-holds",
    summary: "More liquor is squirted on than the cloth can hold.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("more_than_cloth_holds.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for event in context.events() {
        let EventKind::Overflow { goods, zone, held, capacity, runs_off, dye, through: false } = &event.kind else {
            continue;
        };
        let squirted = context.verb_at(event.place).is_some_and(|verb| matches!(verb, "squirt" | "spray" | "brush"));
        if !squirted
            || dye.best <= 0.0
            || runs_off.value.low <= 0.0
            || told.contains(&event.place)
            || context.troubled_line(event.place)
        {
            continue;
        }
        let share = runs_off.value.best / held.value.best.max(f64::MIN_POSITIVE);
        if share < LEAST {
            continue;
        }
        told.push(event.place);
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} can hold about {}, and gets {} with what it held: {} runs off or under the bindings",
                    context.zone_name(*goods, *zone),
                    litres(capacity.value.best / 1000.0),
                    litres(held.value.best / 1000.0),
                    per_cent(libm::round(share * 20.0) / 20.0)
                ),
            )
            .figure(held)
            .figure(capacity)
            .help("Squirt less, of a stronger bottle, or wring the goods further out first. What runs off carries colour where it should not go."),
        );
    }
}

/// Share that runs off.
const LEAST: f64 = 0.15;
