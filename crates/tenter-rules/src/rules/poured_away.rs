//! Down the drain with it.

use crate::bench::{litres, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "poured-away",
    summary: "Far more water is poured over than the goods hold, and takes dye and alkali with it.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("poured_away.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for event in context.events() {
        let EventKind::Overflow { goods, dye, .. } = &event.kind else { continue };
        let poured = context.verb_at(event.place).is_some_and(|verb| matches!(verb, "irrigate" | "pour"));
        if !poured || dye.best <= 0.0 || told.contains(&event.place) || context.troubled_line(event.place) {
            continue;
        }
        told.push(event.place);
        // All zones and faces that this step pours over, together: what one cannot hold the next may.
        let (mut held, mut off, mut lost) = (0.0, 0.0, 0.0);
        for other in context.events().filter(|other| other.place == event.place && other.frame == event.frame) {
            if let EventKind::Overflow { held: there, runs_off, dye, through: false, .. } = &other.kind {
                held += there.value.low;
                off += runs_off.value.low;
                lost += dye.best;
            }
        }
        let share = off / f64::max(held, f64::MIN_POSITIVE);
        if share < LEAST || lost <= 0.0 {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} of the {} poured over {} and held before runs off, and carries about {} of dye away",
                    per_cent(libm::round(share * 20.0) / 20.0),
                    litres(held / 1000.0),
                    context.goods_name(*goods),
                    crate::bench::grams(tenter_quantity::Interval::exact(lost))
                ),
            )
            .help("Pour what the cloth can take up, two to three times its dry weight in all, slowly. Look for a slip: L for mL, each for all."),
        );
    }
}

/// Share that runs off.
const LEAST: f64 = 0.6;
