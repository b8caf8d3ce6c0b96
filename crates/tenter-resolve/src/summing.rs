//! Sums over the whole recipe: materials, mixes, steps, water, cost.

mod account;
mod cost;
mod draws;

use crate::amounts::{gram, volume_unit};
use crate::recipe::{Draw, Ingredient, Liquor, LiquorKind, MaterialId, MixId, Recipe, Step, Substance};
use crate::totals::{Cost, GoodsTotal, MaterialTotal, MixTotal, StepTotal, StepUse, Totals};
use account::{Account, water};
use cost::cost;
use draws::{draws, mix_total};
use std::collections::BTreeMap;
use std::sync::Arc;
use tenter_quantity::{Basis, Dimension, Figure, Interval, Place, Unit};

/// Times a group of steps is carried out, from `repeat` lines, and the share of the pieces it concerns each time.
#[derive(Clone, Copy, Debug)]
struct Rounds {
    times: f64,
    /// What a relative amount is multiplied with: rounds × pieces of a lot ÷ all pieces.
    relative: f64,
}

/// Works out all sums and the draws on each mix.
pub(crate) fn sum(recipe: &mut Recipe) {
    let rounds = rounds(recipe);
    draws(recipe, &rounds);
    let mut totals = Totals {
        pieces: sum_of(
            recipe.goods.iter().map(|goods| goods.pieces.clone()).collect(),
            Dimension::Piece.usual_unit(Basis::Absolute),
        ),
        dry_mass: recipe
            .goods
            .iter()
            .map(|goods| goods.dry_mass.clone())
            .collect::<Option<Vec<_>>>()
            .and_then(|masses| sum_of(masses, gram())),
        goods: recipe
            .goods
            .iter()
            .enumerate()
            .map(|(index, goods)| GoodsTotal {
                goods: crate::recipe::GoodsId(index),
                pieces: goods.pieces.clone(),
                dry_mass: goods.dry_mass.clone(),
            })
            .collect(),
        ..Totals::default()
    };
    totals.steps = steps(recipe, &rounds);
    let mut account = Account::default();
    for (index, mix) in recipe.mixes.iter().enumerate() {
        if !counts(recipe, MixId(index)) {
            continue;
        }
        for ingredient in &mix.ingredients {
            account.put(ingredient, f64::from(mix.times_made));
        }
    }
    for (group, rounds) in recipe.groups.iter().zip(&rounds) {
        for step in &group.steps {
            for (ingredient, factor) in used(step, *rounds) {
                account.put(ingredient, factor);
            }
        }
    }
    totals.water = water(recipe, &account);
    totals.materials = account.totals(recipe, &totals);
    totals.mixes =
        (0..recipe.mixes.len()).map(MixId).filter(|id| counts(recipe, *id)).map(|id| mix_total(recipe, id)).collect();
    cost(recipe, &mut totals);
    recipe.totals = totals;
}

/// A mix brought by a shared file counts only when something is taken from it.
fn counts(recipe: &Recipe, id: MixId) -> bool {
    let mix = recipe.mix(id);
    !mix.shared || !mix.draws.is_empty() || mix.made_by_step.is_some()
}

fn sum_of(terms: Vec<Figure>, unit: &'static Unit) -> Option<Figure> {
    (!terms.is_empty()).then(|| Figure::sum(terms, unit))
}

fn rounds(recipe: &Recipe) -> Vec<Rounds> {
    let lots = recipe.goods.iter().find_map(|goods| goods.lots.clone());
    let count = crate::lots::count(&recipe.goods);
    let pieces: f64 = recipe.goods.iter().map(|goods| goods.pieces.value.best).sum();
    let mut times = vec![1.0_f64; recipe.groups.len()];
    let mut repeated = vec![false; recipe.groups.len()];
    for (_, step) in recipe.steps() {
        let Some(group) = step.repeats_group else {
            continue;
        };
        let more = match (step.lots, count) {
            (Some(lots), Some(count)) => {
                let (first, last) = lots.repeated(count);
                f64::from((last + 1).saturating_sub(first))
            }
            (None, _) => f64::from(step.repeats.map_or(1, |(count, _)| count)),
            _ => 1.0,
        };
        if let (Some(slot), Some(flag)) = (times.get_mut(group.0), repeated.get_mut(group.0)) {
            *slot = (*slot + more).min(10_000.0);
            *flag = true;
        }
    }
    times
        .into_iter()
        .zip(repeated)
        .map(|(times, repeated)| match &lots {
            Some(lots) if repeated && pieces > 0.0 => {
                Rounds { times, relative: times * f64::from(lots.pieces_each) / pieces }
            }
            _ => Rounds { times, relative: times },
        })
        .collect()
}

fn factor(ingredient: &Ingredient, rounds: Rounds, repeats: f64) -> f64 {
    let relative = ingredient.amount.as_ref().is_some_and(|amount| {
        amount.written.basis != Basis::Absolute || matches!(amount.written.dimension, Dimension::LiquorRatio)
    });
    repeats * if relative { rounds.relative } else { rounds.times }
}

/// Everything a step uses with the factor it counts by: fresh liquor each time for washes.
fn used(step: &Step, rounds: Rounds) -> Vec<(&Ingredient, f64)> {
    let repeats = step.repeats.map_or(1.0, |(count, _)| f64::from(count));
    let fresh = matches!(
        step.verb.map_or("", |verb| verb.name),
        "scour" | "wash" | "rinse" | "soap off" | "neutralise" | "soften" | "strip" | "bleach" | "soak" | "wet out"
    );
    let repeats = if fresh { repeats } else { 1.0 };
    let mut out: Vec<(&Ingredient, f64)> =
        step.applied.iter().map(|ingredient| (ingredient, factor(ingredient, rounds, 1.0))).collect();
    out.extend(step.with.iter().map(|ingredient| (ingredient, factor(ingredient, rounds, repeats))));
    if let Some(Liquor { kind: LiquorKind::Bath(ingredients), .. }) = &step.liquor {
        out.extend(ingredients.iter().map(|ingredient| (ingredient, factor(ingredient, rounds, repeats))));
    }
    out
}

fn multiplied(figure: &Figure, factor: f64) -> Figure {
    if factor == 1.0 {
        return figure.clone();
    }
    let unit = Dimension::None.usual_unit(Basis::Absolute);
    let times =
        Figure::worked("how often it is made or done", Interval::exact(factor), Dimension::None, unit, Vec::new());
    Figure::worked(
        "{0} × {1}",
        figure.value * factor,
        figure.dimension,
        figure.unit,
        vec![("", figure.clone()), ("", times)],
    )
}

fn steps(recipe: &Recipe, rounds: &[Rounds]) -> Vec<StepTotal> {
    let mut out = Vec::new();
    for (group, rounds) in recipe.groups.iter().zip(rounds) {
        for step in &group.steps {
            let dry: Option<Vec<Figure>> =
                step.goods.iter().map(|id| recipe.goods.get(id.0).and_then(|goods| goods.dry_mass.clone())).collect();
            let dry = dry.and_then(|masses| sum_of(masses, gram()));
            let uses = used(step, *rounds)
                .into_iter()
                .filter_map(|(ingredient, factor)| {
                    let amount = ingredient.amount.as_ref()?;
                    let (name, liquid): (Arc<str>, bool) = match ingredient.what {
                        Substance::Material(id) => (recipe.material(id).name.clone(), recipe.material(id).liquid),
                        Substance::Mix(id) => (recipe.mix(id).name.text.clone(), !recipe.mix(id).is_dry()),
                    };
                    let figure =
                        if liquid { amount.volume.as_ref().or(amount.mass.as_ref())? } else { amount.mass.as_ref()? };
                    let figure = multiplied(figure, factor);
                    let owg = (!liquid)
                        .then(|| {
                            dry.as_ref()
                                .map(|dry| figure.over(dry, Dimension::MassFraction.usual_unit(Basis::PerGoods)))
                        })
                        .flatten();
                    Some(StepUse { name, amount: figure, owg })
                })
                .collect();
            out.push(StepTotal { place: step.place, uses });
        }
    }
    out
}
