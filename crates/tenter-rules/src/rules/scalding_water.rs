//! Hot water, bare hands.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "scalding-water",
    summary: "Water hot enough to scald is poured by hand without gloves.",
    group: Group::People,
    level: Level::Warning,
    since: "1",
    page: include_str!("scalding_water.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut gloves = false;
    for step in context.steps() {
        let Some(verb) = step.verb else { continue };
        if verb.name == "wear" {
            gloves |= step.words.iter().any(|word| {
                let text = word.text.to_lowercase();
                text.contains("glove") || text.contains("gauntlet")
            });
        }
        if gloves || !BY_HAND.contains(&verb.name) {
            continue;
        }
        let hottest = step
            .applied
            .iter()
            .filter_map(|ingredient| ingredient.temperature.as_ref())
            .chain(step.temperature.as_ref())
            .find(|temperature| temperature.value.best >= SCALDS);
        let Some(temperature) = hottest else { continue };
        found.push(
            Finding::new(&RULE, step.place, format!("water of {} is handled here, and nobody wears gloves", temperature.show()))
                .figure(temperature)
                .help("Put `wear gloves` above it; insulated ones that liquid cannot get through, and long sleeves. At 60 °C skin is scalded in under five seconds."),
        );
        return;
    }
}

/// 60 °C in K.
const SCALDS: f64 = 333.15;
/// Steps that hands do.
const BY_HAND: [&str; 8] = ["irrigate", "pour", "squirt", "spray", "dip", "brush", "squeeze", "lift"];
