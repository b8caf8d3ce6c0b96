//! Strewn dye that goes into the soak.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "powder-soaked-off",
    summary: "Goods go into a soak with dye powder lying on them.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("powder_soaked_off.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    let mut strewn = Vec::new();
    let mut told = Vec::new();
    for event in context.events() {
        match &event.kind {
            EventKind::DyeLaid { goods, dye, dry: true, .. } => strewn.push((*goods, *dye, event.place)),
            EventKind::LiquorLaid { goods, .. }
            | EventKind::Heated { goods, .. }
            | EventKind::Batch { goods, .. }
            | EventKind::Rinse { goods, .. } => strewn.retain(|(laid, _, _)| laid != goods),
            EventKind::Immersed { goods, .. } | EventKind::SoakUptake { goods, .. } => {
                let soaks = matches!(context.verb_at(event.place), Some("soak" | "wet out"));
                let Some((_, dye, laid)) = strewn.iter().find(|(laid, _, _)| laid == goods) else { continue };
                if !soaks || told.contains(&event.place) {
                    continue;
                }
                told.push(event.place);
                found.push(
                    Finding::new(
                        &RULE,
                        event.place,
                        format!(
                            "{} go into a soak with {} strewn on them: it dissolves into the soak",
                            context.goods_name(*goods),
                            context.material(*dye).name
                        ),
                    )
                    .note(*laid, "strewn here")
                    .help("Soak and wring first, then strew the dye."),
                );
            }
            _ => {}
        }
    }
}
