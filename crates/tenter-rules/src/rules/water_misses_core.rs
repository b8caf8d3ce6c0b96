//! Colour on the outside folds, white within.

use crate::bench::number;
use tenter_rehearse::EventKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "water-misses-core",
    summary: "Too little water over dry dye on folded goods to carry it inside.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("water_misses_core.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for (at, event) in context.rehearsal.events.iter().enumerate() {
        let EventKind::LiquorLaid { goods, zone, water, before, dry, .. } = &event.kind else { continue };
        let poured = context.verb_at(event.place).is_some_and(|verb| matches!(verb, "irrigate" | "pour"));
        let state = context
            .rehearsal
            .frames
            .get(event.frame)
            .and_then(|frame| frame.goods.iter().find(|state| state.goods == *goods));
        let folded = state
            .is_some_and(|state| state.layout.is_some() || state.packing != tenter_chemistry::soak::Packing::Loose);
        let powder = context.dyeings().any(|dyeing| dyeing.goods == *goods && dyeing.zone == *zone && dyeing.dry);
        if !poured || !folded || !powder || told.contains(&event.place) {
            continue;
        }
        let later: f64 = context
            .rehearsal
            .events
            .iter()
            .skip(at + 1)
            .take_while(|later| !context.washes(later.place))
            .filter_map(|later| match &later.kind {
                EventKind::LiquorLaid { goods: other, zone: there, water, .. } if other == goods && there == zone => {
                    Some(water.value.high)
                }
                EventKind::Iced { .. } => Some(f64::MAX / 1e6),
                _ => None,
            })
            .sum();
        let all = before.high + (water.value.high + later) / dry.value.low.max(f64::MIN_POSITIVE);
        if all >= LEAST {
            continue;
        }
        told.push(event.place);
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} hold {} of their weight of water after this; folded cloth is wet to the middle at about {LEAST}",
                    context.zone_name(*goods, *zone),
                    number(before.best + water.value.best / dry.value.best.max(f64::MIN_POSITIVE))
                ),
            )
            .noted(water, "the water is written here")
            .figure(water)
            .figure(dry)
            .help("Pour until it begins to drip from below: some 2 L for each kilogram over cloth that was spun. Less stays in the outer folds, with the dye."),
        );
    }
}

/// Water to dry cloth.
const LEAST: f64 = 1.4;
