//! Plant colour with nothing to hold it.

use tenter_reference::{DyeFamily, Role};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "natural-dye-without-mordant",
    summary: "A dye that a mordant holds, and no mordant anywhere.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("natural_dye_without_mordant.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    // What the tables do not know may be the mordant: clubmoss, mud, a bought preparation.
    let held = context.recipe.totals.materials.iter().any(|total| {
        let material = context.material(total.material);
        !material.is_dye
            && (material.reference.is_none()
                || material.role() == Role::Mordant
                || material.name.to_lowercase().contains("tann"))
    });
    if held {
        return;
    }
    for (goods, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let wants =
            context.class(dye).is_some_and(|class| class.family == DyeFamily::Natural && class.needs.value.mordant);
        let before = context.goods(goods).is_some_and(|goods| {
            let block = context.sheet.blocks.get(goods.name.place.block as usize);
            let said = |word: &str| block.is_some_and(|entry| entry.block.text.to_lowercase().contains(word));
            ["mordant", "alumed", "tann"].into_iter().any(said)
        });
        if !wants || before || found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        let name = &context.material(dye).name;
        let mut finding = Finding::new(
            &RULE,
            place,
            format!("{name} is held by a mordant, and none goes on {}", context.goods_name(goods)),
        )
        .help("Mordant the goods first, wool and silk with 8 to 15% owg alum, cotton and linen with tannin and aluminium acetate. Goods that are mordanted already: say so in their `state`.");
        if let Some(bath) = crate::bench::lay_in_before(context, goods, place) {
            finding =
                finding.note(bath, format!("{} lay in this before, and it is no mordant", context.goods_name(goods)));
        }
        if let Some(class) = context.material(dye).class_place {
            finding = finding.note(class, "its class is written here");
        }
        found.push(finding);
    }
}
