//! Finish still in the cloth.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "not-scoured",
    summary: "Goods are dyed unwashed.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("not_scoured.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (id, _, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let Some(goods) = context.goods(id) else { continue };
        let Some(said) = goods.state.place else { continue };
        let text = context.text(said).to_lowercase();
        let residue = RESIDUES.iter().find(|word| text.contains(**word) && !text.contains(&format!("not {word}")));
        if goods.state.scoured != Some(false) && residue.is_none() {
            continue;
        }
        let washed = context
            .steps()
            .take_while(|step| step.place != place)
            .any(|step| step.verb.is_some_and(|verb| matches!(verb.name, "scour" | "wash" | "boil" | "soap off")));
        if washed || found.iter().any(|have| have.rule == RULE.name && have.place == said) {
            continue;
        }
        let message = match residue {
            Some(word) => format!("{} come {word} to the dye", goods.name.text),
            None => format!("{} are unwashed when the dye comes", goods.name.text),
        };
        found.push(
            Finding::new(&RULE, said, message)
                .note(place, "the dye comes here")
                .help("Scour them first: hot, with detergent and a little soda ash. Sizing, softener and oil from the mill keep dye and soda out in patches."),
        );
    }
}

/// Words for what keeps dye out, on cloth that may well be clean.
const RESIDUES: [&str; 7] =
    ["softened", "starched", "sized", "waterproofed", "water-repellent", "easy-care finish", "resin finish"];
