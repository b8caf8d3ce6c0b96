//! A dye of unknown class.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "dye-without-class",
    summary: "Nothing is said of the class of a dye, so nobody can tell what it needs.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("dye_without_class.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (_, dye, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let material = context.material(dye);
        let Some(declared) = material.declared.filter(|_| material.class.is_none()) else { continue };
        if context.troubled_block(declared) || found.iter().any(|have| have.rule == RULE.name && have.place == declared)
        {
            continue;
        }
        found.push(
            Finding::new(&RULE, declared, format!("nothing is said of the class of {}", material.name))
                .note(place, "it is laid on here")
                .help("Add a line such as `class reactive dichlorotriazine`, or its Colour Index name with `index`. Until then alkali, heat, time and fibre are not checked for it."),
        );
    }
}
