//! Holes, some washes later.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{LiquorKind, MaterialId};

pub(crate) const RULE: Rule = Rule {
    name: "bleach-eats-cloth",
    summary: "Hypochlorite too strong, too hot or too long for the cloth.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("bleach_eats_cloth.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() || context.troubled_mixes() {
        return;
    }
    for step in context.steps() {
        let wet = step.verb.is_some_and(|verb| matches!(verb.name, "bleach" | "immerse" | "soak" | "dip"));
        let brings = crate::bench::materials_of_step(context, step);
        let Some((bleach, _)) = brings.into_iter().find(|(id, _)| wet && hypochlorite(context, *id)) else { continue };
        let name = &context.material(bleach).name;
        let help = "Common practice is 1 part of household bleach to 5 to 10 of cold water, and minutes: watch it, rinse at the first sign of the tone you want, and stop it. Open windows; gloves and goggles.";
        if let Some(time) = step.duration.as_ref().filter(|time| time.value.low > LONGEST) {
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!("{} in {name} for {}: cotton is eaten through", goods(context, step), time.show()),
                )
                .noted(time, "so long")
                .figure(time)
                .help(help),
            );
            continue;
        }
        let liquor = step.liquor.as_ref().map(|liquor| &liquor.kind);
        let mixed = match liquor {
            Some(LiquorKind::Mix(id)) => context.recipe.mix(*id).temperature.as_ref(),
            Some(LiquorKind::Bath(inside)) => inside.iter().find_map(|ingredient| ingredient.temperature.as_ref()),
            _ => None,
        };
        if let Some(hot) = step.temperature.as_ref().or(mixed).filter(|figure| figure.value.low > HOT) {
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!(
                        "{name} at {}: it works many times faster than one can watch, and its fumes with it",
                        hot.show()
                    ),
                )
                .noted(hot, "so hot")
                .figure(hot)
                .help(help),
            );
            continue;
        }
        if let Some(strength) = strength(context, step.place, bleach).filter(|share| *share > STRONGEST) {
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!("the bath of {name} has about {}% of active hypochlorite", number(strength * 100.0)),
                )
                .note(context.material(bleach).place, "the bleach")
                .help(help),
            );
        }
    }
}

fn goods<'a>(context: &Context<'a>, step: &tenter_resolve::recipe::Step) -> &'a str {
    step.goods.first().map_or("cloth", |id| context.goods_name(*id))
}

fn hypochlorite(context: &Context<'_>, id: MaterialId) -> bool {
    context.material(id).reference.is_some_and(|entry| entry.hazard_groups.iter().any(|group| group == "hypochlorite"))
}

/// Active substance as a share of the bath the goods lie in at that step.
fn strength(context: &Context<'_>, place: tenter_quantity::Place, bleach: MaterialId) -> Option<f64> {
    let immersed = context.events().any(|event| {
        event.place == place
            && matches!(event.kind, EventKind::Immersed { .. } | EventKind::SoakUptake { .. } | EventKind::Rinse { .. })
    });
    let frame = context.rehearsal.frame_at(place).filter(|_| immersed)?;
    let liquor = frame.liquors.iter().rev().find(|liquor| liquor.contents.mass(bleach).best > 0.0)?;
    let there = liquor.contents.mass(bleach).best;
    let water = liquor.contents.water_mass().best;
    let purity = context.material(bleach).purity.as_ref().map_or(1.0, |purity| purity.value.best);
    (water > 0.0).then(|| there * purity / (there + water))
}

/// 90 min in s.
const LONGEST: f64 = 5_400.0;
/// 40 °C in K.
const HOT: f64 = 313.15;
/// Share of active hypochlorite.
const STRONGEST: f64 = 0.015;
