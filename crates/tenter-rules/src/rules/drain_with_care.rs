//! What goes down the drain.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "drain-with-care",
    summary: "A strongly alkaline or acid liquor, or metal salts, go down the drain.",
    group: Group::People,
    level: Level::Advice,
    since: "1",
    page: include_str!("drain_with_care.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Discharged { volume, contents, .. } = &event.kind else { continue };
        let Some(volume) = volume.as_ref().or(contents.contents.water.as_ref()) else { continue };
        let litres = if volume.dimension == tenter_quantity::Dimension::Volume {
            volume.value.best * 1000.0
        } else {
            volume.value.best
        };
        let much = format!("about {} L", number(litres));
        let Some(step) = context.step_at(event.place) else { continue };
        if !step.verb.is_some_and(|verb| matches!(verb.name, "drain" | "dispose of" | "dispose")) {
            continue;
        }
        let metal = contents.contents.parts.iter().map(|(id, _)| context.material(*id)).find(|material| {
            material.reference.is_some_and(|entry| {
                entry.hazard_groups.iter().any(|group| group == "heavy-metal-salt" || group == "dichromate")
            })
        });
        let ph = contents.acidity(&context.rehearsal.substances).map(|acidity| acidity.ph);
        let what = match (metal, ph) {
            (Some(metal), _) => format!("{much} with {} in it", metal.name),
            (None, Some(ph)) if ph.low > HIGHEST || ph.high < LOWEST => {
                format!("{much} of about pH {}", number(libm::round(ph.best * 10.0) / 10.0))
            }
            _ => continue,
        };
        found.push(
            Finding::new(&RULE, event.place, format!("{what} go down the drain"))
                .figure(volume)
                .help("Ask your sewer authority what it takes and how; a septic tank is another matter again. Never into a gutter, ditch or garden."),
        );
    }
}

/// pH limits.
const HIGHEST: f64 = 10.0;
const LOWEST: f64 = 5.0;
