//! Paler than it says.

use crate::bench::number;
use crate::context::Context;
use crate::dips::dips;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::{Depth, GoodsId};

pub(crate) const RULE: Rule = Rule {
    name: "too-little-dye",
    summary: "Too little dye for the depth of shade the recipe names.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_little_dye.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    hardly_any(context, found);
    weak_dip(context, found);
    let Some((depth, said)) = context.recipe.header.depth else { return };
    let (least, usual, word) = match depth {
        Depth::Pale => return,
        Depth::Medium => (0.005, "1 to 2%", "medium"),
        Depth::Dark => (0.02, "3 to 5%", "dark"),
        Depth::FullBlack => (0.04, "5 to 8%", "full black"),
    };
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        let Some(dry) = &goods.dry_mass else { continue };
        let id = GoodsId(index);
        let Some((mass, place)) = dye_on(context, id) else { continue };
        let share = mass.best / dry.value.best.max(f64::MIN_POSITIVE);
        if mass.high / dry.value.best.max(f64::MIN_POSITIVE) >= least {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{}% of dye on {}, and the shade is to be {word}: {usual} is usual",
                    number(share * 1000.0 / 10.0),
                    goods.name.text
                ),
            )
            .note(said, format!("{word} is wanted"))
            .figure(dry)
            .help("Take more dye, or say a paler depth. Black and turquoise want more than other colours."),
        );
    }
}

/// Share of the goods, or of a paste, below which nobody sees a colour whatever the depth.
const SEEN: f64 = 4e-4;

/// So little dye that it is a slip.
fn hardly_any(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        let Some(dry) = &goods.dry_mass else { continue };
        let Some((mass, place)) = dye_on(context, GoodsId(index)) else { continue };
        // A print covers part of the cloth: there the strength of the paste counts.
        if context.verb_at(place).is_some_and(|verb| matches!(verb, "print" | "brush" | "spray"))
            || mass.high / dry.value.best.max(f64::MIN_POSITIVE) >= SEEN
        {
            continue;
        }
        let finding = Finding::new(
            &RULE,
            place,
            format!("{} of dye on {} of {}: hardly a tint", crate::bench::grams(mass), dry.show(), goods.name.text),
        );
        found.push(finding.noted(dry, "what the goods weigh").figure(dry).help(SLIP));
    }
    for mix in &context.recipe.mixes {
        let Some(all) = mix.mass.as_ref().or(mix.volume.as_ref()) else { continue };
        let kilograms = if mix.mass.is_some() { all.value.best } else { all.value.best * 1000.0 };
        let printed = context.steps().find(|step| {
            step.verb.is_some_and(|verb| matches!(verb.name, "print" | "brush"))
                && step.applied.iter().any(|each| match each.what {
                    tenter_resolve::recipe::Substance::Mix(id) => context.recipe.mix(id).name.place == mix.name.place,
                    tenter_resolve::recipe::Substance::Material(_) => false,
                })
        });
        let Some(printed) = printed else { continue };
        let dyes = mix.ingredients.iter().filter(|each| match each.what {
            tenter_resolve::recipe::Substance::Material(id) => context.material(id).is_dye,
            tenter_resolve::recipe::Substance::Mix(_) => false,
        });
        let mass = |each: &tenter_resolve::recipe::Ingredient| each.amount.as_ref()?.mass.clone();
        let Some((first, dye)) = dyes.filter_map(|each| Some((each.place, mass(each)?))).next() else { continue };
        if kilograms <= 0.0 || dye.value.high / kilograms >= 2.5 * SEEN || context.troubled_block(mix.name.place) {
            continue;
        }
        let finding = Finding::new(
            &RULE,
            first,
            format!("{} of dye in {} of {}: hardly a tint", dye.show(), all.show(), mix.name.text),
        );
        found.push(finding.note(printed.place, "printed here").figure(&dye).figure(all).help(SLIP));
    }
}

const SLIP: &str = "The palest shades take a gram for each kilogram. Look for a slip: mg for g, a decimal point.";

/// All dye that reaches goods, kg, and the line of the first.
pub(crate) fn dye_on(
    context: &Context<'_>,
    goods: GoodsId,
) -> Option<(tenter_quantity::Interval, tenter_quantity::Place)> {
    let mut seen = Vec::new();
    let mut sum: Option<(tenter_quantity::Interval, tenter_quantity::Place)> = None;
    for dyeing in context.dyeings().filter(|dyeing| dyeing.goods == goods) {
        // The dye of a bath is one, however many zones it meets.
        let key = match dyeing.medium {
            tenter_rehearse::Medium::Bath(bath) => (Some(bath), None, dyeing.dye),
            tenter_rehearse::Medium::Cloth => (None, Some((dyeing.zone, dyeing.lot)), dyeing.dye),
        };
        if seen.contains(&key) {
            continue;
        }
        seen.push(key);
        let place = context.laid_at(dyeing);
        sum = Some(match sum {
            Some((mass, first)) => (mass + dyeing.mass.value, first),
            None => (dyeing.mass.value, place),
        });
    }
    sum
}

/// A bath for dipping too weak to be meant. Pots of indigo, which are dipped into again and again, are no such baths.
fn weak_dip(context: &Context<'_>, found: &mut Vec<Finding>) {
    if found.iter().any(|have| have.rule == RULE.name) {
        return;
    }
    let weak = dips(context).into_iter().find(|dip| dip.strength.high < WEAKEST_DIP);
    found.extend(weak.map(|dip| {
        dip.strength_told(&RULE, ": hardly a tint")
            .help("Baths for dipping have 0.5 to 10 g/L of dye. Look for a slip: a decimal point, mg for g.")
    }));
}

/// kg/m³: some 3 L/kg carried off and as much again taken up give 0.03% of the goods.
const WEAKEST_DIP: f64 = 0.05;
