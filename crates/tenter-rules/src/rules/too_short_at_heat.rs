//! Hot, but not for long.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::standard::MINUTE;
use tenter_quantity::{Interval, Place, show};
use tenter_reference::{DyeFamily, FibreFamily};
use tenter_rehearse::{Dyeing, Medium};

pub(crate) const RULE: Rule = Rule {
    name: "too-short-at-heat",
    summary: "A dye that goes on in the heat is kept hot for only a few minutes.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_short_at_heat.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let Some(class) = context.class(dyeing.dye) else { continue };
        let hot_class =
            matches!(class.family, DyeFamily::Acid | DyeFamily::Direct | DyeFamily::Disperse | DyeFamily::Basic);
        // Reactive dyes go on wool and silk as acid dyes do: sour and hot.
        let sour = class.family == DyeFamily::Reactive
            && dyeing.usable.best <= 0.0
            && context.share_of(dyeing.goods, FibreFamily::Protein).is_some_and(|share| share >= 0.5);
        // A reactive dye that fixes hot, in a bath with its alkali.
        let hot_reactive = class.family == DyeFamily::Reactive
            && matches!(dyeing.medium, Medium::Bath(_))
            && dyeing.usable.best > 0.0
            && class.fixation_celsius.as_ref().is_some_and(|window| window.low >= HOT_REACTIVE);
        let window =
            class.fixation_celsius.as_ref().filter(|_| hot_class || hot_reactive).map(|window| window.low - BELOW);
        let Some(least) = window.or(sour.then_some(SOUR)).filter(|_| !dyeing.steamed) else { continue };
        let never = (sour && dyeing.medium != Medium::Cloth).then(|| (Interval::ZERO, context.laid_at(dyeing)));
        let Some((hot, place)) = time_hot(context, dyeing, least + 273.15).or(never) else { continue };
        if hot.high >= LEAST || told.contains(&(place, dyeing.dye)) {
            continue;
        }
        told.push((place, dyeing.dye));
        if found.iter().any(|have| have.rule == RULE.name && have.place == place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is {} dye and has {} at {} °C or hotter; it wants about {}",
                    context.material(dyeing.dye).name,
                    crate::say::with_article(&class.name),
                    show(hot, MINUTE),
                    crate::bench::number(least),
                    class.reference_batch.as_ref().filter(|_| !sour).map_or_else(|| "45 min".to_owned(), |batch| show(Interval::exact(batch.hours.best * 3600.0), MINUTE))
                ),
            )
            .note(context.laid_at(dyeing), "the dye is here")
            .help("Hold it there for half an hour or more; the dye goes deep and level only with time. Look for a slip of unit: s for min."),
        );
    }
}

/// Time for which goods lay in a liquor with the dye at this temperature or above, s, and the last step of it; `None` if
/// never.
fn time_hot(context: &Context<'_>, dyeing: &Dyeing, kelvin: f64) -> Option<(Interval, Place)> {
    let mut all = Interval::ZERO;
    let mut last = None;
    for frame in &context.rehearsal.frames {
        let inside = frame.goods.get(dyeing.state).and_then(|goods| goods.inside);
        let Some(liquor) = inside.and_then(|at| frame.liquors.get(at)) else { continue };
        if liquor.temperature.value.high < kelvin || context.washes(frame.place) {
            continue;
        }
        // The way up counts only from where it is hot: a fifth of it, at a guess.
        let part = if matches!(frame.verb, Some("raise" | "heat" | "cool")) { 0.2 } else { 1.0 };
        all += frame.time.value * Interval::exact(part);
        if part >= 1.0 || last.is_none() {
            last = Some(frame.place);
        }
    }
    last.map(|place| (all, place))
}

/// °C from which a reactive dye goes on wool or silk in a sour bath.
const SOUR: f64 = 70.0;
/// Kelvins below the window of the class that still count.
const BELOW: f64 = 10.0;
/// °C: the lowest window of a reactive class that fixes hot.
const HOT_REACTIVE: f64 = 70.0;
/// s: ten minutes.
const LEAST: f64 = 600.0;
