//! Disperse dye in soda.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, Role};

pub(crate) const RULE: Rule = Rule {
    name: "disperse-dye-in-alkali",
    summary: "A disperse dye is boiled in an alkaline bath.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("disperse_dye_in_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for (_, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let Some(class) = context.class(dye).filter(|class| class.family == DyeFamily::Disperse) else { continue };
        let Some(frame) = context.rehearsal.frame_at(place) else { continue };
        let bath = frame.liquors.iter().rev().find(|liquor| liquor.contents.mass(dye).best > 0.0);
        let Some(bath) = bath.filter(|bath| !bath.inside.is_empty()) else { continue };
        let alkali = bath
            .contents
            .parts
            .iter()
            .find(|(id, mass)| mass.value.best > 0.0 && context.material(*id).role() == Role::Alkali);
        let Some((alkali, mass)) = alkali else { continue };
        if found.iter().any(|have| have.rule == RULE.name && have.place == place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is {} dye and lies with {} of {}: it wants a faintly sour bath",
                    context.material(dye).name,
                    crate::say::with_article(&class.name),
                    crate::bench::grams(mass.value),
                    context.material(*alkali).name
                ),
            )
            .figure(mass)
            .noted(mass, "the alkali")
            .help("Leave the alkali out and bring the bath to pH 4.5 to 6 with a little acetic acid. Boiling alkali breaks the dye down and eats polyester."),
        );
    }
}
