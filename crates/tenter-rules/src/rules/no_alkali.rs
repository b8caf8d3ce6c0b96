//! Reactive dye without alkali.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{FibreFamily, Role};
use tenter_resolve::recipe::{GoodsId, MaterialId, Step};

pub(crate) const RULE: Rule = Rule {
    name: "no-alkali",
    summary: "A reactive dye on cellulose, and no alkali anywhere near it.",
    group: Group::Alkali,
    level: Level::Error,
    since: "1",
    page: include_str!("no_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        if !context.is_reactive(dyeing.dye) || told.contains(&dyeing.goods) {
            continue;
        }
        // On wool and silk reactive dyes go on with acid.
        if context.share_of(dyeing.goods, FibreFamily::Cellulose).is_none_or(|share| share < 0.5) {
            continue;
        }
        let then = dyeing
            .zone_then
            .as_ref()
            .map(|zone| &zone.contents)
            .or(dyeing.bath_then.as_ref().map(|bath| &bath.contents));
        let any =
            then.is_some_and(|contents| context.holds(contents, Role::Alkali) || context.holds(contents, Role::Buffer));
        let elsewhere = context.dyeings().any(|other| {
            other.goods == dyeing.goods && other.dye == dyeing.dye && (other.usable.high > 0.0 || other.base.high > 0.0)
        });
        if any || elsewhere || dyeing.usable.high > 0.0 || dyeing.base.high > 0.0 {
            continue;
        }
        told.push(dyeing.goods);
        let name = &context.material(dyeing.dye).name;
        let goods = context.goods_name(dyeing.goods);
        let mut finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!("{name} is a reactive dye, and no alkali reaches {goods}: it will wash out"),
        )
        .figure(&dyeing.mass)
        .help("Soak the goods in 30 to 67 g/L soda ash before (common practice), or put soda ash into the bottle or bath; then let it react.");
        if let Some(soak) = crate::bench::lay_in_before(context, dyeing.goods, context.laid_at(dyeing)) {
            finding = finding.note(soak, format!("{goods} lay in this before, and it is no alkali"));
        }
        if let Some(place) = context.material(dyeing.dye).class_place {
            finding = finding.note(place, "its class is written here");
        }
        found.push(finding);
    }
    pastes(context, &told, found);
}

/// A paste without alkali beside another that has it: they lie side by side on the cloth and do not share it.
fn pastes(context: &Context<'_>, told: &[GoodsId], found: &mut Vec<Finding>) {
    let laid_as_paste = |step: &Step| step.verb.is_some_and(|verb| matches!(verb.name, "print" | "brush"));
    let alkaline = |id: MaterialId| matches!(context.material(id).role(), Role::Alkali | Role::Buffer);
    // Alkali that comes on the cloth in any other way reaches all of it.
    let everywhere = context.steps().any(|step| {
        let washing = context.washes(step.place) || step.verb.is_none_or(|verb| verb.name == "make");
        !laid_as_paste(step)
            && !washing
            && crate::bench::materials_of_step(context, step).iter().any(|(id, _)| alkaline(*id))
    });
    if everywhere {
        return;
    }
    for step in context.steps().filter(|step| laid_as_paste(step)) {
        let brought = crate::bench::materials_of_step(context, step);
        let any = |role: Role| brought.iter().any(|(id, _)| context.material(*id).role() == role);
        let Some((dye, written)) = brought.iter().find(|(id, _)| context.is_reactive(*id)) else { continue };
        let lacking = any(Role::Thickener) && !brought.iter().any(|(id, _)| alkaline(*id));
        let cellulose = |id: &GoodsId| {
            !told.contains(id) && context.share_of(*id, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5)
        };
        if !lacking || !step.goods.iter().any(cellulose) || context.troubled_line(step.place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!("{} is a reactive dye, and its paste has no alkali: it will wash out", context.material(*dye).name),
            )
            .note(*written, "this paste")
            .help("Put 15 to 25 g of bicarbonate into each kilogram of paste that is to be steamed, or soda ash where it is to lie; what another paste has stays where that is printed."),
        );
        return;
    }
}
