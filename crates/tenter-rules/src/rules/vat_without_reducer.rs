//! Indigo as mud.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, Role};
use tenter_resolve::recipe::{LiquorKind, MaterialId};

pub(crate) const RULE: Rule = Rule {
    name: "vat-without-reducer",
    summary: "A vat has nothing in it that brings the dye into solution.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("vat_without_reducer.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for (_, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let vat = context.class(dye).is_some_and(|class| matches!(class.family, DyeFamily::Vat | DyeFamily::Indigo));
        if !vat || told.contains(&dye) || !in_a_bath(context, place) {
            continue;
        }
        told.push(dye);
        let Some(frame) = context.rehearsal.frame_at(place) else { continue };
        let dissolved = frame
            .liquors
            .iter()
            .filter(|liquor| liquor.contents.mass(dye).high > 0.0)
            .flat_map(|liquor| &liquor.contents.parts)
            .any(|(id, mass)| mass.value.high > 0.0 && may_reduce(context, *id));
        if dissolved {
            continue;
        }
        let name = &context.material(dye).name;
        let mut finding = Finding::new(
            &RULE,
            place,
            format!("{name} is {} dye and lies in the water as a powder: nothing here reduces it", with_article(context, dye)),
        )
        .help("Bring a reducing agent into the vat, sodium dithionite or thiourea dioxide by its sheet, and wait until the liquor is clear and yellow-green before anything is dipped. It gives off an irritant gas: open windows, gloves, goggles.");
        if let Some(class) = context.material(dye).class_place {
            finding = finding.note(class, "the class is written here");
        }
        found.push(finding);
    }
}

fn with_article(context: &Context<'_>, dye: MaterialId) -> String {
    crate::say::with_article(context.class(dye).map_or("vat", |class| &class.name))
}

fn in_a_bath(context: &Context<'_>, place: tenter_quantity::Place) -> bool {
    context.step_at(place).and_then(|step| step.liquor.as_ref()).is_some_and(|liquor| {
        matches!(liquor.kind, LiquorKind::Mix(_) | LiquorKind::Bath(_) | LiquorKind::Vessel(_) | LiquorKind::Current)
    })
}

/// Reducing agents; iron salts and zinc, which stand among the mordants, reduce in the old vats; what is unknown may.
fn may_reduce(context: &Context<'_>, id: MaterialId) -> bool {
    let material = context.material(id);
    !material.is_dye && (material.reference.is_none() || matches!(material.role(), Role::Reducer | Role::Mordant))
}
