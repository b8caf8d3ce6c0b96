//! Drying out.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::Cover;

pub(crate) const RULE: Rule = Rule {
    name: "batch-dries-out",
    summary: "Goods lie uncovered so long that they dry while the dye should react.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("batch_dries_out.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::Batch { goods, time, cover, water_before, water_after, dye: true, alkali: true, .. } =
            &event.kind
        else {
            continue;
        };
        let long = *cover == Some(Cover::Uncovered) && time.value.best >= LONG;
        if !matches!(cover, None | Some(Cover::Uncovered))
            || water_before.best < DRY
            || (water_after.best >= DRY && !long)
            || context.troubled_line(event.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} lie open for {} and go from {}% to about {}% water, the edges first: where it is dry the dye stops reacting",
                    context.goods_name(*goods),
                    time.show(),
                    number(libm::round(water_before.best * 20.0) * 5.0),
                    number(libm::round(water_after.best * 20.0) * 5.0)
                ),
            )
            .figure(time)
            .help("Wrap them: `in sealed bag`, `under plastic` or `covered`."),
        );
    }
}

/// Water held, kg/kg.
const DRY: f64 = 0.3;
/// 4 h in s.
const LONG: f64 = 14_400.0;
