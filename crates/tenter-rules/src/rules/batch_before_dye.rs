//! The wrong way round.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "batch-before-dye",
    summary: "Goods are left to react before any dye is on them.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("batch_before_dye.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    for event in context.events() {
        let EventKind::Batch { goods, dye: false, .. } = &event.kind else { continue };
        if context.verb_at(event.place) != Some("batch") {
            continue;
        }
        let later =
            context.events().skip_while(|other| other.frame <= event.frame).find_map(|other| match &other.kind {
                EventKind::DyeLaid { goods: dyed, .. } if dyed == goods => Some(other.place),
                _ => None,
            });
        let Some(later) = later else { continue };
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!("{} are batched before any dye is on them", context.goods_name(*goods)),
            )
            .note(later, "the dye comes only here")
            .help("Put the batch behind the steps that lay the dye on."),
        );
    }
}
