//! The bath as JSON: the published interface of `spec/bath.schema.json`.

use serde::Serialize;
use tenter_resolve::recipe::Substance;

use crate::bath::Reckoned;
use crate::bath::text::{caution_lines, caution_words, hazards};
use crate::number::{Number, celsius, grams, in_per_cent, millilitres, plain};
use crate::output::Output;

#[derive(Serialize)]
struct Bath {
    amounts: String,
    ingredients: Vec<Part>,
    volume_ml: Option<Number>,
    mass_g: Option<Number>,
    density_g_per_ml: Option<Number>,
    temperature_c: Option<Number>,
    ph: Option<Number>,
    ph_notes: Vec<&'static str>,
    saturation: Vec<Full>,
    findings: Vec<Found>,
    cautions: Vec<Careful>,
}

#[derive(Serialize)]
struct Part {
    material: String,
    written: String,
    mass_g: Option<Number>,
    volume_ml: Option<Number>,
}

#[derive(Serialize)]
struct Full {
    material: String,
    full_percent: Number,
    dissolves_g_per_kg_water: Number,
    dissolves_from_c: Option<f64>,
}

#[derive(Serialize)]
struct Found {
    rule: &'static str,
    level: &'static str,
    message: String,
    help: String,
}

#[derive(Serialize)]
struct Careful {
    material: String,
    hazards: Vec<Hazard>,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct Hazard {
    code: String,
    text: String,
}

/// Writes one object.
pub fn show(bath: &Reckoned<'_>, output: &mut Output) {
    let named = |at: usize| bath.recipe.materials.get(at).map_or_else(String::new, |entry| entry.name.to_string());
    let acidity = bath.made.and_then(|made| made.acidity(&bath.rehearsal.substances));
    let told = Bath {
        amounts: bath.amounts.clone(),
        ingredients: bath
            .mix
            .ingredients
            .iter()
            .filter_map(|ingredient| {
                let Substance::Material(id) = ingredient.what else { return None };
                let amount = ingredient.amount.as_ref();
                let liquid = bath.recipe.materials.get(id.0).is_some_and(|entry| entry.liquid || entry.is_water());
                let volume = amount.and_then(|amount| amount.volume.as_ref()).filter(|_| liquid);
                Some(Part {
                    material: named(id.0),
                    written: bath.words(ingredient.place),
                    mass_g: amount.and_then(|amount| amount.mass.as_ref()).map(grams),
                    volume_ml: volume.map(millilitres),
                })
            })
            .collect(),
        volume_ml: bath.mix.volume.as_ref().map(millilitres),
        mass_g: bath.mix.mass.as_ref().map(grams),
        density_g_per_ml: bath.made.and_then(|made| made.density()).map(|density| plain(density / 1000.0)),
        temperature_c: bath.made.map(|made| celsius(&made.temperature)),
        ph: acidity.map(|acidity| plain(acidity.ph)),
        ph_notes: acidity
            .map_or_else(Vec::new, |acidity| acidity.cautions.iter().map(|caution| caution_words(*caution)).collect()),
        saturation: bath
            .saturation()
            .iter()
            .map(|full| Full {
                material: named(full.material.0),
                full_percent: in_per_cent(full.full),
                dissolves_g_per_kg_water: plain(full.dissolves * 1000.0),
                dissolves_from_c: full.dissolves_at.map(|kelvin| ((kelvin - 273.15) * 10.0).round() / 10.0),
            })
            .collect(),
        findings: bath
            .findings
            .iter()
            .map(|finding| Found {
                rule: finding.rule,
                level: finding.level.word(),
                message: finding.message.to_string(),
                help: finding.help.to_string(),
            })
            .collect(),
        cautions: bath
            .recipe
            .materials
            .iter()
            .map(|material| Careful {
                material: material.name.to_string(),
                hazards: hazards(material).into_iter().map(|(code, text)| Hazard { code, text }).collect(),
                cautions: caution_lines(material),
            })
            .filter(|careful| !careful.hazards.is_empty() || !careful.cautions.is_empty())
            .collect(),
    };
    output.json(&told);
}
