//! What may hurt somebody, and bottles kept too long.

use tenter_reference::{DyeFamily, Role};

use crate::good::Good;
use crate::harm::{always, corrosive, dusty};
use crate::mutant::{Mutant, Operator};

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "mask-left-out",
        what: "powder handled and nothing worn",
        answers: &["dust-before-protection", "corrosive-without-gloves"],
        make: |good| good.verb_lines("wear").into_iter().map(|line| good.without(line)).collect(),
        harms: |_, after| dusty(after) && !masked(after),
    },
    Operator {
        name: "gloves-for-mask",
        what: "gloves worn, and no mask",
        answers: &["dust-before-protection"],
        make: |good| wear(good, "gloves, goggles"),
        harms: |_, after| dusty(after),
    },
    Operator {
        name: "mask-after-powder",
        what: "the mask put on last of all",
        answers: &["dust-before-protection"],
        make: |good| match (good.verb_lines("wear").first(), good.steps().last()) {
            (Some(wear), Some((last, _, _))) if wear < last => vec![good.moved_before(*wear, *last)],
            _ => Vec::new(),
        },
        harms: |_, after| dusty(after),
    },
    Operator {
        name: "no-gloves-for-what-burns",
        what: "a mask only, although something that burns skin or eyes is used",
        answers: &["corrosive-without-gloves"],
        make: |good| wear(good, "respirator"),
        harms: |_, after| corrosive(after),
    },
    Operator {
        name: "bottle-made-early",
        what: "a bottle with dye and soda in it made two days before it is used: the dye has reacted with the water",
        answers: &["bottle-too-old"],
        make: |good| bottles_with_soda(good).into_iter().map(|line| good.insert(line, "  wait     48 h")).collect(),
        harms: always,
    },
    Operator {
        name: "bleach-in-the-pot",
        what: "hypochlorite put into a bath that holds a reducing agent or an acid",
        answers: &["never-mix"],
        make: |good| {
            good.steps()
                .into_iter()
                .filter(|(_, verb, _)| *verb == "strip")
                .map(|(line, _, _)| line)
                .filter_map(|line| {
                    let bath = good.text_of(line).split(" in ").nth(1)?.split(" at ").next()?.to_owned();
                    Some(good.insert(line - 1, &format!("  add      200 mL sodium hypochlorite solution to {bath}")))
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "lye-in-the-soak",
        what: "lye put into the soak by somebody with a mask only",
        answers: &["corrosive-without-gloves"],
        make: |good| {
            let alkali = good.of_role(Role::Alkali).into_iter().filter_map(|each| good.line(0, each.place));
            alkali
                .filter(|line| good.text_of(good.header(*line)).starts_with("mix "))
                .take(1)
                .filter_map(|line| {
                    let mut mutant = good.insert(line, "  2 g/L    sodium hydroxide");
                    let worn = good.verb_lines("wear").first().copied()?;
                    let words = good.text_of(worn);
                    mutant.text = mutant.text.replacen(words, "  wear     dust mask", 1);
                    mutant.lines.push(worn + 1);
                    Some(mutant)
                })
                .collect()
        },
        harms: always,
    },
];

fn wear(good: &Good, what: &str) -> Vec<Mutant> {
    good.verb_lines("wear").into_iter().take(1).map(|line| good.instead(line, format!("  wear     {what}"))).collect()
}

/// The lines that make a bottle of reactive dye and alkali.
fn bottles_with_soda(good: &Good) -> Vec<usize> {
    let Some(recipe) = good.recipe() else { return Vec::new() };
    let mut found = Vec::new();
    for mix in &recipe.mixes {
        let holds = |wanted: &dyn Fn(&tenter_resolve::recipe::Material) -> bool| {
            mix.ingredients.iter().any(|each| good.material(each).is_some_and(wanted))
        };
        let soda = holds(&|found| found.name.contains("soda ash") || found.name.contains("sodium carbonate"));
        let dye = holds(&|found| found.class.is_some_and(|class| class.family == DyeFamily::Reactive));
        let drawn = mix.draws.iter().any(|draw| draw.amount.is_some());
        if let (true, true, true, Some(place)) = (soda, dye, drawn, mix.made_by_step) {
            found.extend(good.line(0, place));
        }
    }
    found
}

/// Somebody still puts a mask on.
fn masked(good: &Good) -> bool {
    good.verb_lines("wear").into_iter().any(|line| {
        let words = good.text_of(line);
        words.contains("mask") || words.contains("respirator")
    })
}
