//! Sums over the whole recipe: materials, mixes, steps, water, cost.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_quantity::{Basis, Dimension, Figure, Interval, Place, Unit};

use crate::amounts::{gram, volume_unit};
use crate::recipe::{Draw, Ingredient, Liquor, LiquorKind, LotsUse, MaterialId, MixId, Recipe, Step, Substance};
use crate::totals::{Cost, GoodsTotal, MaterialTotal, MixTotal, StepTotal, StepUse, Totals};

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
    let pieces: f64 = recipe.goods.iter().map(|goods| goods.pieces.value.best).sum();
    let mut times = vec![1.0_f64; recipe.groups.len()];
    let mut repeated = vec![false; recipe.groups.len()];
    for (_, step) in recipe.steps() {
        let Some(group) = step.repeats_group else {
            continue;
        };
        let more = match (step.lots, &lots) {
            (Some(LotsUse::Each), Some(lots)) => f64::from(lots.count.saturating_sub(1)),
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
    let times = Figure::worked("how often it is made or done", Interval::exact(factor), Dimension::None, unit, Vec::new());
    Figure::worked(
        "{0} × {1}",
        figure.value * factor,
        figure.dimension,
        figure.unit,
        vec![("", figure.clone()), ("", times)],
    )
}

#[derive(Default)]
struct Account {
    masses: BTreeMap<MaterialId, Vec<Option<Figure>>>,
    volumes: BTreeMap<MaterialId, Vec<Figure>>,
    spooned: BTreeMap<MaterialId, Vec<Option<Figure>>>,
    uses: BTreeMap<MaterialId, Vec<Place>>,
}

impl Account {
    fn put(&mut self, ingredient: &Ingredient, factor: f64) {
        let Substance::Material(id) = ingredient.what else {
            return;
        };
        let Some(amount) = &ingredient.amount else {
            return;
        };
        self.uses.entry(id).or_default().push(ingredient.place);
        self.masses.entry(id).or_default().push(amount.mass.as_ref().map(|mass| multiplied(mass, factor)));
        if let Some(volume) = &amount.volume {
            self.volumes.entry(id).or_default().push(multiplied(volume, factor));
        }
        self.spooned.entry(id).or_default().push(
            amount.volume.as_ref().filter(|_| amount.by_volume_of_solid).map(|volume| multiplied(volume, factor)),
        );
    }

    fn totals(self, recipe: &Recipe, totals: &Totals) -> Vec<MaterialTotal> {
        let mut out = Vec::new();
        for (id, uses) in self.uses {
            let material = recipe.material(id);
            if material.is_water() {
                continue;
            }
            // A sum that lacks a term is no sum.
            let mass = self
                .masses
                .get(&id)
                .and_then(|masses| masses.iter().cloned().collect::<Option<Vec<_>>>())
                .and_then(|masses| sum_of(masses, gram()));
            let volume = material
                .liquid
                .then(|| self.volumes.get(&id).cloned().and_then(|volumes| sum_of(volumes, volume_unit())))
                .flatten();
            let spooned = self
                .spooned
                .get(&id)
                .and_then(|volumes| volumes.iter().cloned().collect::<Option<Vec<_>>>())
                .and_then(|volumes| sum_of(volumes, volume_unit()));
            let owg = mass.as_ref().zip(totals.dry_mass.as_ref()).map(|(mass, dry)| {
                Figure::worked(
                    "{0} ÷ {1}",
                    mass.value / dry.value,
                    Dimension::MassFraction,
                    Dimension::MassFraction.usual_unit(Basis::PerGoods),
                    vec![("", mass.clone()), ("dry goods", dry.clone())],
                )
            });
            let per_piece = mass.as_ref().zip(totals.pieces.as_ref()).map(|(mass, pieces)| mass.over(pieces, gram()));
            out.push(MaterialTotal { material: id, mass, volume, spooned, owg, per_piece, uses, cost: None });
        }
        out
    }
}

/// Water of mixes, baths and poured water. What is made up to a volume needs the rest of that volume.
fn water(recipe: &Recipe, account: &Account) -> Option<Figure> {
    let mut terms: Vec<Figure> = Vec::new();
    for (id, volumes) in &account.volumes {
        if recipe.material(*id).is_water() {
            terms.extend(volumes.iter().cloned());
        }
    }
    for (index, mix) in recipe.mixes.iter().enumerate() {
        if !counts(recipe, MixId(index)) {
            continue;
        }
        let Some(target) = mix.made_up_to.as_ref().filter(|target| target.dimension == Dimension::Volume) else {
            continue;
        };
        let put: f64 = mix
            .ingredients
            .iter()
            .filter_map(|ingredient| liquid_volume(recipe, ingredient))
            .map(|figure| figure.value.best)
            .sum();
        let rest = (target.value.best - put) * f64::from(mix.times_made);
        if rest > 0.0 {
            let value = Interval::new(rest * 0.95, rest, rest);
            terms.push(Figure::worked(
                "{0} less what else is put in",
                value,
                Dimension::Volume,
                volume_unit(),
                vec![("made up to", target.clone())],
            ));
        }
    }
    sum_of(terms, volume_unit())
}

fn liquid_volume(recipe: &Recipe, ingredient: &Ingredient) -> Option<Figure> {
    let liquid = match ingredient.what {
        Substance::Mix(_) => true,
        Substance::Material(id) => recipe.material(id).liquid,
    };
    ingredient.amount.as_ref().filter(|_| liquid).and_then(|amount| amount.volume.clone())
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

/// Who takes what out of which mix.
fn draws(recipe: &mut Recipe, rounds: &[Rounds]) {
    let mut found: Vec<(MixId, Draw)> = Vec::new();
    let mut made: BTreeMap<MixId, (f64, Place)> = BTreeMap::new();
    for mix in &recipe.mixes {
        for ingredient in &mix.ingredients {
            draw_of(recipe, ingredient, f64::from(mix.times_made), ingredient.place, &mut found);
        }
    }
    for (group, rounds) in recipe.groups.iter().zip(rounds) {
        for step in &group.steps {
            let making = step.verb.is_some_and(|verb| matches!(verb.name, "make" | "dissolve" | "paste" | "rest"));
            for (ingredient, factor) in used(step, *rounds) {
                if let (Substance::Mix(id), true, None) = (ingredient.what, making, &ingredient.amount) {
                    if step.verb.is_some_and(|verb| verb.name == "make") {
                        let entry = made.entry(id).or_insert((0.0, step.place));
                        entry.0 += rounds.times;
                    }
                    continue;
                }
                draw_of(recipe, ingredient, factor, step.place, &mut found);
            }
            match &step.liquor {
                Some(Liquor { kind: LiquorKind::Mix(id), .. }) => {
                    found.push((*id, Draw { place: step.place, amount: None, whole: false }))
                }
                _ => {
                    if let (Some(crate::recipe::Source::Mix(id)), true) = (&step.source, step.applied.is_empty()) {
                        found.push((*id, Draw { place: step.place, amount: None, whole: false }));
                    }
                }
            }
        }
    }
    for (id, draw) in found {
        if let Some(mix) = recipe.mixes.get_mut(id.0) {
            mix.draws.push(draw);
        }
    }
    for (id, (times, place)) in made {
        if let Some(mix) = recipe.mixes.get_mut(id.0) {
            mix.times_made = times.clamp(1.0, 10_000.0) as u32;
            mix.made_by_step = Some(place);
        }
    }
}

fn draw_of(recipe: &Recipe, ingredient: &Ingredient, factor: f64, place: Place, found: &mut Vec<(MixId, Draw)>) {
    let Substance::Mix(id) = ingredient.what else {
        return;
    };
    let dry = recipe.mixes.get(id.0).is_some_and(crate::recipe::Mix::is_dry);
    let draw = match &ingredient.amount {
        None => Draw { place, amount: None, whole: true },
        Some(amount) => {
            let figure = if dry { amount.mass.as_ref() } else { amount.volume.as_ref().or(amount.mass.as_ref()) };
            Draw { place, amount: figure.map(|figure| multiplied(figure, factor)), whole: false }
        }
    };
    found.push((id, draw));
}

/// What goods worked in a mix carry off, m³.
fn carried(recipe: &Recipe, id: MixId) -> Option<Figure> {
    let steps: Vec<&Step> = recipe.steps().map(|(_, step)| step).collect();
    let mut terms = Vec::new();
    for (at, step) in steps.iter().enumerate() {
        let in_it = matches!(&step.liquor, Some(Liquor { kind: LiquorKind::Mix(mix), .. }) if *mix == id);
        let worked = step.verb.is_some_and(|verb| {
            matches!(
                verb.name,
                "soak"
                    | "immerse"
                    | "dip"
                    | "scour"
                    | "wash"
                    | "wet out"
                    | "dye"
                    | "soap off"
                    | "soften"
                    | "neutralise"
                    | "lower"
            )
        });
        if !in_it || !worked {
            continue;
        }
        let later = steps[at + 1..]
            .iter()
            .find(|later| later.goods.iter().any(|goods| step.goods.contains(goods)) && later.pickup.is_some());
        let pickup = step
            .pickup
            .clone()
            .or_else(|| later.and_then(|later| later.pickup.clone()))
            .or_else(|| {
                steps
                    .get(at + 1)
                    .and_then(|next| next.verb)
                    .and_then(|verb| crate::ledger::assumed_pickup(verb.name))
                    .filter(|figure| figure.value.high > 0.0)
            })
            .or_else(|| crate::ledger::assumed_pickup("soak"))?;
        for goods in &step.goods {
            let dry = recipe.goods.get(goods.0)?.dry_mass.clone()?;
            let value = pickup.value * dry.value * 0.001;
            terms.push(Figure::worked(
                "{0} × {1}, 1 kg of liquor taken as 1 L",
                value,
                Dimension::Volume,
                volume_unit(),
                vec![("water held", pickup.clone()), ("dry goods", dry)],
            ));
        }
    }
    sum_of(terms, volume_unit())
}

fn mix_total(recipe: &Recipe, id: MixId) -> MixTotal {
    let mix = recipe.mix(id);
    let dry = mix.is_dry();
    let made = if dry { mix.mass.as_ref() } else { mix.volume.as_ref() }
        .map(|made| multiplied(made, f64::from(mix.times_made)));
    let unit = if dry { gram() } else { volume_unit() };
    let measured: Option<Vec<Figure>> =
        mix.draws.iter().filter(|draw| !draw.whole && draw.amount.is_some()).map(|draw| draw.amount.clone()).collect();
    let drawn = measured.and_then(|terms| sum_of(terms, unit));
    let carried = if dry { None } else { carried(recipe, id) };
    let emptied = mix.draws.iter().any(|draw| draw.whole);
    let used = match (&drawn, &carried) {
        (Some(drawn), Some(carried)) => Some(drawn.plus(carried)),
        (Some(one), None) | (None, Some(one)) => Some(one.clone()),
        (None, None) => None,
    };
    let left = if emptied {
        None
    } else {
        made.as_ref().zip(used.as_ref()).map(|(made, used)| {
            let value = (made.value - used.value).clamp_low(0.0);
            Figure::worked(
                "{0} − {1}",
                value,
                unit.dimension,
                unit,
                vec![("made", made.clone()), ("used", used.clone())],
            )
        })
    };
    let used_share = made
        .as_ref()
        .zip(used.as_ref())
        .map(|(made, used)| used.over(made, Dimension::PerCent.usual_unit(Basis::Absolute)));
    MixTotal {
        mix: id,
        volume: mix.volume.clone(),
        mass: mix.mass.clone(),
        times: mix.times_made,
        drawn,
        carried,
        left,
        used_share,
        ingredients: mix
            .ingredients
            .iter()
            .filter_map(|ingredient| match ingredient.what {
                Substance::Material(material) => {
                    Some((material, ingredient.amount.as_ref().and_then(|amount| amount.mass.clone())))
                }
                Substance::Mix(_) => None,
            })
            .collect(),
    }
}

fn cost(recipe: &Recipe, totals: &mut Totals) {
    let mut sums: BTreeMap<Arc<str>, Vec<Figure>> = BTreeMap::new();
    let mut unpriced = Vec::new();
    for entry in &mut totals.materials {
        let material = recipe.material(entry.material);
        let Some(price) = &material.price else {
            unpriced.push(entry.material);
            continue;
        };
        let amount = if price.by_volume { entry.volume.as_ref() } else { entry.mass.as_ref() };
        let (Some(amount), Some(unit)) = (amount, tenter_quantity::lookup_currency(&price.currency)) else {
            continue;
        };
        let total = amount.times(&price.rate, unit);
        sums.entry(price.currency.clone()).or_default().push(total.clone());
        let per_piece = totals.pieces.as_ref().map(|pieces| total.over(pieces, unit));
        entry.cost = Some(Cost { currency: price.currency.clone(), total, per_piece });
    }
    for goods in &recipe.goods {
        if let Some(price) = &goods.price {
            let code: Arc<str> = price.unit.symbol.into();
            let total = price.times(&goods.pieces, price.unit);
            sums.entry(code).or_default().push(total);
        }
    }
    totals.cost = sums
        .into_iter()
        .filter_map(|(currency, terms)| {
            let unit = tenter_quantity::lookup_currency(&currency)?;
            let total = Figure::sum(terms, unit);
            let per_piece = totals.pieces.as_ref().map(|pieces| total.over(pieces, unit));
            Some(Cost { currency, total, per_piece })
        })
        .collect();
    if !totals.cost.is_empty() {
        totals.unpriced = unpriced;
    }
}
