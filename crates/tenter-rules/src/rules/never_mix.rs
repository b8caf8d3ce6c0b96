//! What must not meet.

use tenter_quantity::Place;
use tenter_reference::{NeverMix, Place as Where, Reference, Severity};
use tenter_rehearse::{EventKind, LiquorName};
use tenter_resolve::recipe::{MaterialId, MixId, VesselId};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "never-mix",
    summary: "Materials that must never meet come together.",
    group: Group::People,
    level: Level::Error,
    since: "1",
    page: include_str!("never_mix.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told: Vec<(&NeverMix, Option<MaterialId>)> = Vec::new();
    for mix in 0..context.recipe.mixes.len() {
        let mut materials = context.materials_of_mix(MixId(mix));
        materials.sort_by_key(|(_, place)| *place);
        for (at, (later, place)) in materials.iter().enumerate() {
            for (earlier, other) in &materials[..at] {
                for pair in pairs(context, *earlier, *later, &[Where::Mix, Where::Step]) {
                    if told.iter().any(|(have, _)| have == &pair) {
                        continue;
                    }
                    told.push((pair, Some(*later)));
                    let finding = meeting(context, pair, *earlier, *later, *place);
                    found.push(finding.note(*other, format!("{} is here", context.material(*earlier).name)));
                }
            }
        }
    }
    for event in context.events() {
        let EventKind::Mixed { liquor, had, came, vessel } = &event.kind else { continue };
        let places: &[Where] = match liquor {
            Some(LiquorName::Mix(_)) => &[Where::Mix, Where::Step],
            Some(_) => &[Where::Step, Where::Mix],
            None => &[Where::Cloth],
        };
        let together = came.iter().enumerate().flat_map(|(at, later)| {
            had.iter()
                .chain(&came[..at])
                .filter(move |earlier| earlier.1.best > TRACE && later.1.best > TRACE)
                .map(move |earlier| (earlier.0, later.0))
        });
        for (earlier, later) in together {
            if rinsed_between(context, event.place, earlier, later) {
                continue;
            }
            for pair in pairs(context, earlier, later, places) {
                if told.iter().any(|(have, _)| have == &pair) {
                    continue;
                }
                told.push((pair, Some(later)));
                let place = at_step(context, event.place, later);
                let finding = meeting(context, pair, earlier, later, place);
                let there = context.material(earlier).place;
                found.push(finding.note(there, format!("{} comes from here", context.material(earlier).name)));
            }
        }
        let Some(vessel) = vessel else { continue };
        for (later, _) in had.iter().chain(came) {
            in_vessel(context, *vessel, *later, event.place, &mut told, found);
        }
    }
    standing(context, &mut told, found);
    left_in_vessel(context, &mut told, found);
}

/// A liquor made in a vessel that still holds another.
fn left_in_vessel<'a>(
    context: &Context<'a>,
    told: &mut Vec<(&'a NeverMix, Option<MaterialId>)>,
    found: &mut Vec<Finding>,
) {
    for frame in &context.rehearsal.frames {
        for (at, later) in frame.liquors.iter().enumerate().filter(|(_, liquor)| !liquor.gone) {
            for earlier in frame.liquors[..at].iter().filter(|liquor| !liquor.gone) {
                if later.vessel.is_none() || later.vessel != earlier.vessel || later.name == earlier.name {
                    continue;
                }
                let meetings = later.contents.parts.iter().flat_map(|(new, mass)| {
                    let old = earlier
                        .contents
                        .parts
                        .iter()
                        .filter(move |(_, had)| mass.value.best > TRACE && had.value.best > TRACE);
                    old.map(move |(old, _)| (*old, *new))
                });
                for (old, new) in meetings {
                    for pair in pairs(context, old, new, &[Where::Mix, Where::Step]) {
                        if pair.severity != Severity::Danger || told.iter().any(|(have, _)| have == &pair) {
                            continue;
                        }
                        told.push((pair, Some(new)));
                        let vessel = later.vessel.and_then(|id| context.recipe.vessels.get(id.0));
                        let name = vessel.map_or("the vessel", |vessel| &*vessel.name.text);
                        found.push(
                            meeting(context, pair, old, new, later.made_by)
                                .note(earlier.made_by, format!("{name} still holds this: drain and rinse it before")),
                        );
                    }
                }
            }
        }
    }
}

/// What stands in a vessel it eats, made there and not only added.
fn standing<'a>(context: &Context<'a>, told: &mut Vec<(&'a NeverMix, Option<MaterialId>)>, found: &mut Vec<Finding>) {
    for frame in &context.rehearsal.frames {
        for liquor in frame.liquors.iter() {
            let dyed =
                liquor.contents.parts.iter().any(|(id, mass)| mass.value.best > 0.0 && context.material(*id).is_dye);
            let bath = dyed && !liquor.inside.is_empty() && !context.washes(frame.place);
            let said = liquor.vessel;
            let Some(vessel) = (if bath { context.vessel_of(said) } else { said }) else { continue };
            for (material, mass) in &liquor.contents.parts {
                if mass.value.best > TRACE {
                    in_vessel(context, vessel, *material, liquor.made_by, told, found);
                }
            }
        }
    }
}

/// What rinsing leaves behind, kg: half a gram.
const TRACE: f64 = 5e-4;

/// Groups of a material in the table of pairs.
fn groups<'a>(context: &Context<'a>, id: MaterialId) -> &'a [String] {
    context.material(id).reference.map_or(&[], |entry| entry.hazard_groups.as_slice())
}

/// The pairs two materials make, where they can meet in one of these places.
fn pairs<'a>(
    context: &Context<'a>,
    earlier: MaterialId,
    later: MaterialId,
    places: &'a [Where],
) -> impl Iterator<Item = &'a NeverMix> {
    let (first, second) = (groups(context, earlier), groups(context, later));
    Reference::bundled().never_mix_between(first, second).filter(move |pair| {
        earlier != later
            && pair.severity != Severity::Note
            && (pair.places.iter().any(|place| places.contains(place)) || pair.places.is_empty())
    })
}

fn meeting(context: &Context<'_>, pair: &NeverMix, earlier: MaterialId, later: MaterialId, place: Place) -> Finding {
    let (earlier, later) = (&context.material(earlier).name, &context.material(later).name);
    let finding = Finding::new(&RULE, place, format!("{later} meets {earlier}: {}", pair.what_happens)).help(format!(
        "{} Source: {}.",
        pair.instead,
        pair.source.citation.trim_end_matches('.')
    ));
    match pair.severity {
        Severity::Danger => finding,
        Severity::Warning | Severity::Note => finding.level(Level::Warning),
    }
}

/// Whether a rinse stands between the step at hand and the last one that brought the other of the two.
fn rinsed_between(context: &Context<'_>, place: Place, earlier: MaterialId, later: MaterialId) -> bool {
    let steps: Vec<_> = context.steps().collect();
    let Some(here) = steps.iter().position(|step| step.place == place) else { return false };
    let brings = |at: usize, id: MaterialId| {
        crate::bench::materials_of_step(context, steps[at]).iter().any(|(material, _)| *material == id)
    };
    let other = if brings(here, earlier) { later } else { earlier };
    if brings(here, other) {
        return false;
    }
    let Some(last) = (0..here).rev().find(|at| brings(*at, other)) else { return false };
    steps[last..here]
        .iter()
        .any(|step| step.verb.is_some_and(|verb| matches!(verb.name, "rinse" | "wash" | "soap off")))
}

/// The phrase of a step that brings a material, else the step.
fn at_step(context: &Context<'_>, step: Place, material: MaterialId) -> Place {
    let Some(found) = context.step_at(step) else { return step };
    found
        .applied
        .iter()
        .chain(&found.with)
        .find(|ingredient| context.materials_of(ingredient).iter().any(|(id, _)| *id == material))
        .map_or(step, |ingredient| ingredient.place)
}

fn in_vessel<'a>(
    context: &Context<'a>,
    vessel: VesselId,
    material: MaterialId,
    place: Place,
    told: &mut Vec<(&'a NeverMix, Option<MaterialId>)>,
    found: &mut Vec<Finding>,
) {
    let Some(vessel) = context.recipe.vessels.get(vessel.0) else { return };
    let Some(stuff) = &vessel.material else { return };
    for group in Reference::bundled().vessel_groups(&stuff.text) {
        for pair in Reference::bundled().never_mix_between(std::slice::from_ref(&group.id), groups(context, material)) {
            if told.iter().any(|(have, _)| have == &pair) {
                continue;
            }
            told.push((pair, Some(material)));
            let name = &context.material(material).name;
            let finding = Finding::new(
                &RULE,
                place,
                format!("{name} stands in {}, which is {}: {}", vessel.name.text, stuff.text, pair.what_happens),
            )
            .note(stuff.place, "the vessel's material")
            .help(pair.instead.clone());
            found.push(match pair.severity {
                Severity::Danger => finding,
                Severity::Warning | Severity::Note => finding.level(Level::Warning),
            });
        }
    }
}
