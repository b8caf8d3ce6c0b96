//! It will not fit.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "vessel-too-small",
    summary: "Bath and goods do not fit into the vessel.",
    group: Group::WaterAndSalt,
    level: Level::Error,
    since: "1",
    page: include_str!("vessel_too_small.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Immersed { goods, fills: Some(fills), vessel, dye, .. } = &event.kind else { continue };
        // A vessel no step names is where the dye bath stands; scouring and rinsing may have the washing machine.
        let vessel = if dye.best > 0.0 && !context.washes(event.place) { context.vessel_of(*vessel) } else { *vessel };
        let Some(vessel) = vessel else { continue };
        let Some(vessel) = context.recipe.vessels.get(vessel.0) else { continue };
        let Some(holds) = &vessel.holds else { continue };
        if fills.value.low <= holds.value.high || context.troubled_line(event.place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "bath and {} fill {}, and {} holds {}",
                    context.goods_name(*goods),
                    fills.show(),
                    vessel.name.text,
                    holds.show()
                ),
            )
            .noted(holds, "holds so much")
            .figure(fills)
            .figure(holds)
            .help("Take a bigger vessel with a hand's breadth to spare, or work in lots."),
        );
    }
    standing(context, found);
    heaped_in(context, found);
    for step in context.steps() {
        let Some(tenter_resolve::recipe::Source::Vessel(id)) = &step.source else { continue };
        let Some(vessel) = context.recipe.vessels.get(id.0) else { continue };
        let Some(holds) = &vessel.holds else { continue };
        let Some(most) =
            step.applied.iter().filter_map(|ingredient| ingredient.amount.as_ref()?.volume.as_ref()).next()
        else {
            continue;
        };
        let pieces = context.recipe.totals.pieces.as_ref().map_or(1.0, |pieces| pieces.value.best.max(1.0));
        // A can is filled again for the next piece; one piece's share has to fit.
        if most.value.low / pieces <= holds.value.high {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!(
                    "{} is to give {} to one piece, and holds {}",
                    vessel.name.text,
                    crate::bench::litres(most.value.best / pieces),
                    holds.show()
                ),
            )
            .noted(holds, "holds so much")
            .figure(most)
            .help("Take a bigger vessel, or pour in two goes."),
        );
    }
}

/// A liquor that does not fit into the vessel it is made in, goods or no goods.
fn standing(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for frame in &context.rehearsal.frames {
        for liquor in frame.liquors.iter().filter(|liquor| !liquor.gone) {
            let Some(id) = liquor.vessel.filter(|id| !told.contains(id)) else { continue };
            let Some(vessel) = context.recipe.vessels.get(id.0) else { continue };
            let (Some(holds), Some(volume)) = (&vessel.holds, &liquor.volume) else { continue };
            let known = found.iter().any(|have| have.rule == RULE.name && have.message.contains(&*vessel.name.text));
            if volume.value.low <= holds.value.high || known || context.troubled_line(frame.place) {
                continue;
            }
            told.push(id);
            found.push(
                Finding::new(
                    &RULE,
                    frame.place,
                    format!(
                        "{} of liquor is to stand in {}, which holds {}",
                        volume.show(),
                        vessel.name.text,
                        holds.show()
                    ),
                )
                .noted(holds, "holds so much")
                .figure(volume)
                .figure(holds)
                .help(
                    "Take a bigger vessel with room for the goods and a hand's breadth to spare, or make less of it.",
                ),
            );
        }
    }
}

/// Ice heaped over goods in a vessel: its water alone has to find room.
fn heaped_in(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Iced { goods, mass, .. } = &event.kind else { continue };
        // `on rack`, `in tub`: whichever vessel a line about these goods names.
        let lying = context.recipe.vessels.iter().find_map(|vessel| {
            let name = vessel.name.text.to_lowercase();
            let step = context
                .steps()
                .find(|step| step.goods.contains(goods) && context.text(step.place).to_lowercase().contains(&name))?;
            Some((vessel, step))
        });
        let Some((vessel, step)) = lying else { continue };
        let Some(holds) = vessel.holds.as_ref().filter(|holds| mass.value.low / WATER > holds.value.high) else {
            continue;
        };
        if context.troubled_line(event.place) || found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!("{} of ice melts to more than {} holds: {}", mass.show(), vessel.name.text, holds.show()),
            )
            .noted(holds, "holds so much")
            .note(step.place, "they lie in it")
            .figure(mass)
            .figure(holds)
            .help("Take a bigger vessel, or less ice, or lift the goods on a rack over a tub that takes the melt."),
        );
    }
}

/// kg/m³.
const WATER: f64 = 1000.0;
