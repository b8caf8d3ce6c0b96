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
    heated_in_a_rush(context, &woolly, found);
    steamed_then_rinsed(context, &woolly, found);
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

/// Out of the steam into cold water, with no step between in which it cools.
fn steamed_then_rinsed(context: &Context<'_>, woolly: &[GoodsId], found: &mut Vec<Finding>) {
    let steps: Vec<_> = context.steps().collect();
    for pair in steps.windows(2) {
        let [steam, next] = pair else { continue };
        let Some(verb) = steam.verb.filter(|verb| matches!(verb.name, "steam" | "microwave")) else { continue };
        let Some(id) = steam.goods.iter().find(|id| woolly.contains(id) && next.goods.contains(id)) else { continue };
        let cold = context.events().find_map(|event| match &event.kind {
            EventKind::Rinse { goods, temperature, .. } | EventKind::Immersed { goods, temperature, .. }
                if event.place == next.place && goods == id && temperature.value.high < COLD =>
            {
                Some(temperature)
            }
            _ => None,
        });
        let Some(cold) = cold else { continue };
        found.push(
            Finding::new(
                &RULE,
                next.place,
                format!("{} go straight from the {} into {} water", context.goods_name(*id), verb.name, cold.show()),
            )
            .note(steam.place, "hot here")
            .figure(cold)
            .help("Let them cool until they are hand-warm first: wool felts and shrinks in a shock.")
            .level(Level::Advice),
        );
    }
}

/// 25 °C in K.
const COLD: f64 = 298.15;

/// A bath with wool in it brought up too fast.
fn heated_in_a_rush(context: &Context<'_>, woolly: &[GoodsId], found: &mut Vec<Finding>) {
    let Some(id) = woolly.first() else { return };
    for event in context.events() {
        let EventKind::BathTemperature { from, to, over, goods_inside: true, .. } = &event.kind else { continue };
        let written = context.step_at(event.place).and_then(|step| step.duration.as_ref());
        let rise = to.value.best - from.value.best;
        if rise <= SHOCK || over.best <= 0.0 || rise / over.best * 60.0 <= FASTEST || context.troubled_line(event.place)
        {
            continue;
        }
        let Some(written) = written else { continue };
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} are heated from {} to {} in {}",
                    context.goods_name(*id),
                    from.show(),
                    to.show(),
                    written.show()
                ),
            )
            .figure(from)
            .figure(to)
            .figure(written)
            .help(
                "Take half an hour or more, 1 to 2 K a minute: wool felts in a rush, and acid dye goes on in patches.",
            ),
        );
    }
}

/// Kelvins a minute.
const FASTEST: f64 = 5.0;
/// Kelvins.
const SHOCK: f64 = 30.0;
