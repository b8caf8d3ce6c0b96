//! Washing off, bleaching and stopping.

use tenter_reference::{DyeFamily, FibreFamily, Role};
use tenter_syntax::BlockKind;

use crate::good::Good;
use crate::harm::always;
use crate::mutant::{Mutant, Operator};

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "first-rinse-hot",
        what: "the first rinse at 70 °C with soda and loose dye still in",
        answers: &["hot-first-rinse"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let rinse = good.verb_lines("rinse").into_iter().find(|line| good.text_of(*line).contains("nearly clear"));
            rinse.and_then(|line| good.reword(line, "cold water", "water at 70 °C")).into_iter().collect()
        },
        harms: always,
    },
    Operator {
        name: "soaping-left-out",
        what: "no soaping at all: loose reactive dye bleeds at the first wash",
        answers: &["too-few-soapings"],
        make: |good| {
            let lines = good.verb_lines("soap off");
            if good.reactive_on_cellulose() && !lines.is_empty() { vec![good.without_all(&lines)] } else { Vec::new() }
        },
        harms: always,
    },
    Operator {
        name: "soaping-cold",
        what: "soaped off at 15 °C: reactive dye does not come loose",
        answers: &["too-few-soapings"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let lines = good.verb_lines("soap off").into_iter();
            lines.filter_map(|line| good.reword(line, "at 60 °C", "at 15 °C")).collect()
        },
        harms: always,
    },
    Operator {
        name: "wash-off-left-out",
        what: "nothing is washed off at all",
        answers: &["too-few-soapings", "dried-before-wash-off", "hot-first-rinse"],
        make: |good| {
            let washes = |verb: &str| matches!(verb, "rinse" | "soap off" | "soften");
            let lines: Vec<usize> =
                good.steps().iter().filter(|(_, verb, _)| washes(verb)).map(|(line, _, _)| *line).collect();
            if good.reactive_on_cellulose() && !lines.is_empty() { vec![good.without_all(&lines)] } else { Vec::new() }
        },
        harms: always,
    },
    Operator {
        name: "bleach-not-stopped",
        what: "hypochlorite left in the cloth goes on eating it",
        answers: &["bleach-without-stop"],
        make: |good| {
            let stop = good.verb_lines("neutralise").into_iter().chain(good.verb_lines("soak"));
            let bleach = good.verb_lines("bleach");
            let later = stop.filter(|line| bleach.first().is_some_and(|bleach| line > bleach));
            later.map(|line| good.without(line)).collect()
        },
        harms: hypochlorite,
    },
    Operator {
        name: "bleach-on-wool",
        what: "hypochlorite dissolves wool",
        answers: &["bleach-harms-fibre"],
        make: |good| fibre_of_bleach(good, "100% wool"),
        harms: hypochlorite,
    },
    Operator {
        name: "bleach-on-elastane",
        what: "hypochlorite yellows and breaks elastane",
        answers: &["bleach-harms-fibre"],
        make: |good| fibre_of_bleach(good, "92% cotton, 8% elastane"),
        harms: hypochlorite,
    },
    Operator {
        name: "vinegar-into-bleach",
        what: "an acid poured into hypochlorite sets chlorine free",
        answers: &["never-mix"],
        make: |good| {
            let bleach = good.all_amounts().into_iter().filter(|each| oxidiser(good, each));
            bleach
                .filter_map(|each| good.line(0, each.place))
                .filter(|line| good.text_of(good.header(*line)).starts_with("mix "))
                .map(|line| good.insert(line, "  100 mL   vinegar"))
                .collect()
        },
        harms: hypochlorite,
    },
    Operator {
        name: "acid-stop-on-bleach",
        what: "an acid in the stop of a bleach: chlorine from what is left in the cloth",
        answers: &["never-mix", "bleach-without-stop"],
        make: |good| {
            let stop = good.verb_lines("neutralise").into_iter().filter(|_| !good.verb_lines("bleach").is_empty());
            let mut found = Vec::new();
            for line in stop {
                let Some(mut mutant) = good
                    .text_of(line)
                    .split_once(" with ")
                    .map(|(before, _)| good.instead(line, format!("{before} with 20 g/L citric acid for 10 min")))
                else {
                    continue;
                };
                // Without the rinse between.
                let lines: Vec<&str> = mutant.text.lines().collect();
                if lines.get(line - 2).is_some_and(|words| words.trim().starts_with("rinse")) {
                    let kept: Vec<&str> =
                        lines.iter().enumerate().filter(|(at, _)| *at != line - 2).map(|(_, words)| *words).collect();
                    mutant.text = format!("{}\n", kept.join("\n"));
                    mutant.lines = vec![line - 2, line - 1];
                }
                found.push(mutant);
            }
            found
        },
        harms: hypochlorite,
    },
    Operator {
        name: "bleach-instead-of-softener",
        what: "hypochlorite into the bath of an acid",
        answers: &["never-mix"],
        make: |good| {
            let acid = good.of_role(Role::Acid).into_iter().filter_map(|each| good.line(0, each.place));
            acid.filter(|line| good.text_of(good.header(*line)).starts_with("mix "))
                .map(|line| good.insert(line, "  100 mL   sodium hypochlorite solution"))
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "bath-with-soda-for-wool",
        what: "soda instead of acid in a hot bath of wool: the wool is harmed and the dye stays off",
        answers: &["acid-dye-without-acid", "far-too-much-alkali"],
        make: |good| {
            if !(good.goods_are(FibreFamily::Protein)
                && (good.dyes_with(DyeFamily::Acid) || good.dyes_with(DyeFamily::Reactive)))
            {
                return Vec::new();
            }
            let acid = good.of_role(Role::Acid).into_iter().filter_map(|each| good.line(0, each.place));
            acid.map(|line| good.instead(line, "  20 g/L   soda ash".to_owned())).collect()
        },
        harms: always,
    },
    Operator {
        name: "acid-left-out",
        what: "no acid in the bath of an acid dye on wool: much of the dye stays in the water",
        answers: &["acid-dye-without-acid"],
        make: |good| {
            if !(good.goods_are(FibreFamily::Protein) && good.dyes_with(DyeFamily::Acid)) {
                return Vec::new();
            }
            let acid = good.of_role(Role::Acid).into_iter().filter_map(|each| good.line(0, each.place));
            acid.filter(|line| !good.text_of(good.header(*line)).contains("dilute"))
                .map(|line| good.without(line))
                .collect()
        },
        harms: |_, after| {
            let bath = |verb: &str| verb == "immerse";
            after.steps().iter().any(|(_, verb, _)| bath(verb)) && after.of_role(Role::Acid).is_empty()
        },
    },
];

fn oxidiser(good: &Good, ingredient: &tenter_resolve::recipe::Ingredient) -> bool {
    good.material(ingredient).is_some_and(|found| found.name.contains("hypochlorite") || found.name.contains("bleach"))
}

fn hypochlorite(_: &Good, after: &Good) -> bool {
    after.all_amounts().iter().any(|each| oxidiser(after, each))
}

fn fibre_of_bleach(good: &Good, to: &str) -> Vec<Mutant> {
    if good.verb_lines("bleach").is_empty() {
        return Vec::new();
    }
    good.key_lines(BlockKind::Goods, "fibre")
        .into_iter()
        .map(|line| good.instead(line, format!("  fibre    {to}")))
        .collect()
}
