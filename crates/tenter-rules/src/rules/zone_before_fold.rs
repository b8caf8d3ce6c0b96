//! Dye on a fold that is not there yet.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::ZoneRef;

pub(crate) const RULE: Rule = Rule {
    name: "zone-before-fold",
    summary: "Something is laid on a zone before the goods are folded that way.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("zone_before_fold.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let steps: Vec<_> = context.steps().collect();
    let mut told = Vec::new();
    for (at, step) in steps.iter().enumerate() {
        for zone in &step.zones {
            let ZoneRef::Of(layout, _) = zone.zone else { continue };
            let folds = |other: &&&tenter_resolve::recipe::Step| other.layout == Some(layout);
            let earlier = steps.iter().take(at).any(|other| folds(&other));
            let Some(later) = steps.iter().skip(at + 1).find(folds) else { continue };
            // A second fold of the same kind for goods that were folded before is no slip.
            if earlier || told.contains(&layout) || context.troubled_line(step.place) {
                continue;
            }
            told.push(layout);
            let name = context.recipe.layouts.get(layout.0).map_or("", |layout| &*layout.name.text);
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!(
                        "`{}` is a zone of {name}, and the goods are folded so only later",
                        context.text(zone.place)
                    ),
                )
                .note(later.place, "folded here")
                .help("Put the folding in front of it. If only some of the goods are folded by then, name them."),
            );
        }
    }
}
