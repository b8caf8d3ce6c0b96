//! Small recipes for the tests beside this folder.
#![allow(dead_code)]

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{Step, Substance};
use tenter_resolve::{Library, NoLibrary, ProblemKind, Recipe, Scale, Sheet, resolve, sheets};
use tenter_syntax::Document;

/// Six tees of 150 g, 900 g in all; dyes and mixes with awkward names.
pub const SHELF: &str = "\
recipe Test

goods tees
  pieces   6
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

dye night
  class    reactive dichlorotriazine

dye black
  class    reactive dichlorotriazine

dye lagoon
  class    reactive dichlorotriazine

layout rings
  zone 45% rim
  zone 35% middle
  zone 20% heart

mix night at sea
  2 L      water at 40 °C
  10 g     night

mix dye bath
  10 L     water at 40 °C

mix bath #2
  5 L      water at 40 °C

";

/// A text read: its first sheet and all recipes of it, the variants behind the recipe.
pub struct Read {
    pub sheet: Sheet,
    pub recipes: Vec<Recipe>,
}

impl Read {
    pub fn recipe(&self) -> &Recipe {
        &self.recipes[0]
    }

    /// Kinds of the troubles, with the text each is about.
    pub fn troubles(&self) -> Vec<(String, ProblemKind)> {
        let told = self.recipe().problems.iter();
        told.map(|problem| (self.sheet.text(problem.place).to_owned(), problem.kind.clone())).collect()
    }

    #[track_caller]
    pub fn quiet(self) -> Self {
        let told = self.troubles();
        assert!(told.is_empty(), "troubles: {told:#?}");
        self
    }

    /// The last step.
    #[track_caller]
    pub fn step(&self) -> &Step {
        self.recipe().steps().map(|(_, step)| step).last().expect("a step")
    }
}

pub fn read_with(text: &str, path: &str, library: &dyn Library, scale: Scale) -> Read {
    let document = Document::parse(text);
    let sheet = sheets(&document, path, library).into_iter().next().expect("a sheet");
    let recipes = resolve(&sheet, scale);
    assert!(!recipes.is_empty());
    Read { sheet, recipes }
}

pub fn read(text: &str) -> Read {
    read_with(text, "test.dye", &NoLibrary, Scale::AsWritten)
}

pub fn scaled(text: &str, pieces: f64) -> Read {
    read_with(text, "test.dye", &NoLibrary, Scale::Pieces(pieces))
}

/// The shelf and one step.
pub fn step(line: &str) -> Read {
    read(&format!("{SHELF}steps\n  {line}\n"))
}

/// The shelf and one more mix of these lines.
pub fn mix(lines: &str) -> Read {
    let body: String = lines.lines().map(|line| format!("  {}\n", line.trim())).collect();
    read(&format!("{SHELF}mix test\n{body}"))
}

/// A collection held in memory.
pub struct Shelf(pub BTreeMap<String, Arc<Document>>);

impl Shelf {
    pub fn of(files: &[(&str, &str)]) -> Self {
        Self(files.iter().map(|(path, text)| ((*path).to_owned(), Arc::new(Document::parse(text)))).collect())
    }
}

impl Library for Shelf {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        self.0.get(path).cloned()
    }
}

/// Name of what an amount is an amount of.
pub fn what(recipe: &Recipe, substance: Substance) -> String {
    match substance {
        Substance::Material(id) => recipe.material(id).name.to_string(),
        Substance::Mix(id) => recipe.mix(id).name.text.to_string(),
    }
}

/// Grams of a material in all.
#[track_caller]
pub fn grams(recipe: &Recipe, name: &str) -> Interval {
    let total = recipe.totals.materials.iter().find(|total| &*recipe.material(total.material).name == name);
    let total = total.unwrap_or_else(|| panic!("no total of {name}"));
    total.mass.as_ref().unwrap_or_else(|| panic!("no mass of {name}")).value * 1000.0
}

/// The last mix's ingredient: its name and its value in SI, mass before volume.
#[track_caller]
pub fn ingredient(recipe: &Recipe, index: usize) -> (String, Interval) {
    let mix = recipe.mixes.last().expect("a mix");
    let ingredient = mix.ingredients.get(index).unwrap_or_else(|| panic!("no line {index}"));
    let amount = ingredient.amount.as_ref().expect("an amount");
    let figure = if recipe_is_liquid(recipe, ingredient.what) { &amount.volume } else { &amount.mass };
    (what(recipe, ingredient.what), figure.as_ref().expect("a figure").value)
}

fn recipe_is_liquid(recipe: &Recipe, substance: Substance) -> bool {
    match substance {
        Substance::Material(id) => recipe.material(id).liquid,
        Substance::Mix(_) => true,
    }
}

/// Equal but for the last bits of binary.
#[track_caller]
pub fn exactly(found: Interval, expected: f64) {
    let slack = expected.abs() * 1e-12;
    for part in [found.low, found.best, found.high] {
        assert!((part - expected).abs() <= slack, "{found:?} is not {expected}");
    }
}

/// Bounds equal but for the last bits of binary.
#[track_caller]
pub fn between(found: Interval, low: f64, high: f64) {
    let slack = high.abs().max(low.abs()) * 1e-12;
    assert!((found.low - low).abs() <= slack && (found.high - high).abs() <= slack, "{found:?}: {low} to {high}");
}

/// The value of a figure that must be there.
#[track_caller]
pub fn value(figure: &Option<Figure>) -> Interval {
    figure.as_ref().expect("a figure").value
}
