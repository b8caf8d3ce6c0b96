//! A cold scour.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::FibreFamily;
use tenter_resolve::recipe::{LiquorKind, Step};

pub(crate) const RULE: Rule = Rule {
    name: "scour-too-cool",
    summary: "Cotton is scoured in water too cool to take grease and size away.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("scour_too_cool.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        if step.verb.is_none_or(|verb| verb.name != "scour") || context.troubled_line(step.place) {
            continue;
        }
        let cellulose = step
            .goods
            .iter()
            .any(|goods| context.share_of(*goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5));
        let Some(temperature) = warmth(step).filter(|figure| cellulose && figure.value.high < WARM) else { continue };
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!("scoured at {}: wax, size and softener stay in the cloth", temperature.show()),
            )
            .noted(temperature, "the temperature")
            .figure(temperature)
            .help("Scour cotton at 60 °C or hotter with detergent and 1 to 2 g/L soda ash, and rinse warm."),
        );
    }
}

fn warmth(step: &Step) -> Option<&Figure> {
    let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Bath(inside)) => inside.iter().find_map(|ingredient| ingredient.temperature.as_ref()),
        Some(LiquorKind::Water(figure)) => Some(figure),
        _ => None,
    };
    step.to_temperature.as_ref().or(step.temperature.as_ref()).or(bath)
}

/// 40 °C in K.
const WARM: f64 = 313.15;
