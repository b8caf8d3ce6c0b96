//! From cold to hot in no time.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::standard::{CELSIUS, MINUTE};
use tenter_quantity::{Figure, Interval, show};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "temperature-jumps",
    summary: "A bath is to be hotter or colder than it can get in the time the recipe gives.",
    group: Group::HeatAndTime,
    level: Level::Advice,
    since: "1",
    page: include_str!("temperature_jumps.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::BathTemperature { liquor, from, to, over, .. } = &event.kind else { continue };
        let Some(verb) = context.verb_at(event.place) else { continue };
        if context.troubled_line(event.place)
            || context.washes(event.place)
            || found.iter().any(|have| have.rule == RULE.name && have.place == event.place)
        {
            continue;
        }
        let finding = match verb {
            "hold" | "immerse" => jumped(from, to).then(|| {
                Finding::new(
                    &RULE,
                    event.place,
                    format!("the bath is at {} and is to be at {} from one moment to the next", from.show(), to.show()),
                )
                .help("Say how it gets there: `raise to … over 20 min`, `cool to … over 30 min`, or mix it at the temperature that is wanted.")
            }),
            _ => water(context, event.frame, *liquor).and_then(|water| too_fast(event.place, from, to, *over, water)),
        };
        if let Some(finding) = finding {
            found.push(finding.noted(from, "from here").noted(to, "to here").figure(from).figure(to));
        }
    }
}

/// kg of water in the bath.
fn water(context: &Context<'_>, frame: usize, liquor: usize) -> Option<f64> {
    let water = context.rehearsal.frames.get(frame)?.liquors.get(liquor)?.contents.water_mass();
    (water.best > 0.0).then_some(water.low)
}

fn jumped(from: &Figure, to: &Figure) -> bool {
    to.value.low - from.value.high > JUMP || from.value.low - to.value.high > 2.0 * JUMP
}

fn too_fast(place: tenter_quantity::Place, from: &Figure, to: &Figure, over: Interval, water: f64) -> Option<Finding> {
    let rise = to.value.low - from.value.high;
    if rise < JUMP || over.high <= 0.0 {
        return None;
    }
    let power = water * HEAT * rise / over.high;
    if power < MOST_POWER {
        return None;
    }
    let least = water * HEAT * rise / STOVE;
    let finding = Finding::new(
        &RULE,
        place,
        format!(
            "{} L from {} to {} in {} would take about {} kW",
            crate::bench::number(water),
            show(from.value, CELSIUS),
            show(to.value, CELSIUS),
            show(over, MINUTE),
            crate::bench::number(power / 1000.0)
        ),
    )
    .help(format!(
        "A kitchen hob gives 2 to 3 kW: count on {} or more. Look for a slip in the time.",
        show(Interval::exact(libm::round(least / 60.0).max(1.0) * 60.0), MINUTE)
    ));
    Some(finding.level(Level::Warning))
}

/// K that a bath drifts, or a hot kettle makes up, without a word.
const JUMP: f64 = 12.0;
/// J/(kg·K).
const HEAT: f64 = 4186.0;
/// W: a big gas ring in a studio.
const MOST_POWER: f64 = 10_000.0;
/// W.
const STOVE: f64 = 3_000.0;
