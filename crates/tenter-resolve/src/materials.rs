//! `dye` and `chemical` blocks, and reference entries taken as they are.

use std::sync::Arc;

use tenter_quantity::{Basis, Dimension, Figure, Interval, Place};
use tenter_reference::{Dye, DyeClass, Entry, Reference, Sourced};
use tenter_syntax::{BlockKind, fold_name};

use crate::binder::{Binder, tidy};
use crate::names::{Referent, unquoted};
use crate::phrase::{Measured, Phrase, PhraseKind};
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{Material, MaterialId, Price, Substance};
use crate::sheet::{Body, Row};

/// A figure of the reference data.
pub(crate) fn looked(sourced: &Sourced, scale: f64, dimension: Dimension, what: String) -> Figure {
    let value = Interval::new(sourced.low * scale, sourced.best * scale, sourced.high * scale);
    Figure::looked(value, dimension, dimension.usual_unit(Basis::Absolute), what, sourced.source.citation.as_str())
}

fn class_of(dye: &Dye) -> Option<&'static DyeClass> {
    Reference::bundled().class(&dye.class.value)
}

/// A material that is just the reference entry.
pub(crate) fn from_reference(entry: Entry<'static>, place: Place) -> Option<Material> {
    match entry {
        Entry::Material(material) => {
            let density = material.density_kg_per_m3.as_ref().map(|density| {
                looked(
                    density,
                    1.0,
                    Dimension::MassConcentration,
                    density_label(&material.name, material.form.is_dry()),
                )
            });
            let purity = material.strength.as_ref().map(|strength| {
                looked(&strength.fraction, 1.0, Dimension::MassFraction, format!("strength of {}", material.name))
            });
            Some(Material {
                name: material.name.as_str().into(),
                declared: None,
                place,
                reference: Some(material),
                dye: None,
                class: (material.id == INDIGO).then(|| Reference::bundled().class("indigo")).flatten(),
                class_place: None,
                is_dye: material.id == INDIGO,
                density,
                purity,
                liquid: !material.form.is_dry(),
                price: None,
                colour: None,
            })
        }
        Entry::Dye(dye) => Some(Material {
            name: dye.name.as_str().into(),
            declared: None,
            place,
            reference: None,
            dye: Some(dye),
            class: class_of(dye),
            class_place: None,
            is_dye: true,
            density: Some(looked(
                &dye.density_kg_per_m3,
                1.0,
                Dimension::MassConcentration,
                density_label(&dye.name, true),
            )),
            purity: None,
            liquid: false,
            price: None,
            colour: None,
        }),
        Entry::Fibre(_) | Entry::Class(_) => None,
    }
}

fn density_label(name: &str, dry: bool) -> String {
    if dry { format!("bulk density of {name}") } else { format!("density of {name}") }
}

/// Reads all `dye` and `chemical` blocks.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    let bodies: Vec<Body<'_>> = binder
        .bodies
        .iter()
        .filter(|body| matches!(body.block.kind, BlockKind::Dye | BlockKind::Chemical))
        .cloned()
        .collect();
    for body in &bodies {
        let material = read(binder, body);
        let number = MaterialId(binder.materials.len());
        let reference_id =
            material.reference.map(|entry| entry.id.as_str()).or(material.dye.map(|dye| dye.id.as_str()));
        // A block named like a reference entry amends it for this file; one that only refers to it (`is`, `index`) does not hide it.
        let key = fold_name(unquoted(body.name()));
        let amends = match Reference::bundled().find(&key) {
            Some(Entry::Material(entry)) => Some(entry.id.as_str()),
            Some(Entry::Dye(dye)) => Some(dye.id.as_str()),
            _ => None,
        };
        if amends.is_some()
            && amends == reference_id
            && let Some(id) = amends
        {
            binder.stands_for(id, number);
        }
        binder.materials.push(material);
        binder.declared.push(number);
    }
}

fn read(binder: &mut Binder<'_>, body: &Body<'_>) -> Material {
    let is_dye = body.block.kind == BlockKind::Dye;
    let place = body.place(body.block.name);
    let name: Arc<str> = tidy(unquoted(body.name()));
    let own = Reference::bundled()
        .find(&name)
        .and_then(|entry| from_reference(entry, place))
        .filter(|found| found.is_dye == is_dye || !is_dye);
    let mut material = own.unwrap_or_else(|| blank(Arc::clone(&name), place, is_dye));
    material.name = name;
    material.declared = Some(place);
    material.place = place;
    material.is_dye |= is_dye;
    for row in &body.rows {
        let Some(head) = &row.line.head else {
            crate::keys::stray(binder, row);
            continue;
        };
        match &*head.word {
            "class" => class(binder, row, &mut material),
            "index" => index(binder, row, &mut material),
            "is" => is(binder, row, &mut material),
            "density" => {
                let phrases = binder.phrases(row);
                if let Some(figure) = binder.value_of(
                    row,
                    &phrases,
                    &[Dimension::MassConcentration],
                    "the bulk density",
                    "density 0.42 to 0.58 g/mL",
                ) {
                    material.density = Some(figure);
                }
            }
            "strength" | "purity" => strength(binder, row, &mut material),
            "colour" => {
                let phrases = binder.phrases(row);
                material.colour = phrases.iter().find_map(|phrase| match phrase.kind {
                    PhraseKind::Colour(rgb) => Some((rgb, row.place(phrase.span))),
                    _ => None,
                });
                if material.colour.is_none() && row.line.unread.is_none() {
                    binder.missing(row, "a colour", "colour #1d5fa6");
                }
            }
            "price" => material.price = price(binder, row),
            "form" => material.liquid = row.text(row.line.rest).to_lowercase().contains("liquid"),
            _ => crate::keys::known_or_told(binder, row, body.block.kind),
        }
    }
    if material.density.is_none() && !material.liquid {
        material.density = Some(default_density(is_dye, &material.name));
    }
    material
}

/// The one dye among the materials: it has no generic name of a class of its own.
const INDIGO: &str = "indigo-powder";

fn blank(name: Arc<str>, place: Place, is_dye: bool) -> Material {
    Material {
        name,
        declared: Some(place),
        place,
        reference: None,
        dye: None,
        class: None,
        class_place: None,
        is_dye,
        density: None,
        purity: None,
        liquid: false,
        price: None,
        colour: None,
    }
}

/// The window for powders of which nothing is known.
fn default_density(is_dye: bool, name: &str) -> Figure {
    let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
    let (value, why) = if is_dye {
        (
            Interval::new(300.0, 600.0, 900.0),
            "no published bulk density of reactive dye powders was found; 0.3 to 0.9 g/mL is a guess",
        )
    } else {
        (Interval::new(400.0, 800.0, 1500.0), "no bulk density is known for it; 0.4 to 1.5 g/mL is a guess")
    };
    Figure::assumed(value, Dimension::MassConcentration, unit, format!("bulk density of {name}"), why)
}

fn class(binder: &mut Binder<'_>, row: &Row<'_>, material: &mut Material) {
    let Some(value) = crate::binder::prose(row) else {
        binder.missing(row, "the dye class", "class reactive dichlorotriazine");
        return;
    };
    match Reference::bundled().find(&value.text) {
        Some(Entry::Class(found)) => {
            material.class = Some(found);
            material.class_place = Some(value.place);
        }
        _ => {
            let nearest = binder.names.nearest(&value.text, NameKind::DyeClass);
            binder.problem(
                value.place,
                ProblemKind::UnknownName { written: value.text, expected: NameKind::DyeClass, nearest },
            );
        }
    }
}

/// A Colour Index name nobody here has heard of is no error: most of them are unknown to the reference data.
fn index(binder: &mut Binder<'_>, row: &Row<'_>, material: &mut Material) {
    let Some(value) = crate::binder::prose(row) else {
        binder.missing(row, "the Colour Index name", "index C.I. Reactive Blue 4");
        return;
    };
    if let Some(Entry::Dye(dye)) = Reference::bundled().find(&value.text) {
        material.dye = Some(dye);
        if material.class.is_none() {
            material.class = class_of(dye);
        }
    }
}

fn is(binder: &mut Binder<'_>, row: &Row<'_>, material: &mut Material) {
    let phrases = binder.phrases(row);
    let base = phrases.iter().find_map(|phrase| match &phrase.kind {
        PhraseKind::Name(name) => Some(name.clone()),
        _ => None,
    });
    let Some(base) = base else {
        binder.missing(row, "what it is", "is soda ash");
        return;
    };
    let entry = base.find(|referent| match referent {
        Referent::Reference(entry) => Some(*entry),
        _ => None,
    });
    match entry.and_then(|entry| from_reference(entry, material.place)) {
        Some(found) => {
            material.reference = found.reference;
            material.dye = found.dye;
            material.class = material.class.or(found.class);
            material.is_dye |= found.is_dye;
            material.liquid = found.liquid;
            material.density = material.density.take().or(found.density);
            material.purity = material.purity.take().or(found.purity);
        }
        None => binder.unknown_name(row, &base, NameKind::Material),
    }
}

fn strength(binder: &mut Binder<'_>, row: &Row<'_>, material: &mut Material) {
    let phrases = binder.phrases(row);
    for phrase in &phrases {
        if let PhraseKind::Measured(measured, _) = &phrase.kind {
            material.purity = share_of_active(row, measured);
            if material.purity.is_none() {
                binder.wrong_dimension(
                    row,
                    measured,
                    &[Dimension::MassFraction, Dimension::MassConcentration],
                    "a strength",
                );
            }
            return;
        }
    }
    // A dye's strength may be told in words: nothing is reckoned with it.
    if row.text(row.line.rest).trim().is_empty() {
        binder.missing(row, "the strength", "strength 5% w/v");
    }
}

/// `330 mL vinegar, 5%`: the strength of a solution behind its name, which holds for the recipe. `false` when it
/// cannot be meant so: what stands before it is no liquid material.
pub(crate) fn strength_behind(
    binder: &mut Binder<'_>,
    row: &Row<'_>,
    what: Option<Substance>,
    measured: &Measured,
) -> bool {
    let Some(Substance::Material(id)) = what else {
        return false;
    };
    let Some(figure) = share_of_active(row, measured) else {
        return false;
    };
    let Some(material) = binder.materials.get_mut(id.0).filter(|material| material.liquid && !material.is_water())
    else {
        return false;
    };
    let said = material.purity.as_ref().filter(|purity| purity.place().is_some() && purity.value != figure.value);
    match said.and_then(Figure::place) {
        Some(first) => {
            let place = row.place(measured.span);
            binder.problem(place, ProblemKind::SaidTwice { what: "strength", first, range: None });
        }
        None => material.purity = Some(figure),
    }
    true
}

/// A strength as a share of the weight.
fn share_of_active(row: &Row<'_>, measured: &Measured) -> Option<Figure> {
    let value = match measured.quantity.dimension {
        Dimension::PerCent | Dimension::MassFraction => measured.quantity.value,
        // Grams in a litre of a solution about as dense as water.
        Dimension::MassConcentration => measured.quantity.value * 0.001,
        _ => return None,
    };
    let unit = Dimension::MassFraction.usual_unit(Basis::Absolute);
    Some(Figure::written(value, Dimension::MassFraction, unit, row.place(measured.span)))
}

/// `price 24 EUR per 500 g`.
pub(crate) fn price(binder: &mut Binder<'_>, row: &Row<'_>) -> Option<Price> {
    let phrases: Vec<Phrase> = binder.phrases(row);
    let measured = phrases.iter().find_map(|phrase| match &phrase.kind {
        PhraseKind::Measured(measured, _) => Some(measured),
        _ => None,
    });
    let Some(measured) = measured else {
        let unread = phrases.iter().find_map(|phrase| match &phrase.kind {
            PhraseKind::Bare(_, span, Some(name)) => Some((*span, name.span)),
            _ => None,
        });
        match unread {
            Some((_, name)) => {
                let written = row.text(name);
                binder.problem(row.place(name), ProblemKind::UnknownUnit { written: written.into(), nearest: None });
            }
            None => binder.missing(row, "the price", "price 24 EUR per 500 g"),
        }
        return None;
    };
    let by_volume = match measured.quantity.dimension {
        Dimension::MoneyPerMass => false,
        Dimension::MoneyPerVolume => true,
        _ => {
            binder.wrong_dimension(
                row,
                measured,
                &[Dimension::MoneyPerMass, Dimension::MoneyPerVolume],
                "the price of a material",
            );
            return None;
        }
    };
    let currency = tenter_quantity::lookup_currency(currency_code(row.text(measured.span)))?.symbol;
    Some(Price { currency: currency.into(), rate: binder.figure(row, measured), by_volume })
}

/// The word of a price that is its currency.
pub(crate) fn currency_code(written: &str) -> &str {
    written
        .split(|character: char| !character.is_alphabetic())
        .find(|word| tenter_quantity::is_currency(word))
        .unwrap_or("")
}
