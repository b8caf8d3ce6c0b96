//! Felted by a shock.

use std::collections::BTreeMap;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::FibreFamily;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::GoodsId;

pub(crate) const RULE: Rule = Rule {
    name: "wool-shocked",
    summary: "Wool goes from hot to cold, or cold to hot, at one stroke.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("wool_shocked.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    let mut last: BTreeMap<GoodsId, (&Figure, tenter_quantity::Place)> = BTreeMap::new();
    let woolly: Vec<GoodsId> = (0..context.recipe.goods.len())
        .map(GoodsId)
        .filter(|id| context.share_of(*id, FibreFamily::Protein).is_some_and(|share| share > 0.5))
        // Silk has no scales and does not felt.
        .filter(|id| {
            context
                .goods(*id)
                .is_some_and(|goods| goods.fibres.iter().all(|part| part.fibre.is_none_or(|fibre| fibre.id != "silk")))
        })
        .collect();
    for event in context.events() {
        let (goods, now) = match &event.kind {
            EventKind::Immersed { goods, temperature, .. } => (vec![*goods], temperature),
            EventKind::Rinse { goods, temperature, .. } => (vec![*goods], temperature),
            // Whichever bath it is: the goods cool or warm with it slowly.
            EventKind::BathTemperature { to, .. } => (woolly.clone(), to),
            _ => continue,
        };
        for id in goods {
            if !woolly.contains(&id) {
                continue;
            }
            let before = last.insert(id, (now, event.place));
            let Some((before, place)) = before else { continue };
            let slow = matches!(event.kind, EventKind::BathTemperature { .. });
            let apart = (before.value.low - now.value.high).max(now.value.low - before.value.high);
            if slow || place == event.place || apart <= SHOCK {
                continue;
            }
            found.push(
                Finding::new(
                    &RULE,
                    event.place,
                    format!("{} go from {} to {} at once", context.goods_name(id), before.show(), now.show()),
                )
                .note(place, format!("{} here", before.show()))
                .figure(before)
                .figure(now)
                .help("Let the bath cool first, or take rinse water near the same warmth: wool felts and shrinks in a shock."),
            );
        }
    }
}

/// Kelvins.
const SHOCK: f64 = 30.0;
