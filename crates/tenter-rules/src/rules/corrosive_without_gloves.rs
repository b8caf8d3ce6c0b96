//! Corrosive, and no gloves or goggles.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Place;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::MaterialId;

pub(crate) const RULE: Rule = Rule {
    name: "corrosive-without-gloves",
    summary: "A corrosive material is handled without gloves or eye protection.",
    group: Group::People,
    level: Level::Warning,
    since: "1",
    page: include_str!("corrosive_without_gloves.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    // Gloves and eye protection that are on by then.
    let mut on = (false, false);
    for event in context.events() {
        let handled = match &event.kind {
            EventKind::Worn { what } => {
                let text = what.text.to_lowercase();
                on.0 |= ["glove", "gauntlet"].iter().any(|word| text.contains(word));
                on.1 |= ["goggle", "glasses", "face shield", "visor", "eye"].iter().any(|word| text.contains(word));
                continue;
            }
            EventKind::PowderHandled { material: id, at, gloves, eyes, .. } => vec![(*id, *at, *gloves, *eyes)],
            EventKind::Made { mix, .. } => liquids(context, context.materials_of_mix(*mix), on),
            EventKind::Mixed { .. } => match context.step_at(event.place) {
                Some(step) => liquids(context, crate::bench::materials_of_step(context, step), on),
                None => continue,
            },
            _ => continue,
        };
        for (id, at, gloves, eyes) in &handled {
            if (*gloves && *eyes) || told.contains(id) {
                continue;
            }
            let material = context.material(*id);
            let Some(entry) = material.reference else { continue };
            let Some(claim) = context.hazard(*id, &CORROSIVE) else { continue };
            told.push(*id);
            let lacking = match (gloves, eyes) {
                (false, false) => "gloves and eye protection",
                (false, true) => "gloves",
                _ => "eye protection",
            };
            let mut help = format!(
                "Put `wear gloves, goggles` above it, and keep water at hand to rinse with. {}",
                entry.cautions.first().map_or("", String::as_str)
            );
            help.truncate(help.trim_end().len());
            found.push(
                Finding::new(
                    &RULE,
                    event.place,
                    format!("{} is corrosive ({}), and nobody wears {lacking}", material.name, claim.code),
                )
                .note(*at, "this one")
                .help(help),
            );
        }
    }
}

/// What is poured rather than weighed, with what is worn by then.
fn liquids(
    context: &Context<'_>,
    brought: Vec<(MaterialId, Place)>,
    (gloves, eyes): (bool, bool),
) -> Vec<(MaterialId, Place, bool, bool)> {
    let wet =
        brought.into_iter().filter(|(id, _)| context.material(*id).reference.is_some_and(|entry| !entry.form.is_dry()));
    wet.map(|(id, at)| (id, at, gloves, eyes)).collect()
}

/// Burns, and serious eye damage (GHS).
const CORROSIVE: [&str; 2] = ["H314", "H318"];
