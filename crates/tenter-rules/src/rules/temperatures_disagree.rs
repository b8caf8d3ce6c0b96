//! Two temperatures for one bath.

use tenter_quantity::{Figure, Place};
use tenter_rehearse::EventKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "temperatures-disagree",
    summary: "A bath is brought to one temperature and held at quite another.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("temperatures_disagree.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    let mut aimed: Option<(&Figure, Place)> = None;
    for step in context.steps() {
        let Some(verb) = step.verb else { continue };
        match verb.name {
            "raise" | "heat" | "cool" => {
                let bath = context
                    .events()
                    .any(|event| event.place == step.place && matches!(event.kind, EventKind::BathTemperature { .. }));
                aimed = step.to_temperature.as_ref().filter(|_| bath).map(|to| (to, step.place));
            }
            "hold" | "simmer" | "stir" | "boil" => {
                let Some((to, place)) = aimed else { continue };
                let Some(held) = &step.temperature else { continue };
                let apart = (to.value.low - held.value.high).max(held.value.low - to.value.high);
                if apart > APART {
                    found.push(
                        Finding::new(
                            &RULE,
                            step.place,
                            format!("the bath is brought to {} and then held at {}", to.show(), held.show()),
                        )
                        .note(place, format!("brought to {} here", to.show()))
                        .figure(to)
                        .figure(held)
                        .help("Write the same temperature in both, or a step that brings it from the one to the other. Look for °F where °C was meant."),
                    );
                }
                aimed = None;
            }
            // Salt and soda go in along the way.
            "add" | "wait" | "check" => {}
            _ => aimed = None,
        }
    }
}

/// Kelvins.
const APART: f64 = 12.0;
