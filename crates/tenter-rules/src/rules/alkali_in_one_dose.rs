//! All the soda at once.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::Evenness;

pub(crate) const RULE: Rule = Rule {
    name: "alkali-in-one-dose",
    summary: "All the alkali at once into a bath that should dye level.",
    group: Group::Alkali,
    level: Level::Advice,
    since: "1",
    page: include_str!("alkali_in_one_dose.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let Some((Evenness::Level, said)) = context.recipe.header.shade else { return };
    for event in context.events() {
        let EventKind::Added { material, mass, portions: 1, goods_inside: true, dye_in_bath, .. } = &event.kind else {
            continue;
        };
        if context.material(*material).role() != Role::Alkali
            || dye_in_bath.best <= 0.0
            || added_again(context, event.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} of {} goes in at once, and the shade is to be level",
                    mass.show(),
                    context.material(*material).name
                ),
            )
            .note(said, "a level shade is wanted")
            .figure(mass)
            .help("Dissolve it and add it in two or three parts some minutes apart: `in 3 parts, 5 min apart`."),
        );
    }
}

/// Whether the recipe adds alkali to a bath on another line as well: parts written out one by one.
fn added_again(context: &Context<'_>, place: tenter_quantity::Place) -> bool {
    context.events().any(|event| {
        event.place != place
            && matches!(&event.kind, EventKind::Added { material, goods_inside: true, .. }
                if context.material(*material).role() == Role::Alkali)
    })
}
