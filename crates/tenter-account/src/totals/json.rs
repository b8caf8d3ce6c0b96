//! The totals as JSON: the published interface of `spec/totals.schema.json`.

use serde::Serialize;
use tenter_rehearse::{Rehearsal, rehearse};
use tenter_resolve::recipe::Substance;
use tenter_resolve::totals::{Cost, MaterialTotal, MixTotal, StepTotal};

use crate::number::{Number, celsius, grams, mass_of, millilitres, minutes, number, per_cent, plain, volume_of};
use crate::pick::Picked;
use crate::source::Source;
use crate::totals::states::{State, mix_ph, states};

#[derive(Serialize)]
struct Recipe {
    name: Option<String>,
    variant: Option<String>,
    file: String,
    pieces: Option<Number>,
    dry_mass_g: Option<Number>,
    goods: Vec<Goods>,
    mixes: Vec<Mix>,
    materials: Vec<Material>,
    steps: Vec<Step>,
    states: Vec<State>,
    clock_min: Number,
    hands_on_min: Number,
    water_ml: Option<Number>,
    cost: Vec<Money>,
    unpriced: Vec<String>,
    open_problems: usize,
}

#[derive(Serialize)]
struct Goods {
    name: String,
    pieces: Number,
    dry_mass_g: Option<Number>,
}

#[derive(Serialize)]
struct Mix {
    name: String,
    volume_ml: Option<Number>,
    mass_g: Option<Number>,
    ph: Option<Number>,
    temperature_c: Option<Number>,
    times_made: u32,
    ingredients: Vec<Part>,
    drawn_ml: Option<Number>,
    drawn_g: Option<Number>,
    carried_off_ml: Option<Number>,
    left_ml: Option<Number>,
    left_g: Option<Number>,
}

#[derive(Serialize)]
struct Part {
    material: String,
    mass_g: Option<Number>,
    written: Option<String>,
}

#[derive(Serialize)]
struct Material {
    material: String,
    mass_g: Option<Number>,
    volume_ml: Option<Number>,
    spooned_ml: Option<Number>,
    owg_percent: Option<Number>,
    per_piece_g: Option<Number>,
    lines: Vec<u32>,
    cost: Option<Money>,
}

#[derive(Serialize)]
struct Step {
    line: Option<u32>,
    text: String,
    uses: Vec<Use>,
}

#[derive(Serialize)]
struct Use {
    name: String,
    mass_g: Option<Number>,
    volume_ml: Option<Number>,
    owg_percent: Option<Number>,
}

#[derive(Serialize)]
struct Money {
    currency: String,
    total: Number,
    per_piece: Option<Number>,
}

/// One array, a recipe or variant each.
pub fn json(picked: &[Picked<'_>], file: &dyn Source) -> impl Serialize {
    picked.iter().map(|picked| recipe(picked, file)).collect::<Vec<_>>()
}

fn recipe(picked: &Picked<'_>, file: &dyn Source) -> Recipe {
    let recipe = &picked.recipe;
    let totals = &recipe.totals;
    let rehearsal = rehearse(recipe);
    let clock = rehearsal.clock();
    let named = |id: tenter_resolve::recipe::MaterialId| recipe.material(id).name.to_string();
    Recipe {
        name: recipe.name.as_ref().map(|name| name.text.to_string()),
        variant: recipe.variant.as_ref().map(|name| name.text.to_string()),
        file: file.name().to_owned(),
        pieces: totals.pieces.as_ref().map(|figure| number(figure, 1.0)),
        dry_mass_g: totals.dry_mass.as_ref().map(grams),
        goods: totals
            .goods
            .iter()
            .filter_map(|total| {
                Some(Goods {
                    name: recipe.goods.get(total.goods.0)?.name.text.to_string(),
                    pieces: number(&total.pieces, 1.0),
                    dry_mass_g: total.dry_mass.as_ref().map(grams),
                })
            })
            .collect(),
        mixes: totals.mixes.iter().map(|total| mix(picked, total, &rehearsal)).collect(),
        materials: totals.materials.iter().map(|total| material(picked, total, file)).collect(),
        steps: totals
            .steps
            .iter()
            .filter(|total| !total.uses.is_empty())
            .map(|total| step(picked, total, file))
            .collect(),
        states: states(picked, &rehearsal, file),
        clock_min: minutes(clock.elapsed),
        hands_on_min: minutes(clock.hands_on),
        water_ml: totals.water.as_ref().map(millilitres),
        cost: totals.cost.iter().map(money).collect(),
        unpriced: totals.unpriced.iter().map(|id| named(*id)).collect(),
        open_problems: picked.errors(),
    }
}

fn mix(picked: &Picked<'_>, total: &MixTotal, rehearsal: &Rehearsal) -> Mix {
    let mix = picked.recipe.mix(total.mix);
    Mix {
        name: mix.name.text.to_string(),
        volume_ml: total.volume.as_ref().map(millilitres),
        mass_g: total.mass.as_ref().map(grams),
        ph: mix_ph(rehearsal, total.mix).map(|acidity| plain(acidity.ph)),
        temperature_c: rehearsal.mix(total.mix).map(|made| celsius(&made.temperature)),
        times_made: total.times,
        ingredients: total
            .ingredients
            .iter()
            .map(|(id, mass)| Part {
                material: picked.recipe.material(*id).name.to_string(),
                mass_g: mass.as_ref().map(grams),
                written: mix
                    .ingredients
                    .iter()
                    .find(|ingredient| ingredient.what == Substance::Material(*id))
                    .and_then(|ingredient| ingredient.amount.as_ref())
                    .map(|amount| picked.words(amount.place)),
            })
            .collect(),
        drawn_ml: volume_of(total.drawn.as_ref()),
        drawn_g: mass_of(total.drawn.as_ref()),
        carried_off_ml: total.carried.as_ref().map(millilitres),
        left_ml: volume_of(total.left.as_ref()),
        left_g: mass_of(total.left.as_ref()),
    }
}

fn material(picked: &Picked<'_>, total: &MaterialTotal, file: &dyn Source) -> Material {
    let mut lines: Vec<u32> = total.uses.iter().filter_map(|place| picked.line(*place, file)).collect();
    lines.sort_unstable();
    lines.dedup();
    Material {
        material: picked.recipe.material(total.material).name.to_string(),
        mass_g: total.mass.as_ref().map(grams),
        volume_ml: total.volume.as_ref().map(millilitres),
        spooned_ml: total.spooned.as_ref().map(millilitres),
        owg_percent: total.owg.as_ref().map(per_cent),
        per_piece_g: total.per_piece.as_ref().map(grams),
        lines,
        cost: total.cost.as_ref().map(money),
    }
}

fn step(picked: &Picked<'_>, total: &StepTotal, file: &dyn Source) -> Step {
    Step {
        line: picked.line(total.place, file),
        text: picked.words(total.place),
        uses: total
            .uses
            .iter()
            .map(|used| Use {
                name: used.name.to_string(),
                mass_g: mass_of(Some(&used.amount)),
                volume_ml: volume_of(Some(&used.amount)),
                owg_percent: used.owg.as_ref().map(per_cent),
            })
            .collect(),
    }
}

fn money(cost: &Cost) -> Money {
    Money {
        currency: cost.currency.to_string(),
        total: number(&cost.total, 1.0),
        per_piece: cost.per_piece.as_ref().map(|figure| number(figure, 1.0)),
    }
}
