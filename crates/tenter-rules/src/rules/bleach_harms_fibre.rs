//! The fibre cannot take it.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::FibreFamily;

pub(crate) const RULE: Rule = Rule {
    name: "bleach-harms-fibre",
    summary: "Hypochlorite on wool, silk, elastane or nylon.",
    group: Group::Finish,
    level: Level::Error,
    since: "1",
    page: include_str!("bleach_harms_fibre.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for step in context.steps() {
        let bleach = crate::bench::materials_of_step(context, step).into_iter().find(|(id, _)| {
            context
                .material(*id)
                .reference
                .is_some_and(|entry| entry.hazard_groups.iter().any(|group| group == "hypochlorite"))
        });
        let Some((bleach, _)) = bleach else { continue };
        for id in &step.goods {
            let Some(goods) = context.goods(*id) else { continue };
            let harmed = goods.fibres.iter().find(|part| {
                part.fibre.is_some_and(|fibre| {
                    fibre.family == FibreFamily::Protein
                        || matches!(fibre.id.as_str(), "elastane" | "nylon" | "polyamide")
                })
            });
            let Some(part) = harmed else { continue };
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!("{} destroys {}", context.material(bleach).name, part.name.text),
                )
                .note(part.name.place, "the fibre is written here")
                .help("Use a reducing agent, or peroxide for wool and silk."),
            );
            return;
        }
    }
}
