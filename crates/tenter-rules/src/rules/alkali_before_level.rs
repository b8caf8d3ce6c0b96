//! Soda too early.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::Evenness;

pub(crate) const RULE: Rule = Rule {
    name: "alkali-before-level",
    summary: "Alkali goes into a bath before the dye had time to go on evenly.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("alkali_before_level.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if !matches!(context.recipe.header.shade, Some((Evenness::Level, _))) {
        return;
    }
    for event in context.events() {
        let EventKind::Added { material, goods_inside: true, dye_in_bath, levelling_time: Some(time), .. } =
            &event.kind
        else {
            continue;
        };
        if context.material(*material).role() != Role::Alkali || dye_in_bath.best <= 0.0 || time.best >= LEAST {
            continue;
        }
        if context.troubled_steps() {
            continue;
        }
        let minutes = tenter_quantity::show(*time, tenter_quantity::standard::MINUTE);
        found.push(
            Finding::new(&RULE, event.place, format!("the goods have been in the dye for {minutes} when the alkali comes"))
                .help("Let dye and salt work for 20 to 30 min first, moving the goods (common practice); then add the alkali."),
        );
    }
}

/// 15 min in s.
const LEAST: f64 = 900.0;
