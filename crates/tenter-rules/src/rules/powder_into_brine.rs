//! Specks that never dissolve.

use crate::bench::grams_per_litre;
use tenter_reference::Role;
use tenter_rehearse::EventKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "powder-into-brine",
    summary: "Dye powder goes straight into salt water.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("powder_into_brine.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for event in context.events() {
        let EventKind::Added { liquor, material, mass, .. } = &event.kind else { continue };
        let dye = context.material(*material);
        let powder = context.step_at(event.place).is_some_and(|step| {
            step.applied.iter().any(|each| each.what == tenter_resolve::recipe::Substance::Material(*material))
                && step
                    .liquor
                    .as_ref()
                    .is_none_or(|bath| !matches!(bath.kind, tenter_resolve::recipe::LiquorKind::Bath(_)))
                && step.with.is_empty()
        });
        if !dye.is_dye || !powder || told.contains(&event.place) {
            continue;
        }
        let state = context.rehearsal.frames.get(event.frame).and_then(|frame| frame.liquors.get(*liquor));
        let Some((bath, volume)) = state.and_then(|bath| Some((bath, bath.volume.as_ref()?.value))) else { continue };
        let salt = context.rehearsal.substances.mass_of_role(&bath.contents, Role::Salt) / volume;
        if volume.best <= 0.0 || salt.low < BRINE {
            continue;
        }
        told.push(event.place);
        let salted = bath.contents.parts.iter().find(|(id, _)| context.material(*id).role() == Role::Salt);
        let mut finding = Finding::new(
            &RULE,
            event.place,
            format!("{} of {} go as powder into a bath with {} of salt", mass.show(), dye.name, grams_per_litre(salt)),
        )
        .figure(mass)
        .help("Paste the powder with a little water, dissolve it in a jug of plain warm water, then add that; or add the dye before the salt. In brine it clumps and makes specks.");
        if let Some((_, figure)) = salted {
            finding = finding.noted(figure, "the salt goes in here");
        }
        found.push(finding);
    }
}

/// kg/m³ of salt.
const BRINE: f64 = 15.0;
