//! How do they lie?

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "cover-not-said",
    summary: "Dyed goods are left to react for hours, and nothing says how they are kept wet.",
    group: Group::HeatAndTime,
    level: Level::Advice,
    since: "1",
    page: include_str!("cover_not_said.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Batch { goods, time, cover: None, water_before, dye: true, alkali: true, .. } = &event.kind
        else {
            continue;
        };
        let in_something =
            context.step_at(event.place).is_none_or(|step| step.liquor.is_some())
                || context.rehearsal.frames.get(event.frame).is_some_and(|frame| {
                    frame.goods.iter().any(|state| state.goods == *goods && state.inside.is_some())
                });
        if time.value.best < LONG
            || water_before.best < WET
            || in_something
            || context.troubled_line(event.place)
            || found
                .iter()
                .any(|have| have.place == event.place && matches!(have.rule, "batch-dries-out" | "cover-not-said"))
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!("{} lie for {}: open, covered, in a bag?", context.goods_name(*goods), time.show()),
            )
            .noted(time, "so long")
            .figure(time)
            .help("Add `covered`, `in sealed bag` or `under plastic`: where the cloth dries the dye stops reacting, the edges first."),
        );
    }
}

/// 2 h in s.
const LONG: f64 = 7_200.0;
/// Water held that is worth keeping, kg/kg.
const WET: f64 = 0.3;
