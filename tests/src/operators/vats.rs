//! Indigo, direct dyes, discharge: what each cannot do without.

use tenter_reference::{DyeFamily, Role};

use crate::good::Good;
use crate::harm::always;
use crate::mutant::{Mutant, Operator};

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "vat-without-reducer",
        what: "nothing reduces the indigo: it stays a powder in the water",
        answers: &["vat-without-reducer", "vat-without-alkali"],
        make: |good| dropped(good, DyeFamily::Indigo, Role::Reducer),
        harms: |_, after| after.of_role(Role::Reducer).is_empty(),
    },
    Operator {
        name: "vat-without-alkali",
        what: "no alkali in a vat of indigo: it does not dissolve",
        answers: &["vat-without-reducer", "vat-without-alkali"],
        make: |good| dropped(good, DyeFamily::Indigo, Role::Alkali),
        harms: |_, after| after.of_role(Role::Alkali).is_empty(),
    },
    Operator {
        name: "acid-for-lime-in-a-vat",
        what: "citric acid for the alkali of a vat of indigo: nothing dissolves, and dithionite gives off a poisonous gas",
        answers: &["vat-without-reducer", "vat-without-alkali", "never-mix"],
        make: |good| {
            if !good.dyes_with(DyeFamily::Indigo) {
                return Vec::new();
            }
            let alkali = good.of_role(Role::Alkali).into_iter();
            alkali.filter_map(|each| good.put(each.name_place, "citric acid")).collect()
        },
        harms: |_, after| after.of_role(Role::Alkali).is_empty(),
    },
    Operator {
        name: "direct-dye-without-salt",
        what: "a direct dye with no salt: most of it stays in the water",
        answers: &["immersion-without-salt"],
        make: |good| {
            if good.dyes_with(DyeFamily::Reactive) { Vec::new() } else { dropped(good, DyeFamily::Direct, Role::Salt) }
        },
        harms: |_, after| after.of_role(Role::Salt).is_empty(),
    },
    Operator {
        name: "direct-dye-stays-cool",
        what: "the bath of a direct dye is not heated: pale, uneven, and it bleeds",
        answers: &["too-cold-for-class"],
        make: |good| {
            let heating = |verb: &str| matches!(verb, "raise" | "boil" | "simmer" | "cool" | "hold");
            let lines: Vec<usize> =
                good.steps().iter().filter(|(_, verb, _)| heating(verb)).map(|(line, _, _)| *line).collect();
            if good.dyes_with(DyeFamily::Direct) && !lines.is_empty() {
                vec![good.without_all(&lines)]
            } else {
                Vec::new()
            }
        },
        harms: always,
    },
    Operator {
        name: "discharge-cold",
        what: "the discharge bath of thiourea dioxide cold from the tap: the colour stays",
        answers: &["stripping-too-mild"],
        make: |good| {
            let agent = good
                .all_amounts()
                .into_iter()
                .find(|each| good.material(each).is_some_and(|found| found.name.contains("thiourea dioxide")));
            let header = agent.and_then(|each| good.line(0, each.place)).map(|line| good.header(line));
            let Some(header) = header.filter(|line| good.text_of(*line).starts_with("mix ")) else { return Vec::new() };
            let strips = good.verb_lines("strip").iter().all(|line| !good.text_of(*line).contains("°C"));
            (header + 1..header + 6)
                .filter(|line| strips && good.text_of(*line).contains("water at "))
                .filter_map(|line| {
                    let (before, _) = good.text_of(line).split_once(" at ")?;
                    Some(good.instead(line, format!("{before} at 15 °C")))
                })
                .collect()
        },
        harms: |_, after| {
            !after.verb_lines("strip").is_empty()
                && after.verb_lines("raise").is_empty()
                && after.verb_lines("heat").is_empty()
        },
    },
];

/// All materials of a role taken out of a recipe that dyes with a class.
fn dropped(good: &Good, family: DyeFamily, role: Role) -> Vec<Mutant> {
    if !good.dyes_with(family) {
        return Vec::new();
    }
    let lines: Vec<usize> = good.of_role(role).into_iter().filter_map(|each| good.line(0, each.place)).collect();
    if lines.is_empty() { Vec::new() } else { vec![good.without_all(&lines)] }
}
