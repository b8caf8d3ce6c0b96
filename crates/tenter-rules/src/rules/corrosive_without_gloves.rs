//! Corrosive, and no gloves or goggles.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

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
    for event in context.events() {
        let EventKind::PowderHandled { material: id, at, gloves, eyes, .. } = &event.kind else { continue };
        if (*gloves && *eyes) || told.contains(id) {
            continue;
        }
        let material = context.material(*id);
        let Some(entry) = material.reference else { continue };
        let Some(claim) = entry.hazards.iter().find(|claim| CORROSIVE.contains(&claim.code.as_str())) else {
            continue;
        };
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

/// Burns, and serious eye damage (GHS).
const CORROSIVE: [&str; 2] = ["H314", "H318"];
