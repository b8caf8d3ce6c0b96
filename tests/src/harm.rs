//! When a change does harm. The bounds are wider than those of the rules, so that only what surely spoils is asked
//! for; they are facts of the trade, `common practice, no source`, where nothing else is said.

use tenter_reference::{DyeFamily, FibreFamily};
use tenter_rehearse::{Dyeing, EventKind, Medium, SODA_ASH_MOLAR_MASS, ZoneKey};
use tenter_resolve::recipe::{Depth, Evenness, GoodsId, MaterialId};

use crate::good::Good;

/// Wherever it fits it does harm.
pub fn always(_: &Good, _: &Good) -> bool {
    true
}

const WASHING: [&str; 9] = ["rinse", "soap off", "wash", "scour", "soften", "neutralise", "strip", "bleach", "wet out"];

/// What became of the dyes meant to go on.
fn dyeings(good: &Good) -> Vec<&Dyeing> {
    let washed: Vec<_> =
        good.steps().into_iter().filter(|(_, verb, _)| WASHING.contains(verb)).map(|(_, _, step)| step.place).collect();
    good.rehearsal().map_or_else(Vec::new, |rehearsal| {
        rehearsal
            .dyeings
            .iter()
            .filter(|each| {
                !each.superseded && each.mass.value.best > 0.0 && each.laid.iter().any(|place| !washed.contains(place))
            })
            .collect()
    })
}

fn family(good: &Good, dye: MaterialId) -> Option<DyeFamily> {
    good.recipe()?.materials.get(dye.0)?.class.map(|class| class.family)
}

fn cellulose(good: &Good, goods: GoodsId) -> bool {
    good.recipe().and_then(|recipe| recipe.goods.get(goods.0)).is_some_and(|goods| {
        let share =
            goods.fibres.iter().filter(|part| part.fibre.is_some_and(|fibre| fibre.family == FibreFamily::Cellulose));
        share.map(|part| part.share.value.best).sum::<f64>() >= 0.5
    })
}

fn reactive(good: &Good) -> Vec<&Dyeing> {
    dyeings(good)
        .into_iter()
        .filter(|each| cellulose(good, each.goods) && family(good, each.dye) == Some(DyeFamily::Reactive))
        .collect()
}

/// Soda ash to dye, g for g, below which the dye's own acid spoils it. A gram of dye of 650 g/mol, two thirds of it dye, sets
/// free some 2.3 mmol of acid by the time both chlorines are gone; 0.8 g of soda ash takes that up and keeps 2.3 parts of
/// carbonate to one of bicarbonate, pH 10.3 with pK 9.95 in strong liquors. Below it the reaction dies down. The molar mass
/// and purity are from memory, the rest is arithmetic.
const ENOUGH: f64 = 0.8;

/// A reactive dye that had enough is left without alkali: less soda ash than its own acid wants;
/// in a bath less than half the strength usual for the depth (5, 10, 20 g/L). Steamed dye must have some.
pub fn starved(before: &Good, after: &Good) -> bool {
    !short_of_alkali(before) && short_of_alkali(after)
}

fn short_of_alkali(after: &Good) -> bool {
    reactive(after).into_iter().filter(|each| !each.came_through).any(|each| {
        if each.base.high <= 0.0 {
            return true;
        }
        let soda = (each.usable.best - each.acid.best).max(0.0) * SODA_ASH_MOLAR_MASS;
        if each.steamed {
            return false;
        }
        match (&each.medium, &each.bath_then) {
            (Medium::Bath(_), Some(bath)) => {
                let volume = bath.volume.as_ref().map_or(0.0, |volume| volume.value.best);
                let depth = each.all_dye.best / dry(after, each.goods).max(1e-9);
                let usual = if depth < 0.01 {
                    5.0
                } else if depth <= 0.04 {
                    10.0
                } else {
                    20.0
                };
                volume > 0.0 && soda / volume < 0.5 * usual && soda < 3.0 * each.all_dye.best
            }
            _ => soda < ENOUGH * each.all_dye.best,
        }
    })
}

fn dry(good: &Good, goods: GoodsId) -> f64 {
    let goods = good.recipe().and_then(|recipe| recipe.goods.get(goods.0));
    goods.and_then(|goods| goods.dry_mass.as_ref()).map_or(0.0, |mass| mass.value.best)
}

/// Some reactive dye somewhere is washed off after less than a quarter of a full batch, by time, warmth and pH together
/// (the model of reaction of the chemistry), where it had more before the change.
pub fn unset(before: &Good, after: &Good) -> bool {
    let then = batches(before);
    batches(after).into_iter().any(|(key, share)| {
        share < 0.25 && then.iter().any(|(other, had)| *other == key && *had >= 0.28 && share < 0.8 * had)
    })
}

/// The least any dye has reacted, as a share of a full batch.
pub fn worst_batch(good: &Good) -> f64 {
    batches(good).into_iter().map(|(_, share)| share).fold(1.0, f64::min)
}

type Key = (GoodsId, Option<u32>, ZoneKey, MaterialId);

/// How far each dye on each zone has reacted, the best of its accounts, as a share of a full batch; steamed left out.
fn batches(good: &Good) -> Vec<(Key, f64)> {
    let mut found: Vec<(Key, f64)> = Vec::new();
    let Some(rehearsal) = good.rehearsal() else { return found };
    for each in reactive(good).into_iter().filter(|each| !each.steamed) {
        let Some(share) = rehearsal.reacted(each).map(|one| one.batch_share.best) else { continue };
        let key = (each.goods, each.lot, each.zone, each.dye);
        match found.iter_mut().find(|(have, _)| *have == key) {
            Some((_, best)) => *best = best.max(share),
            None => found.push((key, share)),
        }
    }
    found
}

/// Dye that reaches the goods as a share of their dry weight; vats, which are not spent on one lot, left out.
pub fn depth(good: &Good) -> f64 {
    let Some(recipe) = good.recipe() else { return 0.0 };
    let mut seen = Vec::new();
    let mut mass = 0.0;
    for each in dyeings(good) {
        let vat = matches!(family(good, each.dye), Some(DyeFamily::Vat | DyeFamily::Indigo));
        let key = match each.medium {
            Medium::Bath(bath) => (Some(bath), None, each.dye, None),
            Medium::Cloth => (None, Some(each.zone), each.dye, each.lot),
        };
        if !vat && !each.came_through && !seen.contains(&key) {
            seen.push(key);
            mass += each.mass.value.best;
        }
    }
    let dry = recipe.totals.dry_mass.as_ref().map_or(0.0, |dry| dry.value.best);
    if dry > 0.0 { mass / dry } else { 0.0 }
}

/// Bounds of a named depth, share of the goods: pale 0.1 to 1%, medium 1 to 3%, dark 3 to 6%, black 5 to 10%.
fn bounds(good: &Good) -> Option<(f64, f64)> {
    Some(match good.recipe()?.header.depth.as_ref()?.0 {
        Depth::Pale => (0.001, 0.01),
        Depth::Medium => (0.01, 0.03),
        Depth::Dark => (0.03, 0.06),
        Depth::FullBlack => (0.05, 0.1),
    })
}

/// More dye than the cloth can take: above a fifth of the weight of goods anywhere, or three times the upper bound
/// of the depth named, or more than its alkali can serve.
pub fn overdyed(before: &Good, after: &Good) -> bool {
    let local = reactive(after).into_iter().any(|each| {
        let dry = each.zone_then.as_ref().map_or(0.0, |zone| zone.dry.value.best);
        matches!(each.medium, Medium::Cloth) && dry > 0.0 && each.all_dye.best / dry > 0.2
    });
    local
        || depth(after) > 0.2
        || bounds(after).is_some_and(|(_, high)| depth(after) > 3.0 * high)
        || starved(before, after)
}

/// Less dye than can be seen: under 0.03% of the goods, or a third of the lower bound of the depth named. With
/// no depth named a weaker recipe is a right recipe for a paler shade, and nobody can know.
pub fn underdyed(_: &Good, after: &Good) -> bool {
    let depth = depth(after);
    (depth > 0.0 && depth < 0.0003) || bounds(after).is_some_and(|(low, _)| depth < low / 3.0)
}

/// Some mix has less in it than the steps draw, by more than a twentieth.
pub fn overdrawn(_: &Good, after: &Good) -> bool {
    after.recipe().is_some_and(|recipe| {
        recipe.mixes.iter().any(|mix| {
            let drawn: f64 =
                mix.draws.iter().filter_map(|draw| draw.amount.as_ref()).map(|amount| amount.value.best).sum();
            let made = mix.volume.as_ref().or(mix.mass.as_ref()).map_or(f64::MAX, |made| made.value.best);
            drawn > 1.05 * made * f64::from(mix.times_made.max(1))
        })
    })
}

/// Goods take up a soak less than three quarters as strong as it was made.
pub fn soak_weakened(_: &Good, after: &Good) -> bool {
    soaks(after, |nominal, actual, _| actual < 0.75 * nominal)
}

/// Less than two thirds of the cloth is wetted through by a soak with alkali.
pub fn soak_not_through(_: &Good, after: &Good) -> bool {
    soaks(after, |_, _, wetted| wetted < 0.67)
}

fn soaks(good: &Good, wrong: impl Fn(f64, f64, f64) -> bool) -> bool {
    good.rehearsal().is_some_and(|rehearsal| {
        rehearsal.events.iter().any(|event| match &event.kind {
            EventKind::SoakUptake {
                strength_nominal: Some(nominal),
                strength_actual: Some(actual),
                wetted,
                earlier_uses: 0,
                ..
            } => wrong(nominal.value.best, actual.value.best, wetted.best),
            _ => false,
        })
    })
}

/// The writer wants a level shade.
pub fn level(good: &Good) -> bool {
    good.recipe().is_some_and(|recipe| matches!(recipe.header.shade, Some((Evenness::Level, _))))
}

/// Some material that burns skin or eyes (H314, H318 in the reference data) is used.
pub fn corrosive(good: &Good) -> bool {
    good.all_amounts().iter().any(|each| {
        good.material(each).and_then(|material| material.reference).is_some_and(|entry| {
            entry
                .hazards
                .iter()
                .any(|hazard| hazard.at_least_percent.is_none() && matches!(hazard.code.as_str(), "H314" | "H318"))
        })
    })
}

/// Statements about breathing it in (GHS).
const BREATHING: [&str; 6] = ["H330", "H331", "H332", "H334", "H335", "H372"];

/// Powder is handled that is a dye, or harms who breathes it in by its statements in the reference data.
pub fn dusty(good: &Good) -> bool {
    good.all_amounts().iter().filter_map(|each| good.material(each)).any(|material| {
        let claims = material.reference.map_or(&[][..], |entry| entry.hazards.as_slice());
        material.dusty() && (material.is_dye || claims.iter().any(|claim| BREATHING.contains(&claim.code.as_str())))
    })
}
