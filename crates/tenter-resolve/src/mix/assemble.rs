//! What a liquor's lines make together: amounts, volume, mass.

use tenter_chemistry::density::DensitySolute;

use super::*;
use crate::recipe::MaterialId;

/// The goods an amount refers to: those named, else all there are.
pub(crate) fn ground(binder: &mut Binder<'_>, row: &Row<'_>, draft: &Draft) -> Ground {
    let relative = draft.measured.as_ref().is_some_and(|measured| {
        measured.quantity.basis != Basis::Absolute
            || matches!(measured.quantity.dimension, Dimension::LiquorRatio | Dimension::VolumePerMass)
    });
    let mut ground = Ground { fixed: draft.fixed, ..Ground::default() };
    if draft.goods.is_empty() {
        ground.pieces = binder.all_pieces();
        ground.goods_mass = binder.all_dry_mass();
        if relative && binder.goods.len() > 1 {
            let choices = binder.goods.iter().map(|goods| goods.name.text.clone()).collect();
            binder.problem(row.place(row.line.span), ProblemKind::WhichGoods { choices });
        }
    } else {
        let chosen: Vec<&crate::recipe::Goods> = draft.goods.iter().filter_map(|id| binder.goods.get(id.0)).collect();
        ground.pieces = Some(Figure::sum(
            chosen.iter().map(|goods| goods.pieces.clone()).collect(),
            Dimension::Piece.usual_unit(Basis::Absolute),
        ));
        let masses: Option<Vec<Figure>> = chosen.iter().map(|goods| goods.dry_mass.clone()).collect();
        ground.goods_mass = masses.map(|masses| Figure::sum(masses, gram()));
    }
    ground
}

/// Settles drafts of one liquor together: first what stands by itself, then what is so much in a litre.
pub(crate) fn settle_all(
    binder: &mut Binder<'_>,
    drafts: &[(Row<'_>, Draft)],
    made_up_to: Option<&Figure>,
    liquor: Option<&Figure>,
) -> (Vec<Ingredient>, Option<Figure>) {
    let mut amounts = vec![None; drafts.len()];
    let parts: f64 = drafts
        .iter()
        .filter_map(|(_, draft)| draft.measured.as_ref())
        .filter(|measured| measured.quantity.dimension == Dimension::Part)
        .map(|measured| measured.quantity.value.best)
        .sum();
    let whole_mass = made_up_to.filter(|figure| figure.dimension == Dimension::Mass).cloned();
    let made_volume = made_up_to.filter(|figure| figure.dimension == Dimension::Volume).cloned();
    let whole_mass = whole_mass.or_else(|| made_volume.as_ref().filter(|_| parts > 0.0).map(paste_mass));
    for (index, (row, draft)) in drafts.iter().enumerate() {
        let Some(measured) = draft.measured.as_ref().filter(|measured| !refers_to_liquid(measured)) else {
            continue;
        };
        let mut ground = ground(binder, row, draft);
        ground.parts = Some(parts);
        ground.whole_mass = whole_mass.clone();
        amounts[index] = Some(settle(binder, row, draft.what, Some(&draft.name), measured, &ground));
    }
    let is_base = |binder: &Binder<'_>, what: Substance| match what {
        Substance::Mix(_) => true,
        Substance::Material(id) => binder.materials[id.0].is_water(),
    };
    let volumes = |base_only: bool| -> Vec<Figure> {
        drafts
            .iter()
            .zip(&amounts)
            .filter(|((_, draft), _)| if base_only { is_base(binder, draft.what) } else { true })
            .filter_map(|(_, amount): (_, &Option<crate::recipe::Amount>)| {
                amount.as_ref().filter(|amount| !amount.by_volume_of_solid).and_then(|amount| amount.volume.clone())
            })
            .collect()
    };
    let mut base = volumes(true);
    if base.is_empty() {
        base = volumes(false);
    }
    let put_in = (!base.is_empty()).then(|| Figure::sum(base, volume_unit()));
    let liquid = liquor.cloned().or_else(|| made_volume.clone()).or_else(|| put_in.clone());
    for (index, (row, draft)) in drafts.iter().enumerate() {
        let Some(measured) = draft.measured.as_ref().filter(|measured| refers_to_liquid(measured)) else {
            continue;
        };
        let mut ground = ground(binder, row, draft);
        ground.liquid = liquid.clone();
        ground.whole_mass = whole_mass.clone();
        amounts[index] = Some(settle(binder, row, draft.what, Some(&draft.name), measured, &ground));
    }
    let ingredients = drafts
        .iter()
        .zip(amounts)
        .map(|((row, draft), amount)| Ingredient {
            place: draft.place,
            what: draft.what,
            name_place: row.place(draft.name.span),
            amount,
            temperature: draft.temperature.clone(),
            fixed: draft.fixed,
        })
        .collect();
    (ingredients, made_volume.or(put_in))
}

pub(super) fn paste_mass(volume: &Figure) -> Figure {
    let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
    let density = Figure::assumed(
        Interval::new(1000.0, 1050.0, 1150.0),
        Dimension::MassConcentration,
        unit,
        "density of a paste",
        "a little more than water",
    );
    volume.times(&density, gram())
}

pub(super) fn assemble(binder: &mut Binder<'_>, mix: &mut Mix, drafts: &[(Row<'_>, Draft)]) {
    let made_up_to = mix.made_up_to.clone();
    let (ingredients, liquid_in) = settle_all(binder, drafts, made_up_to.as_ref(), None);
    mix.ingredients = ingredients;
    mix.liquid_in = liquid_in;
    mix.temperature = crate::water::mean_temperature(&mix.ingredients);
    measure(binder, mix);
}

/// Volume and mass of what is made.
pub(crate) fn measure(binder: &Binder<'_>, mix: &mut Mix) {
    let masses: Option<Vec<Figure>> = mix
        .ingredients
        .iter()
        .map(|ingredient| ingredient.amount.as_ref().and_then(|amount| amount.mass.clone()))
        .collect();
    if let Some(target) = &mix.made_up_to {
        if target.dimension == Dimension::Mass {
            mix.mass = Some(target.clone());
            let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
            let density = Figure::assumed(
                Interval::new(1000.0, 1050.0, 1150.0),
                Dimension::MassConcentration,
                unit,
                "density of a paste",
                "a little more than water",
            );
            let wet =
                mix.liquid_in.is_some() || mix.ingredients.iter().any(|ingredient| is_liquid(binder, ingredient.what));
            mix.volume = wet.then(|| target.over(&density, volume_unit()));
        } else {
            mix.volume = Some(target.clone());
            mix.mass = None;
        }
        return;
    }
    mix.mass = masses.filter(|masses| !masses.is_empty()).map(|masses| Figure::sum(masses, gram()));
    let mut terms: Vec<Figure> = Vec::new();
    let mut solids: Vec<(MaterialId, Figure)> = Vec::new();
    for ingredient in &mix.ingredients {
        let Some(amount) = &ingredient.amount else {
            continue;
        };
        if is_liquid(binder, ingredient.what) {
            terms.extend(amount.volume.clone());
        } else {
            if let (Substance::Material(id), Some(mass)) = (ingredient.what, amount.mass.clone()) {
                solids.push((id, mass));
            }
        }
    }
    if terms.is_empty() {
        mix.volume = None;
        return;
    }
    let water: f64 = terms.iter().map(|term| term.value.best).sum::<f64>() / WATER_VOLUME;
    let temperature = mix.temperature.as_ref().map_or(293.15, |figure| figure.value.best);
    terms.extend(displaced(binder, &solids, water, temperature));
    mix.volume = Some(Figure::sum(terms, volume_unit()));
}

/// Room that dissolved solids take up beside `water` kg of water: a figure for each solid and their sum.
/// Volumes in solution after Laliberté and Cooper (see `tenter_chemistry::density`), half a litre a kilogram
/// with a wide spread for what has none there.
fn displaced(binder: &Binder<'_>, solids: &[(MaterialId, Figure)], water: f64, temperature_k: f64) -> Vec<Figure> {
    let mass: f64 = solids.iter().map(|(_, mass)| mass.value.best).sum();
    let share = mass / (mass + water).max(f64::MIN_POSITIVE);
    let unit = Dimension::VolumePerMass.usual_unit(Basis::Absolute);
    solids
        .iter()
        .map(|(id, mass)| {
            let material = &binder.materials[id.0];
            let entry = material.reference;
            let fraction = entry.and_then(|entry| entry.anhydrous.as_ref()).map_or(1.0, |anhydrous| anhydrous.fraction);
            let substance = entry
                .and_then(|entry| entry.anhydrous.as_ref())
                .and_then(|anhydrous| binder.reference.material(&anhydrous.id))
                .or(entry);
            let formula = substance.and_then(|entry| entry.formula.as_deref()).unwrap_or("");
            let (low, best, high) = DensitySolute::from_formula(formula).specific_volume(share, temperature_k);
            // Water of crystallisation counts as water.
            let value = Interval::new(low, best, high) * fraction + WATER_VOLUME * (1.0 - fraction);
            let room =
                Figure::looked(value, Dimension::VolumePerMass, unit, "room it takes when dissolved", VOLUME_SOURCE);
            mass.times(&room, volume_unit())
        })
        .collect()
}

/// m³ a kilogram of water takes.
const WATER_VOLUME: f64 = 1.002e-3;
const VOLUME_SOURCE: &str = "Laliberté 2009, J. Chem. Eng. Data 54:1725, where it has the substance; else an estimate";

pub(crate) fn is_liquid(binder: &Binder<'_>, what: Substance) -> bool {
    match what {
        Substance::Mix(id) => binder.mixes.get(id.0).is_none_or(|mix| !mix.is_dry() || mix.ingredients.is_empty()),
        Substance::Material(id) => binder.materials[id.0].liquid,
    }
}

/// A mix that draws on itself, however far round.
pub(super) fn circles(binder: &mut Binder<'_>) {
    let draws: Vec<Vec<usize>> = binder
        .mixes
        .iter()
        .map(|mix| {
            mix.ingredients
                .iter()
                .filter_map(|ingredient| match ingredient.what {
                    Substance::Mix(id) => Some(id.0),
                    Substance::Material(_) => None,
                })
                .collect()
        })
        .collect();
    for start in 0..draws.len() {
        let mut reached = vec![false; draws.len()];
        let mut waiting = draws[start].clone();
        while let Some(next) = waiting.pop() {
            if next < reached.len() && !reached[next] {
                reached[next] = true;
                waiting.extend(&draws[next]);
            }
        }
        if reached[start] {
            let name = binder.mixes[start].name.clone();
            binder.problem(name.place, ProblemKind::CircularMix { name: name.text });
        }
    }
}
