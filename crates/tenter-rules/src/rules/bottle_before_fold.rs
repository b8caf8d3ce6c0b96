//! The clock of the bottle runs while one folds.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "bottle-before-fold",
    summary: "Dye and alkali stand together in a bottle while the goods are still being soaked, folded or bound.",
    group: Group::Dye,
    level: Level::Advice,
    since: "1",
    page: include_str!("bottle_before_fold.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for event in context.events() {
        let EventKind::Drawn { mix, alkali_with_dye: Some(together), .. } = &event.kind else { continue };
        if told.contains(mix) || context.troubled_line(event.place) {
            continue;
        }
        told.push(*mix);
        let Some(drawn) = context.rehearsal.frames.get(event.frame) else { continue };
        let since = drawn.start.elapsed.best - together.best;
        let shaped = context.events().filter(|other| other.frame < event.frame).find(|other| {
            let working = matches!(other.kind, EventKind::Shaped { .. } | EventKind::SoakUptake { .. });
            let frame = context.rehearsal.frames.get(other.frame);
            working && frame.is_some_and(|frame| frame.start.elapsed.best > since - 1.0)
        });
        let Some(shaped) = shaped else { continue };
        let mix = context.recipe.mix(*mix);
        let Some(made) = mix.made_by_step else { continue };
        let minutes = tenter_quantity::show(*together, tenter_quantity::standard::MINUTE);
        let verb = context.verb_at(shaped.place).unwrap_or("shape");
        found.push(
            Finding::new(
                &RULE,
                made,
                format!("{} has its alkali before the goods are ready: {minutes} go by until the first of it is used", mix.name.text),
            )
            .note(shaped.place, format!("first comes this: {verb}"))
            .note(event.place, "used from here")
            .help("Mix the dye without the alkali, fold and bind, and add the alkali last: from then on the dye binds to the water too."),
        );
    }
}
