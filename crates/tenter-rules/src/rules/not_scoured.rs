//! Finish still in the cloth.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Place;

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
    finished(context, found);
}

/// Words for what keeps dye out, on cloth that may well be clean.
const RESIDUES: [&str; 7] =
    ["softened", "starched", "sized", "waterproofed", "water-repellent", "easy-care finish", "resin finish"];

/// Goods of which it is said that a finish or softener is on them.
fn finished(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (id, _, place) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let Some(goods) = context.goods(id) else { continue };
        let block = goods.name.place.block;
        let Some(entry) = context.sheet.blocks.get(block as usize) else { continue };
        for line in &entry.block.lines {
            let said = Place { block, start: line.span.start, end: line.span.end };
            let Some((word, washes_out)) = finish(context.text(said)) else { continue };
            let washed = context
                .steps()
                .take_while(|step| step.place != place)
                .any(|step| step.verb.is_some_and(|verb| matches!(verb.name, "scour" | "wash" | "boil" | "strip")));
            if (washed && washes_out) || found.iter().any(|have| have.rule == RULE.name && have.place.block == block) {
                continue;
            }
            let help = if washes_out {
                "Scour them hot with detergent and soda ash first: what makes cloth soft keeps water and dye out in patches."
            } else {
                "No washing takes such a finish out: try a swatch first, or choose goods that are sold for dyeing."
            };
            found.push(
                Finding::new(
                    &RULE,
                    said,
                    format!("`{word}` is said of {}, and it is on them when the dye comes", goods.name.text),
                )
                .note(place, "the dye comes here")
                .help(help),
            );
        }
    }
}

/// The word for a finish on a line, unless the line says that there is none, and whether it washes out.
fn finish(text: &str) -> Option<(&'static str, bool)> {
    let lower = text.to_lowercase();
    let denied = lower.split(|letter: char| !letter.is_alphanumeric()).any(|word| {
        matches!(word, "no" | "not" | "without" | "never" | "free" | "removed" | "out" | "scoured" | "untreated")
    });
    if denied {
        return None;
    }
    const FINISHES: [(&str, bool); 10] = [
        ("softener", true),
        ("sizing", true),
        ("starched", true),
        ("water-repellent", false),
        ("water repellent", false),
        ("stain-resistant", false),
        ("easy-care", false),
        ("non-iron", false),
        ("wrinkle-free", false),
        ("waterproof", false),
    ];
    FINISHES.into_iter().find(|(word, _)| lower.contains(word))
}
