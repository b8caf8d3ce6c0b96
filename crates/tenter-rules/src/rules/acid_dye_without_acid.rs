//! Acid dye wants acid.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, Role, Uptake};

pub(crate) const RULE: Rule = Rule {
    name: "acid-dye-without-acid",
    summary: "Acid dye, and no acid anywhere.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("acid_dye_without_acid.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for (goods, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let wants = context.class(dye).is_some_and(|class| class.family == DyeFamily::Acid && class.needs.value.acid);
        let has = context.dyeings().any(|dyeing| dyeing.goods == goods && dyeing.dye == dye && dyeing.acid.high > 0.0)
            || context.recipe.totals.materials.iter().any(|total| {
                let material = context.material(total.material);
                let group = |name: &str| {
                    material.reference.is_some_and(|entry| entry.hazard_groups.iter().any(|have| have == name))
                };
                material.role() == Role::Acid || group("ammonium-salt") || group("acid")
            });
        // On what the class does not dye acid would not help: another rule tells of that.
        let dyed = context.goods(goods).is_some_and(|goods| {
            goods.fibres.is_empty()
                || goods.fibres.iter().any(|part| {
                    part.fibre
                        .is_none_or(|fibre| fibre.takes(DyeFamily::Acid).is_some_and(|how| how.uptake != Uptake::No))
                })
        });
        if !wants || !dyed || has || found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        let mut finding = Finding::new(&RULE, place, format!("{} is an acid dye, and no acid goes in anywhere", context.material(dye).name))
            .help("Add 1 to 2% owg acetic acid, or ten times that of vinegar, or 3 to 5% owg citric acid, once the dye is level.");
        if let Some(soak) = crate::bench::lay_in_before(context, goods, place) {
            finding =
                finding.note(soak, format!("{} lay in this before, and it is no acid", context.goods_name(goods)));
        }
        if let Some(class) = context.material(dye).class_place {
            finding = finding.note(class, "its class is written here");
        }
        found.push(finding);
    }
}
