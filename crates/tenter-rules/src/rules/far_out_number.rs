//! A slip of the pen.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::{Dimension, Figure, Place, standard};
use tenter_reference::{DyeFamily, Form, Role};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{Ingredient, LiquorKind, MaterialId, Substance};

pub(crate) const RULE: Rule = Rule {
    name: "far-out-number",
    summary: "A number far outside what the trade ever uses.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("far_out_number.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut tell = |place: Place, what: &str, figure: &Figure, why: &str| {
        found.push(
            Finding::new(&RULE, figure.place().unwrap_or(place), format!("{what} {}: {why}", figure.show()))
                .figure(figure)
                .help("Look for a slip: a digit too many, °F for °C, minutes for hours."),
        );
    };
    let mixes = context.recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
    let steps = context.steps().flat_map(|step| {
        let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(inside)) => inside.as_slice(),
            _ => &[],
        };
        step.applied.iter().chain(&step.with).chain(bath)
    });
    for ingredient in mixes.chain(steps) {
        if let Some(amount) = &ingredient.amount
            && amount.by_volume_of_solid
            && matches!(ingredient.what, Substance::Material(id) if context.material(id).is_dye)
            && amount.unit.name.contains("spoon")
            && let Some(volume) = &amount.volume
            && volume.value.low > MOST_SPOONED
        {
            tell(ingredient.place, "dye by the spoon,", volume, "nobody counts so many spoons; grams, most likely");
        }
        if let Some(temperature) = &ingredient.temperature {
            if temperature.value.low > BOILING || temperature.value.high > BOILING + 20.0 {
                tell(ingredient.place, "water at", temperature, "it boils at 100 °C");
            } else if fahrenheit_for_celsius(temperature) && !washing(context, ingredient.place) {
                tell(ingredient.place, "water at", temperature, "nearly ice; °C was meant, most likely");
            } else if temperature.value.high < FREEZING {
                tell(ingredient.place, "a liquid at", temperature, "it would be ice");
            }
        }
    }
    for (ingredient, strength, most) in stocks(context) {
        let Substance::Material(id) = ingredient.what else { continue };
        let shown = crate::bench::number(most);
        let why = format!("{shown} g/L is more than any stock or paste has of it");
        tell(ingredient.place, &context.material(id).name, &strength, &why);
    }
    for (ingredient, strength, most) in working_strengths(context) {
        let value = strength.value;
        if value.low > most {
            let name = match ingredient.what {
                Substance::Material(id) => &*context.material(id).name,
                Substance::Mix(id) => &*context.recipe.mix(id).name.text,
            };
            let shown = crate::bench::number(most);
            tell(ingredient.place, name, &strength, &format!("{shown} g/L is more than any bath has of it"));
        }
    }
    for (place, id, mass, share, most) in mordants(context) {
        let name = &context.material(id).name;
        let what = format!("{name}, {}% of the weight of the goods,", crate::bench::number(share * 100.0));
        let why = format!("a mordant is never more than {}%", crate::bench::number(most * 100.0));
        tell(place, &what, mass, &why);
    }
    if let Some(room) = &context.recipe.header.room
        && !(263.15..=323.15).contains(&room.value.best)
    {
        tell(room.place().unwrap_or(Place { block: 0, start: 0, end: 0 }), "a room at", room, "nobody works there");
    }
    for goods in &context.recipe.goods {
        if let Some(mass) = &goods.piece_mass
            && !(0.0005..=10.0).contains(&mass.value.best)
        {
            tell(goods.name.place, "a piece of", mass, "hardly a garment");
        }
    }
    for step in context.steps() {
        let Some(verb) = step.verb else { continue };
        if let Some(time) = &step.duration
            && let Some((_, most)) = LONGEST.iter().find(|(name, _)| *name == verb.name)
            && time.value.low > most * 3600.0
        {
            tell(step.place, verb.name, time, "far longer than anybody does");
        }
        if let Some(pickup) = &step.pickup
            && pickup.value.low > 5.0
        {
            tell(step.place, "a pickup of", pickup, "cloth cannot hold so much");
        } else if let Some(pickup) = &step.pickup
            && pickup.value.high < 0.35
            && matches!(verb.name, "spin" | "squeeze")
        {
            tell(step.place, "a pickup of", pickup, "no spinning gets cotton so dry");
        }
        if let Some(temperature) = step.temperature.as_ref().or(step.to_temperature.as_ref())
            && temperature.value.low > BOILING
            && !matches!(verb.name, "press" | "steam" | "dry" | "iron" | "cure" | "heat")
        {
            tell(step.place, verb.name, temperature, "water boils at 100 °C");
        }
    }
}

/// What steps bring to their baths at a strength, as kg/m³, with the most the trade takes of its kind. A stock may be
/// stronger: mixes are left out.
fn working_strengths<'a>(context: &Context<'a>) -> Vec<(&'a Ingredient, Figure, f64)> {
    let mut found = Vec::new();
    for step in context.steps() {
        let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(inside)) => inside.as_slice(),
            _ => &[],
        };
        for ingredient in step.with.iter().chain(bath) {
            let (Some(amount), Substance::Material(id)) = (&ingredient.amount, ingredient.what) else { continue };
            let material = context.material(id);
            let dilute = material.reference.is_none_or(|entry| entry.form == Form::Solution);
            let most = MOST_IN_A_BATH.iter().find(|(role, _)| *role == material.role()).map(|(_, most)| *most);
            let Some(most) = most.filter(|_| !dilute) else { continue };
            let strength = match amount.dimension() {
                Dimension::MassConcentration => amount.written.value,
                // Near enough for a slip: a litre of it weighs about a kilogram.
                Dimension::VolumeFraction => amount.written.value * 1000.0,
                _ => continue,
            };
            let figure =
                Figure::written(strength, Dimension::MassConcentration, standard::GRAM_PER_LITRE, amount.place);
            found.push((ingredient, figure, most));
        }
    }
    found
}

/// What mixes hold far more of than anybody stirs in.
fn stocks<'a>(context: &Context<'a>) -> Vec<(&'a Ingredient, Figure, f64)> {
    let mut found = Vec::new();
    for mix in &context.recipe.mixes {
        let Some(volume) = mix.liquid_in.as_ref().or(mix.volume.as_ref()).filter(|volume| volume.value.low > 0.0)
        else {
            continue;
        };
        for ingredient in &mix.ingredients {
            let (Some(amount), Substance::Material(id)) = (&ingredient.amount, ingredient.what) else { continue };
            let entry = context.material(id).reference;
            let most = MOST_IN_A_STOCK.iter().find(|(name, _)| entry.is_some_and(|entry| entry.id == *name));
            let Some(((_, most), mass)) = most.zip(amount.mass.as_ref()) else { continue };
            let strength = mass.value / volume.value;
            if strength.low > *most {
                let figure =
                    Figure::written(strength, Dimension::MassConcentration, standard::GRAM_PER_LITRE, amount.place);
                found.push((ingredient, figure, *most));
            }
        }
    }
    found
}

/// Mordants in a bath with goods in it, and the share of their dry weight.
fn mordants<'a>(context: &Context<'a>) -> Vec<(Place, MaterialId, &'a Figure, f64, f64)> {
    let mut found: Vec<(Place, MaterialId, &'a Figure, f64, f64)> = Vec::new();
    for event in context.events() {
        let EventKind::Immersed { liquor, .. } = &event.kind else { continue };
        let Some(frame) = context.rehearsal.frames.get(event.frame) else { continue };
        let Some(bath) = frame.liquors.get(*liquor) else { continue };
        // The iron of a vat reduces.
        let vat = bath.contents.parts.iter().any(|(id, _)| {
            context.class(*id).is_some_and(|class| matches!(class.family, DyeFamily::Vat | DyeFamily::Indigo))
        });
        let dry: f64 = bath.inside.iter().filter_map(|at| frame.goods.get(*at)).map(|goods| goods.dry.value.high).sum();
        for (id, mass) in bath.contents.parts.iter().filter(|_| !vat && dry > 0.0) {
            let material = context.material(*id);
            if material.role() != Role::Mordant || found.iter().any(|(_, have, ..)| have == id) {
                continue;
            }
            let alum = material.name.contains("alum");
            let most = if alum { MOST_ALUM } else { MOST_MORDANT };
            let share = mass.value.low / dry;
            if share > most {
                found.push((event.place, *id, mass, share, most));
            }
        }
    }
    found
}

/// Share of the dry weight: alum 8 to 20%, other metals 1 to 5% (common practice, no source), three times that and more.
const MOST_ALUM: f64 = 0.6;
const MOST_MORDANT: f64 = 0.25;

/// Whether a place stands in a step that washes: what is too cold for that is another rule's business.
fn washing(context: &Context<'_>, place: Place) -> bool {
    context.steps().any(|step| {
        let here = step.place;
        here.block == place.block && here.start <= place.start && place.end <= here.end && context.washes(here)
    })
}

/// `40 °F`, four degrees above ice, where 40 °C is what baths have.
fn fahrenheit_for_celsius(temperature: &Figure) -> bool {
    temperature.unit.symbol == "°F" && (FREEZING..COLDEST_TAP).contains(&temperature.value.best)
}

/// Most of a thing in the water of a stock or paste, kg/m³; twice and more what the trade takes (common practice, no source).
const MOST_IN_A_STOCK: [(&str, f64); 5] = [
    ("urea", 450.0),
    ("sodium-alginate", 150.0),
    ("guar-gum", 120.0),
    ("methyl-cellulose", 150.0),
    ("potassium-permanganate", 40.0),
];
/// 45 °F in K.
const COLDEST_TAP: f64 = 280.4;
/// Most of a kind in a working bath, kg/m³; several times what the trade takes (common practice, no source).
const MOST_IN_A_BATH: [(Role, f64); 5] = [
    (Role::Acid, 60.0),
    (Role::Detergent, 40.0),
    (Role::Softener, 60.0),
    (Role::WettingAgent, 40.0),
    (Role::Reducer, 60.0),
];
/// m³: sixteen teaspoons, a third of a cup.
const MOST_SPOONED: f64 = 8e-5;
/// 101 °C in K.
const BOILING: f64 = 374.15;
/// −1 °C in K.
const FREEZING: f64 = 272.15;
/// Hours that steps take at most.
const LONGEST: [(&str, f64); 8] = [
    ("soak", 96.0),
    ("batch", 192.0),
    ("steam", 6.0),
    ("microwave", 0.25),
    ("rinse", 24.0),
    ("soap off", 24.0),
    ("hold", 48.0),
    ("immerse", 96.0),
];
