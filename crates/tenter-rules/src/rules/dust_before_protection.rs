//! Dust without a mask.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "dust-before-protection",
    summary: "Powder that raises harmful dust is handled before any dust mask is on.",
    group: Group::People,
    level: Level::Error,
    since: "1",
    page: include_str!("dust_before_protection.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut first: Option<(tenter_quantity::Place, tenter_quantity::Place, &str)> = None;
    let mut others = 0usize;
    let mut dye_found = false;
    for event in context.events() {
        let EventKind::PowderHandled { material, at, respirator: false, .. } = &event.kind else { continue };
        let material = context.material(*material);
        // Soda in a bucket is one thing, dye in the air another: dyes and what is dangerous to breathe are told.
        if !material.is_dye && !harms_lungs(material) {
            continue;
        }
        others += usize::from(first.is_some());
        if first.is_none() || (material.is_dye && !dye_found) {
            dye_found |= material.is_dye;
            first = Some((event.place, *at, &material.name));
        }
    }
    let Some((place, at, name)) = first else { return };
    let late = context.events().find_map(|event| match &event.kind {
        EventKind::Worn { what } if is_mask(&what.text) => Some(what.place),
        _ => None,
    });
    let what =
        if name.ends_with("powder") || name.ends_with("dust") { name.to_owned() } else { format!("{name} powder") };
    let mut finding = Finding::new(&RULE, place, format!("{what} is handled here, and nobody has a dust mask on"))
        .note(at, "this powder")
        .help(match late {
            Some(_) => "Move the `wear` line above it: whoever weighs the powder needs the mask first. It stays on until everything is wet and wiped.",
            None => "Put `wear dust mask, gloves, goggles` above it. Reactive dye dust can make the lungs allergic for life; a particle filter (P2, N95 or better) is usual. Follow your local rules.",
        });
    if let Some(late) = late {
        finding = finding.note(late, "the mask comes on only here");
    }
    if others > 0 {
        finding = finding.note(place, format!("and {others} more times after it"));
    }
    if late.is_none() {
        let start = tenter_quantity::Place { end: place.start, ..place };
        finding = finding.fix(
            Fix::replace(start, "wear     dust mask, gloves, goggles\n  ", false).titled("put a `wear` line above it"),
        );
    }
    found.push(finding);
}

/// Statements about breathing it in (GHS).
const BREATHING: [&str; 6] = ["H330", "H331", "H332", "H334", "H335", "H372"];

fn harms_lungs(material: &tenter_resolve::recipe::Material) -> bool {
    material.reference.is_some_and(|entry| entry.hazards.iter().any(|claim| BREATHING.contains(&claim.code.as_str())))
}

fn is_mask(text: &str) -> bool {
    let text = text.to_lowercase();
    ["mask", "respirator", "ffp", "n95", "p100"].iter().any(|word| text.contains(word))
}
