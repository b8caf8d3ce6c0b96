//! Too much or too little dye, the wrong dye, the wrong fibre.

use tenter_reference::{DyeFamily, FibreFamily, Role};
use tenter_syntax::BlockKind;

use super::{times, unit};
use crate::good::Good;
use crate::harm::{always, overdyed, underdyed};
use crate::mutant::{Mutant, Operator};

const TOO_MUCH: &[&str] = &["far-too-much-dye", "too-little-alkali", "far-out-number", "more-than-dissolves"];
const TOO_LITTLE: &[&str] = &["too-little-dye", "far-out-number"];
const FIBRE: &[&str] = &["class-cannot-dye-fibre", "undyeable-share", "too-little-alkali", "no-alkali"];

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "double-dye",
        what: "twice the dye; harm above a fifth of the goods, far beyond the depth named, or beyond what the alkali serves",
        answers: TOO_MUCH,
        make: |good| times(good, good.of_role(Role::Dye), 2.0),
        harms: overdyed,
    },
    Operator {
        name: "dye-decimal-slip-up",
        what: "ten times the dye; harm above a fifth of the goods, far beyond the depth named, or beyond what the alkali serves",
        answers: TOO_MUCH,
        make: |good| times(good, good.of_role(Role::Dye), 10.0),
        harms: overdyed,
    },
    Operator {
        name: "dye-decimal-slip-down",
        what: "a tenth of the dye; harm where none is seen, or far below the depth named",
        answers: TOO_LITTLE,
        make: |good| times(good, good.of_role(Role::Dye), 0.1),
        harms: underdyed,
    },
    Operator {
        name: "dye-hundredth",
        what: "a hundredth of the dye; harm where none is seen, or far below the depth named",
        answers: TOO_LITTLE,
        make: |good| times(good, good.of_role(Role::Dye), 0.01),
        harms: underdyed,
    },
    Operator {
        name: "dye-in-kilograms",
        what: "kg for g of dye",
        answers: TOO_MUCH,
        make: |good| {
            let mut found = unit(good, good.of_role(Role::Dye), "g", "kg");
            found.extend(unit(good, good.of_role(Role::Dye), "g/piece", "kg/piece"));
            found.extend(unit(good, good.of_role(Role::Dye), "g/L", "kg/L"));
            found
        },
        harms: always,
    },
    Operator {
        name: "dye-in-milligrams",
        what: "mg for g of dye; harm where none is seen",
        answers: TOO_LITTLE,
        make: |good| {
            let mut found = unit(good, good.of_role(Role::Dye), "g", "mg");
            found.extend(unit(good, good.of_role(Role::Dye), "g/piece", "mg/piece"));
            found
        },
        harms: underdyed,
    },
    Operator {
        name: "spoon-for-gram",
        what: "teaspoons for grams of dye, some 2.5 g each; harm as for too much dye",
        answers: TOO_MUCH,
        make: |good| unit(good, good.of_role(Role::Dye), "g", "tsp"),
        harms: overdyed,
    },
    Operator {
        name: "tablespoon-for-gram",
        what: "tablespoons for grams of dye, some 7 g each; harm as for too much dye",
        answers: TOO_MUCH,
        make: |good| unit(good, good.of_role(Role::Dye), "g", "tbsp"),
        harms: overdyed,
    },
    Operator {
        name: "tablespoon-for-teaspoon",
        what: "a tablespoon for a teaspoon of dye in a recipe by the spoon; harm as for too much dye",
        answers: TOO_MUCH,
        make: |good| unit(good, good.of_role(Role::Dye), "tsp", "tbsp"),
        harms: overdyed,
    },
    Operator {
        name: "acid-dye-on-cotton",
        what: "the dye is an acid dye, the goods are cotton: it washes out",
        answers: FIBRE,
        make: |good| if good.reactive_on_cellulose() { class(good, "acid") } else { Vec::new() },
        harms: always,
    },
    Operator {
        name: "disperse-dye-on-cotton",
        what: "the dye is a disperse dye, the goods are cotton: it washes out",
        answers: FIBRE,
        make: |good| if good.reactive_on_cellulose() { class(good, "disperse") } else { Vec::new() },
        harms: always,
    },
    Operator {
        name: "polyester-goods",
        what: "polyester goods for a dye that does not dye polyester",
        answers: FIBRE,
        make: |good| if good.dyes_with(DyeFamily::Disperse) { Vec::new() } else { fibre(good, "100% polyester") },
        harms: has_dye,
    },
    Operator {
        name: "half-polyester-goods",
        what: "half the cloth is polyester, which stays white",
        answers: FIBRE,
        make: |good| {
            if good.goods_are(FibreFamily::Cellulose) { fibre(good, "50% cotton, 50% polyester") } else { Vec::new() }
        },
        harms: has_dye,
    },
    Operator {
        name: "cotton-for-wool",
        what: "cotton goods for an acid dye",
        answers: FIBRE,
        make: |good| if good.dyes_with(DyeFamily::Acid) { fibre(good, "100% cotton") } else { Vec::new() },
        harms: has_dye,
    },
    Operator {
        name: "cotton-for-polyester",
        what: "cotton goods for a disperse dye",
        answers: FIBRE,
        make: |good| if good.dyes_with(DyeFamily::Disperse) { fibre(good, "100% cotton") } else { Vec::new() },
        harms: has_dye,
    },
    Operator {
        name: "unwashed-goods",
        what: "goods dyed as they come from the maker, with size and finish in them; harm where nothing scours them",
        answers: &["not-scoured"],
        make: |good| {
            good.key_lines(BlockKind::Goods, "state")
                .into_iter()
                .filter_map(|line| good.reword(line, "scoured, dry", "unwashed"))
                .collect()
        },
        harms: |_, after| {
            has_dye(after, after) && after.verb_lines("scour").is_empty() && after.verb_lines("wash").is_empty()
        },
    },
    Operator {
        name: "dye-misspelt",
        what: "the name of a dye with a letter gone: nothing goes by it",
        answers: &["unknown-name"],
        make: |good| {
            let dyes = good.of_role(Role::Dye).into_iter();
            dyes.filter_map(|each| {
                let name = good.words(each.name_place);
                let mut letters: Vec<char> = name.chars().collect();
                (letters.len() > 4).then(|| {
                    letters.remove(2);
                    good.put(each.name_place, &letters.iter().collect::<String>())
                })?
            })
            .collect()
        },
        harms: always,
    },
];

fn has_dye(_: &Good, after: &Good) -> bool {
    after.recipe().is_some_and(|recipe| recipe.materials.iter().any(|each| each.is_dye))
}

fn class(good: &Good, to: &str) -> Vec<Mutant> {
    // A Colour Index name would still tell the class, so both lines go.
    let index = good.key_lines(BlockKind::Dye, "index");
    good.key_lines(BlockKind::Dye, "class")
        .into_iter()
        .filter(|line| good.text_of(*line).contains("reactive") && !index.contains(&(line + 1)))
        .map(|line| good.instead(line, format!("  class    {to}")))
        .collect()
}

fn fibre(good: &Good, to: &str) -> Vec<Mutant> {
    good.key_lines(BlockKind::Goods, "fibre")
        .into_iter()
        .map(|line| good.instead(line, format!("  fibre    {to}")))
        .collect()
}
