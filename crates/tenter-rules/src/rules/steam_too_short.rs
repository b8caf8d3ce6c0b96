//! A whiff of steam.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

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
        if step.verb.is_none_or(|verb| verb.name != "steam") || context.troubled_line(step.place) {
            continue;
        }
        let Some(time) = step.duration.as_ref().filter(|time| time.value.high < LEAST) else { continue };
        let dyed = context.dyeings().any(|dyeing| dyeing.steamed && step.goods.contains(&dyeing.goods));
        if !dyed {
            continue;
        }
        found.push(
            Finding::new(&RULE, step.place, format!("steamed for {}: the cloth is hardly hot by then", time.show()))
                .noted(time, "the time")
                .figure(time)
                .help("A factory steamer fixes the quickest dyes in 30 to 60 s; a pot on the stove takes 10 to 30 min. Look for a slip of unit: s for min."),
        );
    }
}

/// s.
const LEAST: f64 = 30.0;
