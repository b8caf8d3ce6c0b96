//! A bath nobody knows.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Place;
use tenter_resolve::recipe::{LiquorKind, Step};

pub(crate) const RULE: Rule = Rule {
    name: "bath-never-made",
    summary: "Goods are worked in a bath that no mix and no vessel is.",
    group: Group::Amounts,
    level: Level::Error,
    since: "1",
    page: include_str!("bath_never_made.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut known = false;
    for step in context.steps() {
        let place = nowhere(step, known).filter(|_| !context.troubled_line(step.place));
        if let Some(place) = place {
            let name = context.text(place);
            found.push(Finding::new(&RULE, place, format!("nothing here says what is in {name}")).help(format!(
                "Write `mix {name}` with what goes in, or put the liquor into the step: `in 8 L water at 40 °C with …`."
            )));
            return;
        }
        let verb = step.verb.map_or("", |verb| verb.name);
        let liquor = step.liquor.as_ref().map(|liquor| &liquor.kind);
        known = match liquor {
            Some(LiquorKind::Mix(_) | LiquorKind::Bath(_)) => true,
            Some(LiquorKind::Vessel(_)) => known || verb != "make",
            _ => known && !OUT.contains(&verb),
        };
    }
}

/// The words for a bath, where a step works in one and nothing before it made one.
fn nowhere(step: &Step, known: bool) -> Option<Place> {
    step.verb.filter(|verb| WET.contains(&verb.name))?;
    if !step.with.is_empty() || !step.applied.is_empty() {
        return None;
    }
    match &step.liquor {
        Some(liquor) if matches!(liquor.kind, LiquorKind::Current) && !known => Some(liquor.place),
        Some(_) => None,
        None => {
            let named = step.words.iter().find(|words| {
                let last = words.text.split_whitespace().next_back().unwrap_or("").to_lowercase();
                LIQUORS.contains(&last.as_str())
            })?;
            Some(named.place)
        }
    }
}

/// Verbs that take goods out of their bath.
const OUT: [&str; 7] = ["spin", "squeeze", "drip", "lift", "drain", "rinse", "dry"];
/// Verbs that work in a liquor.
const WET: [&str; 9] = ["wet out", "soak", "immerse", "dip", "dye", "bleach", "strip", "simmer", "boil"];
/// What a liquor is called, as its last word.
const LIQUORS: [&str; 5] = ["bath", "soak", "vat", "liquor", "solution"];
