//! A whiff of steam.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::DyeFamily;

pub(crate) const RULE: Rule = Rule {
    name: "steam-too-short",
    summary: "Goods are steamed for less time than any dye needs.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("steam_too_short.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        microwave(context, step, found);
        if step.verb.is_none_or(|verb| verb.name != "steam") || context.troubled_line(step.place) {
            continue;
        }
        let Some(time) = step.duration.as_ref() else { continue };
        let mut dyed = context.dyeings().filter(|dyeing| dyeing.steamed && step.goods.contains(&dyeing.goods));
        // An acid dye moves into wool, silk and nylon slowly, where a reactive one only has to react.
        let acid = |dyeing: &tenter_rehearse::Dyeing| {
            context.class(dyeing.dye).is_some_and(|class| class.family == DyeFamily::Acid)
        };
        let Some(first) = dyed.next() else { continue };
        let slow = acid(first) || dyed.any(acid);
        if time.value.high >= if slow { LEAST_ACID } else { LEAST } {
            continue;
        }
        let (why, help) = if slow {
            (
                "acid dye wants 20 to 45 min of steam to go on and stay",
                "Steam it for half an hour or more. Look for a slip of unit: s for min, a digit lost.",
            )
        } else {
            (
                "the cloth is hardly hot by then",
                "A factory steamer fixes the quickest dyes in 30 to 60 s; a pot on the stove takes 10 to 30 min. Look for a slip of unit: s for min.",
            )
        };
        found.push(
            Finding::new(&RULE, step.place, format!("steamed for {}: {why}", time.show()))
                .noted(time, "the time")
                .figure(time)
                .help(help),
        );
    }
}

/// Wet cloth in a microwave oven: 600 W warm 100 g of cloth with as much water by some 70 K in a minute.
fn microwave(context: &Context<'_>, step: &tenter_resolve::recipe::Step, found: &mut Vec<Finding>) {
    let named = step.verb.is_some_and(|verb| verb.name == "microwave");
    let Some(time) = step.duration.as_ref().filter(|time| named && time.value.high < LEAST_MICROWAVE) else { return };
    if context.troubled_line(step.place) {
        return;
    }
    found.push(
        Finding::new(&RULE, step.place, format!("{} in the microwave: the cloth is hardly warm by then", time.show()))
            .noted(time, "the time")
            .figure(time)
            .help("One to four minutes are usual, with rests between. Look for a slip of unit: s for min."),
    );
}

/// s.
const LEAST_MICROWAVE: f64 = 15.0;
/// s: eight minutes; factory steamers take that long for nylon.
const LEAST_ACID: f64 = 480.0;
/// s.
const LEAST: f64 = 30.0;
