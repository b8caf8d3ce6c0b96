//! The wrong dye for the cloth.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Uptake;
use tenter_resolve::recipe::{GoodsId, MaterialId};

pub(crate) const RULE: Rule = Rule {
    name: "class-cannot-dye-fibre",
    summary: "A dye of a class that does not dye this fibre.",
    group: Group::Dye,
    level: Level::Error,
    since: "1",
    page: include_str!("class_cannot_dye_fibre.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (goods, dye, place) in first_laid(context) {
        let (Some(goods), Some(class)) = (context.goods(goods), context.class(dye)) else { continue };
        if goods.fibres.is_empty() || goods.fibres.iter().any(|part| part.fibre.is_none()) {
            continue;
        }
        let takes = |uptake: Uptake| {
            goods
                .fibres
                .iter()
                .filter(|part| {
                    part.fibre.and_then(|fibre| fibre.takes(class.family)).is_some_and(|how| how.uptake == uptake)
                })
                .map(|part| part.share.value.best)
                .sum::<f64>()
        };
        let (well, weakly) = (takes(Uptake::Yes), takes(Uptake::Weak));
        if well > 0.0 {
            // What stays pale of a blend is told by another rule.
            continue;
        }
        if well <= 0.0 && weakly > 0.0 && with_acid(context, dye) {
            // Reactive dyes go on wool and silk from an acid bath.
            continue;
        }
        let name = &context.material(dye).name;
        let fibres: Vec<&str> = goods.fibres.iter().map(|part| &*part.name.text).collect();
        let fibres = crate::say::list(&fibres, "and");
        let mut finding = if weakly > 0.0 {
            Finding::new(
                &RULE,
                place,
                format!("{name} is {} dye and only tints {fibres}", crate::say::with_article(&class.name)),
            )
            .level(Level::Warning)
        } else {
            Finding::new(
                &RULE,
                place,
                format!("{name} is {} dye and does not dye {fibres}", crate::say::with_article(&class.name)),
            )
        };
        let reason = goods.fibres.iter().filter_map(|part| part.fibre?.takes(class.family)?.note.as_deref()).next();
        finding = finding.help(match reason {
            Some(reason) => format!("{} Choose a dye for {fibres}, or other goods.", crate::say::sentence(reason)),
            None => {
                format!("Choose a dye for {fibres}, or other goods; `tenter materials {}` lists what dyes it.", fibres)
            }
        });
        if let Some(part) = goods.fibres.first() {
            finding = finding.note(part.name.place, "the fibre is written here");
        }
        if let Some(class) = context.material(dye).class_place {
            finding = finding.note(class, "the class is written here");
        }
        found.push(finding);
    }
}

/// Whether a reactive dye meets acid rather than alkali: the way it dyes wool and silk.
fn with_acid(context: &Context<'_>, dye: MaterialId) -> bool {
    context.is_reactive(dye)
        && context.dyeings().any(|dyeing| dyeing.dye == dye && dyeing.acid.best > 0.0 && dyeing.usable.best <= 0.0)
}

/// The first line that lays each dye on each goods.
pub(crate) fn first_laid(context: &Context<'_>) -> Vec<(GoodsId, MaterialId, tenter_quantity::Place)> {
    let mut laid: Vec<(GoodsId, MaterialId, tenter_quantity::Place)> = Vec::new();
    for dyeing in context.dyeings() {
        if !laid.iter().any(|(goods, dye, _)| (*goods, *dye) == (dyeing.goods, dyeing.dye)) {
            laid.push((dyeing.goods, dyeing.dye, context.laid_at(dyeing)));
        }
    }
    laid
}
