//! Never washed off.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::DyeFamily;
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "dried-before-wash-off",
    summary: "Goods are dried, or the recipe ends, with the loose dye still in them.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("dried_before_wash_off.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for (goods, dye, laid) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let reactive = context.class(dye).is_some_and(|class| class.family == DyeFamily::Reactive);
        if !reactive || told.contains(&goods) {
            continue;
        }
        told.push(goods);
        let batched = context.steps().any(|step| step.verb.is_some_and(|verb| verb.name == "batch"));
        let fixed_later = context.steps().any(|step| {
            step.verb.is_some_and(|verb| {
                matches!(verb.name, "steam" | "microwave" | "batch") || (verb.name == "press" && !batched)
            }) && !context.steps().take_while(|other| other.place != step.place).any(|other| {
                context.washes(other.place)
                    && context
                        .steps()
                        .take_while(|before| before.place != other.place)
                        .any(|before| before.place == laid)
            }) && context.steps().take_while(|other| other.place != step.place).any(|other| {
                other.verb.is_some_and(|verb| verb.name == "dry")
                    && context
                        .steps()
                        .take_while(|before| before.place != other.place)
                        .any(|before| before.place == laid)
            })
        });
        let dried = context.events().find_map(|event| match &event.kind {
            EventKind::Dried { goods: dried, unwashed_dye: true, .. } if *dried == goods => Some(event.place),
            _ => None,
        });
        let washed = context.dyeings().any(|dyeing| dyeing.goods == goods && dyeing.washed.is_some());
        let place = match dried {
            Some(_) if fixed_later && washed => continue,
            Some(_) if fixed_later => laid,
            Some(place) => place,
            None if !washed && context.steps().last().is_some() => laid,
            None => continue,
        };
        let what = if dried.is_some_and(|dried| dried == place) { "are dried" } else { "are never washed" };
        let finding = Finding::new(&RULE, place, format!("{} {what} with the loose dye and soda still in them", context.goods_name(goods)))
            .help("Rinse cold until nearly clear, then soap off at 60 °C twice, then dry. Dried in, soda weakens cotton and loose dye sets in the wrong place.");
        found.push(if place == laid { finding } else { finding.note(laid, "the dye comes here") });
    }
}
