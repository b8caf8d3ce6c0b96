//! Totals of a recipe's text, in the units of the bench.
#![allow(dead_code)]

use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{Material, Mix};
use tenter_resolve::totals::{MaterialTotal, MixTotal};
use tenter_resolve::{NoLibrary, Recipe, Scale, resolve, sheets};
use tenter_syntax::Document;

/// Reads and resolves a text of one recipe, scaled as asked; it must give no trouble.
pub fn scaled(text: &str, scale: Scale) -> Recipe {
    let document = Document::parse(text);
    let sheet = sheets(&document, "example.dye", &NoLibrary).into_iter().next().expect("a sheet");
    let recipe = resolve(&sheet, scale).into_iter().next().expect("a recipe");
    let told: Vec<String> =
        recipe.problems.iter().map(|problem| format!("{}: {:?}", sheet.text(problem.place), problem.kind)).collect();
    assert!(told.is_empty(), "troubles: {told:#?}");
    recipe
}

/// As written.
pub fn written(text: &str) -> Recipe {
    scaled(text, Scale::AsWritten)
}

pub fn material<'r>(recipe: &'r Recipe, name: &str) -> &'r Material {
    recipe.materials.iter().find(|material| &*material.name == name).unwrap_or_else(|| panic!("no material {name}"))
}

pub fn total<'r>(recipe: &'r Recipe, name: &str) -> &'r MaterialTotal {
    recipe
        .totals
        .materials
        .iter()
        .find(|total| &*recipe.material(total.material).name == name)
        .unwrap_or_else(|| panic!("no total of {name}"))
}

pub fn mix<'r>(recipe: &'r Recipe, name: &str) -> &'r Mix {
    recipe.mixes.iter().find(|mix| &*mix.name.text == name).unwrap_or_else(|| panic!("no mix {name}"))
}

pub fn mix_total<'r>(recipe: &'r Recipe, name: &str) -> &'r MixTotal {
    recipe
        .totals
        .mixes
        .iter()
        .find(|total| &*recipe.mix(total.mix).name.text == name)
        .unwrap_or_else(|| panic!("no total of mix {name}"))
}

/// Grams in all.
pub fn grams(recipe: &Recipe, name: &str) -> Interval {
    total(recipe, name).mass.as_ref().unwrap_or_else(|| panic!("no mass of {name}")).value * 1000.0
}

/// Per cent of the dry goods.
pub fn owg(recipe: &Recipe, name: &str) -> Interval {
    total(recipe, name).owg.as_ref().unwrap_or_else(|| panic!("no share of {name}")).value * 100.0
}

/// Litres of a figure in cubic metres.
pub fn litres(figure: Option<&Figure>) -> Interval {
    figure.expect("a volume").value * 1000.0
}

/// The published figure lies within the bounds, and the best estimate is it, give or take half of the last digit
/// printed. The bounds get a millionth of a millionth for binary.
#[track_caller]
pub fn agrees(found: Interval, published: f64, half_digit: f64) {
    let slack = published.abs() * 1e-12;
    assert!(found.low - slack <= published && published <= found.high + slack, "{published} lies outside {found:?}");
    assert!((found.best - published).abs() <= half_digit + slack, "best {} for {published}", found.best);
}

/// Exactly so, but for the last bits of binary.
#[track_caller]
pub fn exactly(found: Interval, published: f64) {
    agrees(found, published, 0.0);
    assert!(found.width() <= published.abs() * 1e-12, "{found:?} is not exact");
}
