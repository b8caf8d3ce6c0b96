//! It will not fit.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Interval;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{GoodsId, LiquorKind, Step, Vessel};

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
    let no_dye_bath =
        !context.events().any(|event| matches!(&event.kind, EventKind::Immersed { dye, .. } if dye.best > 0.0));
    for event in context.events() {
        let EventKind::Immersed { goods, fills: Some(fills), vessel, dye, .. } = &event.kind else { continue };
        // A vessel no step names is where the dye bath stands; scouring and rinsing may have the washing machine.
        let its_own = dye.best > 0.0 || (no_dye_bath && soak(context, event.place));
        let said = vessel.is_some();
        let vessel = if its_own && !context.washes(event.place) { context.vessel_of(*vessel) } else { *vessel };
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
            .level(if dye.best > 0.0 || said { Level::Error } else { Level::Advice })
            .help(if dye.best > 0.0 || said {
                "Take a bigger vessel with a hand's breadth to spare, or work in lots."
            } else {
                "No step says what stands in it. If it is this, take a bigger one; if not, name it where it is used."
            }),
        );
    }
    standing(context, found);
    heaped_in(context, found);
    poured_in(context, found);
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

/// Goods put into a mix with a name: where nothing is dyed in a bath, the only vessel there is holds that.
fn soak(context: &Context<'_>, place: tenter_quantity::Place) -> bool {
    context
        .step_at(place)
        .and_then(|step| step.liquor.as_ref())
        .is_some_and(|liquor| matches!(liquor.kind, LiquorKind::Mix(_)))
}

/// The vessel goods lie in, `on rack`, `in tub`: whichever a line about them names.
fn lying_in<'a>(context: &Context<'a>, goods: GoodsId) -> Option<(&'a Vessel, &'a Step)> {
    context.recipe.vessels.iter().find_map(|vessel| {
        let name = vessel.name.text.to_lowercase();
        let step = context
            .steps()
            .find(|step| step.goods.contains(&goods) && context.text(step.place).to_lowercase().contains(&name))?;
        Some((vessel, step))
    })
}

/// Liquor poured over goods that lie in a vessel, with what they hold already.
fn poured_in(context: &Context<'_>, found: &mut Vec<Finding>) {
    for frame in &context.rehearsal.frames {
        for state in frame.goods.iter().filter(|state| state.lies_in_vessel && state.inside.is_none()) {
            let Some((vessel, step)) = lying_in(context, state.goods) else { continue };
            let Some(holds) = &vessel.holds else { continue };
            let water: Interval = state.zones.iter().map(|zone| zone.contents.water_mass()).sum();
            let fills = (water + state.dry.value).scale(1.0 / WATER);
            let known = found.iter().any(|have| have.rule == RULE.name);
            if fills.low <= holds.value.high || known || context.troubled_line(frame.place) {
                continue;
            }
            found.push(
                Finding::new(
                    &RULE,
                    frame.place,
                    format!(
                        "{} with what is poured over them fill {}, and {} holds {}",
                        context.goods_name(state.goods),
                        crate::bench::litres(fills.best),
                        vessel.name.text,
                        holds.show()
                    ),
                )
                .noted(holds, "holds so much")
                .note(step.place, "they lie in it")
                .figure(holds)
                .help("Take a bigger vessel with a hand's breadth to spare, or pour less."),
            );
        }
    }
}

/// Ice heaped over goods in a vessel: its water alone has to find room.
fn heaped_in(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Iced { goods, mass, .. } = &event.kind else { continue };
        let Some((vessel, step)) = lying_in(context, *goods) else { continue };
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
