//! Too short or too cold a batch.

use crate::bench::per_cent;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{FibreFamily, Role};
use tenter_rehearse::{Dyeing, EventKind, Medium};

pub(crate) const RULE: Rule = Rule {
    name: "batch-too-short",
    summary: "The dye is washed off long before it has had the time and warmth to fix.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("batch_too_short.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        let dry = dyeing.dry && !crate::rules::powder_never_wetted::again_wet(context, dyeing);
        if !cellulose || dyeing.usable.best <= 0.0 || dyeing.steamed || !dyeing.wetted || dry {
            continue;
        }
        // A salted bath in the window of the class drives the dye on and fixes it within the hour; the table of cold
        // batches says nothing about it.
        if exhausted(context, dyeing) {
            continue;
        }
        // The dye may meet alkali in one account and go on in another: the best of them counts.
        let best = context
            .dyeings()
            .filter(|other| {
                (other.goods, other.lot, other.zone, other.dye) == (dyeing.goods, dyeing.lot, dyeing.zone, dyeing.dye)
            })
            .filter_map(|other| context.rehearsal.reacted(other))
            .map(|reaction| (reaction.batch_share.best, reaction.batch_share.high))
            .fold((-1.0, -1.0), |most: (f64, f64), share| (most.0.max(share.0), most.1.max(share.1)));
        let least = if lies_cold(context, dyeing) {
            LEAST_COLD
        } else if dyeing.dry {
            LEAST_STREWN
        } else if crate::bench::buffered(dyeing) {
            LEAST_BUFFERED
        } else {
            LEAST
        };
        let rushed = dyeing.dry && dyeing.medium == Medium::Cloth && waits(dyeing) < LEAST_SET;
        if best.0 < 0.0 || (best.0 >= least && !rushed) {
            continue;
        }
        // No time is long enough then, and another finding says so.
        if crate::rules::too_cold_for_class::too_cold(context, dyeing.goods, dyeing.dye).is_some() {
            continue;
        }
        let place = dyeing.batch.as_ref().map_or_else(|| context.laid_at(dyeing), |(_, _, place)| *place);
        if told.contains(&place) {
            continue;
        }
        told.push(place);
        let zone = context.zone_name(dyeing.goods, dyeing.zone);
        let share = per_cent(libm::round(best.0 * 100.0).max(1.0) / 100.0);
        let name = &context.material(dyeing.dye).name;
        let warm = dyeing
            .warmest
            .as_ref()
            .map_or_else(String::new, |(warmest, _)| format!(", never warmer than {}", warmest.show()));
        let message = match &dyeing.batch {
            Some((time, _, _)) => {
                format!("{name} on {zone} has {} to react{warm}: about {share} of a full batch", time.show())
            }
            None => format!(
                "{name} on {zone} is given no time to react before it is washed off{warm}: about {share} of a full batch"
            ),
        };
        let mut finding = Finding::new(&RULE, place, message).figure(&dyeing.mass).help(help(context, dyeing.dye));
        if let Some(washed) = dyeing.washed {
            finding = finding.note(washed, "washed off here");
        }
        found.push(finding);
    }
}

/// Whether goods lay long enough in a bath with alkali and salt, at a warmth of the window of the class.
fn exhausted(context: &Context<'_>, dyeing: &Dyeing) -> bool {
    let Medium::Bath(liquor) = dyeing.medium else { return false };
    let Some(window) = context.class(dyeing.dye).and_then(|class| class.fixation_celsius.as_ref()) else {
        return false;
    };
    let with_alkali = |frame: &&tenter_rehearse::Frame| {
        let lies = frame.goods.get(dyeing.state).is_some_and(|goods| goods.inside == Some(liquor));
        lies && frame.liquors.get(liquor).is_some_and(|bath| {
            let warm = bath.temperature.value.best - 273.15;
            warm >= window.low
                && context.holds(&bath.contents, Role::Salt)
                && context.rehearsal.substances.alkali_as_soda_ash(&bath.contents).is_some()
        })
    };
    let time: f64 = context.rehearsal.frames.iter().filter(with_alkali).map(|frame| frame.time.value.best).sum();
    time >= LEAST_EXHAUST
}

/// 30 min in s; the trade gives 30 to 60 (common practice, no source).
const LEAST_EXHAUST: f64 = 1_800.0;
/// Whether the longest wait is in a place too cold for any class.
fn lies_cold(context: &Context<'_>, dyeing: &Dyeing) -> bool {
    let Some((_, _, waited)) = &dyeing.batch else { return false };
    context.events().any(|event| {
        matches!(&event.kind, EventKind::Batch { surroundings, .. } if surroundings.value.high < COLD)
            && event.place == *waited
    })
}

/// The longest wait, at its most, s.
fn waits(dyeing: &Dyeing) -> f64 {
    dyeing.batch.as_ref().map_or(0.0, |(time, _, _)| time.value.high)
}

/// Powder set with hot water lies for 45 min at least (common practice, no source); clocks differ. s.
const LEAST_SET: f64 = 1_800.0;
/// 15 °C in K.
const COLD: f64 = 288.15;
/// Share of a full batch, for goods that lie cold.
const LEAST_COLD: f64 = 0.5;
/// Share of a full batch, for dye from a bottle or bath.
const LEAST: f64 = 0.15;
/// The same for powder strewn on: it counts on the heat of the water that sets it.
const LEAST_STREWN: f64 = 0.31;

fn help(context: &Context<'_>, dye: tenter_resolve::recipe::MaterialId) -> String {
    let full = context.class(dye).and_then(|class| class.reference_batch.as_ref()).map_or_else(String::new, |batch| {
        format!(
            " A full batch of its class is about {} h at {} °C.",
            crate::bench::number(batch.hours.best),
            crate::bench::number(batch.at_celsius)
        )
    });
    format!("Leave it longer or warmer, wrapped up so that it stays wet.{full}")
}
/// With soda and more bicarbonate the dye reacts slowly, and so does the water: a day is usual (common practice, no source).
const LEAST_BUFFERED: f64 = 0.06;
