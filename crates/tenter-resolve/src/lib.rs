//! From document to recipe: names bound across the file, everything reduced to SI intervals that say where they
//! come from, totals summed.
//!
//! ```text
//! Document ──sheets──▶ Sheet ──resolve──▶ Recipe
//! ```
//!
//! This stage knows no order of steps beyond what litres a bath holds, and no chemistry.

mod accept;
mod amounts;
mod binder;
mod dates;
mod goods;
mod header;
mod joined;
mod keys;
mod layout;
mod ledger;
mod lots;
mod materials;
mod mix;
mod names;
mod number;
mod phrase;
mod places;
mod probably;
pub mod problem;
mod reading;
pub mod recipe;
mod record;
pub mod sheet;
mod step;
mod steps;
mod summing;
mod tokens;
pub mod totals;
mod unknown;
pub mod usage;
mod variant;
mod vessel;
mod water;

use tenter_syntax::BlockKind;

pub use problem::{NameKind, Problem, ProblemKind};
pub use recipe::Recipe;
pub use sheet::{Sheet, SheetBlock, sheets};
pub use unknown::EDITIONS;
pub use usage::{Library, NoLibrary, inside_collection};

/// How a recipe is to be scaled.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub enum Scale {
    /// As written.
    #[default]
    AsWritten,
    /// To so many pieces in all.
    Pieces(f64),
}

/// Resolves a sheet: the recipe as written first, then each of its variants.
pub fn resolve(sheet: &Sheet, scale: Scale) -> Vec<Recipe> {
    let mut recipes = vec![one(sheet, sheet::bodies(sheet), scale, None)];
    for (index, entry) in sheet.blocks.iter().enumerate() {
        if entry.block.kind == BlockKind::Variant {
            let (bodies, problems) = variant::applied(sheet, index);
            let mut recipe = one(sheet, bodies, scale, Some(index));
            recipe.problems.extend(problems);
            recipe.problems.sort_by_key(|problem| problem.place);
            recipes.push(recipe);
        }
    }
    recipes
}

fn one(sheet: &Sheet, bodies: Vec<sheet::Body<'_>>, scale: Scale, variant: Option<usize>) -> Recipe {
    let Scale::Pieces(wanted) = scale else { return build(sheet, bodies, 1.0, None, variant) };
    let plain = build(sheet, bodies.clone(), 1.0, None, variant);
    let written = plain.totals.pieces.as_ref().map_or(0.0, |pieces| pieces.value.best);
    if !(written > 0.0 && wanted.is_finite() && wanted > 0.0) || wanted == written {
        return plain;
    }
    build(sheet, bodies, wanted / written, Some(&plain), variant)
}

/// Resolves one recipe; `written` is the same as written where it is scaled.
fn build(
    sheet: &Sheet,
    bodies: Vec<sheet::Body<'_>>,
    factor: f64,
    written: Option<&Recipe>,
    variant: Option<usize>,
) -> Recipe {
    let mut binder = binder::Binder::new(bodies, factor, written.map(lots::ByLot::of).unwrap_or_default());
    binder.problems.extend(sheet.problems.iter().cloned());
    unknown::blocks(&mut binder);
    header::bind_measures(&mut binder);
    header::bind(&mut binder);
    materials::bind(&mut binder);
    goods::bind(&mut binder);
    layout::bind(&mut binder);
    vessel::bind(&mut binder);
    mix::bind(&mut binder);
    let mut groups = steps::bind(&mut binder);
    binder.by_lot.go_on(&mut groups, &binder.goods);
    let logs = record::logs(&mut binder);
    let shelf = record::shelf(&mut binder);
    record::price_from_shelf(&mut binder, &shelf);
    let acceptances = accept::bind(&mut binder);
    let title = sheet
        .recipe_block()
        .and_then(|index| binder.bodies.iter().find(|body| body.index == index as u32))
        .map(|body| named(body));
    let variant = variant.and_then(|index| binder.bodies.iter().find(|body| body.index == index as u32)).map(named);
    unknown::missing_goods(&mut binder, title.is_some(), &groups);
    let mut recipe = Recipe {
        name: title,
        variant,
        header: binder.header,
        goods: binder.goods,
        materials: binder.materials,
        mixes: binder.mixes,
        layouts: binder.layouts,
        vessels: binder.vessels,
        groups,
        logs,
        shelf,
        acceptances,
        problems: binder.problems,
        totals: totals::Totals::default(),
    };
    summing::sum(&mut recipe);
    recipe.problems.sort_by_key(|problem| problem.place);
    recipe.problems.dedup();
    recipe
}

fn named(body: &sheet::Body<'_>) -> recipe::Named {
    let span = if body.block.name.is_empty() { body.block.keyword } else { body.block.name };
    recipe::Named { text: binder::tidy(names::unquoted(body.name())), place: body.place(span) }
}
