//! Materials and water over the whole recipe.

use super::*;

#[derive(Default)]
pub(super) struct Account {
    masses: BTreeMap<MaterialId, Vec<Option<Figure>>>,
    volumes: BTreeMap<MaterialId, Vec<Figure>>,
    spooned: BTreeMap<MaterialId, Vec<Option<Figure>>>,
    uses: BTreeMap<MaterialId, Vec<Place>>,
}

impl Account {
    pub(super) fn put(&mut self, ingredient: &Ingredient, factor: f64) {
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

    pub(super) fn totals(self, recipe: &Recipe, totals: &Totals) -> Vec<MaterialTotal> {
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

/// Water of mixes, baths and poured water. What is made up to a volume or weight needs the rest of it.
pub(super) fn water(recipe: &Recipe, account: &Account) -> Option<Figure> {
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
        let Some(target) = &mix.made_up_to else {
            continue;
        };
        if target.dimension == Dimension::Mass {
            terms.extend(rest_by_weight(mix, target));
            continue;
        }
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

/// Water that a weight made up to needs beside what is weighed in; `None` when the rest is nothing or not known.
fn rest_by_weight(mix: &crate::recipe::Mix, target: &Figure) -> Option<Figure> {
    let put: Option<Vec<Figure>> = mix
        .ingredients
        .iter()
        .map(|ingredient| ingredient.amount.as_ref().and_then(|amount| amount.mass.clone()))
        .collect();
    let put = sum_of(put?, gram())?;
    let rest = target.value - put.value;
    if rest.best <= target.value.best * ROUNDING {
        return None;
    }
    let value = (rest.clamp_low(0.0) * (1.0 / WATER_DENSITY)).scale(f64::from(mix.times_made));
    let inputs = vec![("made up to", target.clone()), ("weighed in", put)];
    Some(Figure::worked("{0} − {1}, 1 kg taken as 1 L", value, Dimension::Volume, volume_unit(), inputs))
}

/// kg/m³, as dyers take it.
const WATER_DENSITY: f64 = 1000.0;
/// Parts of a whole do not quite sum to it in binary.
const ROUNDING: f64 = 1e-9;

pub(super) fn liquid_volume(recipe: &Recipe, ingredient: &Ingredient) -> Option<Figure> {
    let liquid = match ingredient.what {
        Substance::Mix(_) => true,
        Substance::Material(id) => recipe.material(id).liquid,
    };
    ingredient.amount.as_ref().filter(|_| liquid).and_then(|amount| amount.volume.clone())
}
