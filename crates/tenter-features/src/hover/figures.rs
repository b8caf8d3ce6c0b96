//! The figures a recipe draws from a place of its text, and where they come from.

use tenter_quantity::{Dimension, Figure, Place, Unit, show_in, unit_by_symbol};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Ingredient, LiquorKind, Step};
use tenter_syntax::{Line, Span};

use crate::analysis::{FileAnalysis, SheetView};
use crate::hints::percent;

/// What is known of the quantity at a place.
pub(super) fn at(analysis: &FileAnalysis, view: SheetView<'_>, block: u32, at: u32) -> Option<(Span, String)> {
    let recipe = view.recipe()?;
    let covers = |place: Place| place.block == block && place.start <= at && at <= place.end;
    let mut lines: Vec<String> = Vec::new();
    let written = |place: Place| analysis.written(view.sheet, place);
    let mut span = None;
    for ingredient in ingredients(recipe) {
        let Some(amount) = ingredient.amount.as_ref().filter(|amount| covers(amount.place)) else { continue };
        span = Some(amount.place);
        for (label, figure) in [("mass", &amount.mass), ("volume", &amount.volume)] {
            let Some(figure) = figure else { continue };
            let told = figure.derivation(&written);
            if figure.place().is_none() {
                lines.push(format!("{label} in all: {told}"));
            }
            lines.extend(conversions(figure));
        }
        if amount.by_volume_of_solid {
            lines.push("Measured by volume; a scale would be more certain.".to_owned());
        }
    }
    if span.is_none() {
        let (place, figure) = written_figures(recipe).into_iter().find(|(place, _)| covers(*place))?;
        span = Some(place);
        lines.push(figure.show());
        lines.extend(conversions(&figure));
    }
    let place = span?;
    lines.dedup();
    Some((Span::new(place.start, place.end), lines.join("  \n")))
}

/// What a step uses in all.
pub(super) fn used_by(analysis: &FileAnalysis, view: SheetView<'_>, block: u32, line: &Line) -> Option<String> {
    let recipe = view.recipe()?;
    let total =
        recipe.totals.steps.iter().find(|total| total.place.block == block && line.span.touches(total.place.start))?;
    let mut lines = Vec::new();
    for used in &total.uses {
        let told = used.amount.derivation(&|place| analysis.written(view.sheet, place));
        let owg = used.owg.as_ref().map(|owg| format!(", {}", percent(owg))).unwrap_or_default();
        lines.push(format!("{}: {told}{owg}", used.name));
    }
    (!lines.is_empty()).then(|| format!("Uses in all:  \n{}", lines.join("  \n")))
}

/// Every ingredient of a recipe: of mixes, of steps, of baths written in place.
pub(crate) fn ingredients(recipe: &Recipe) -> impl Iterator<Item = &Ingredient> {
    let mixed = recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
    let used = recipe.steps().flat_map(|(_, step)| of(step));
    mixed.chain(used).chain(recipe.shelf.iter().map(|line| &line.item))
}

/// Every ingredient of a step.
pub(crate) fn of(step: &Step) -> impl Iterator<Item = &Ingredient> {
    let bath = step.liquor.as_ref().and_then(|liquor| match &liquor.kind {
        LiquorKind::Bath(parts) => Some(parts.iter()),
        _ => None,
    });
    step.applied.iter().chain(&step.with).chain(bath.into_iter().flatten())
}

/// The figures written in the text other than amounts.
pub(crate) fn written_figures(recipe: &Recipe) -> Vec<(Place, Figure)> {
    let mut all: Vec<&Figure> = Vec::new();
    let header = &recipe.header;
    all.extend([&header.room, &header.hardness, &header.altitude].into_iter().flatten());
    for goods in &recipe.goods {
        all.push(&goods.pieces);
        all.extend([&goods.piece_mass, &goods.state.pickup, &goods.price].into_iter().flatten());
    }
    for material in &recipe.materials {
        all.extend([&material.density, &material.purity].into_iter().flatten());
        all.extend(material.price.iter().map(|price| &price.rate));
    }
    for mix in &recipe.mixes {
        all.extend([&mix.made_up_to, &mix.temperature, &mix.rest, &mix.keep].into_iter().flatten());
    }
    all.extend(recipe.layouts.iter().flat_map(|layout| &layout.zones).filter_map(|zone| zone.share.as_ref()));
    for vessel in &recipe.vessels {
        all.extend([&vessel.holds, &vessel.rated].into_iter().flatten());
    }
    for (_, step) in recipe.steps() {
        let held = [
            &step.duration,
            &step.interval,
            &step.delay,
            &step.temperature,
            &step.from_temperature,
            &step.to_temperature,
            &step.pickup,
        ];
        all.extend(held.into_iter().flatten());
        all.extend(of(step).filter_map(|ingredient| ingredient.temperature.as_ref()));
    }
    all.extend(ingredients(recipe).filter_map(|ingredient| ingredient.temperature.as_ref()));
    all.into_iter().filter_map(|figure| Some((figure.place()?, figure.clone()))).collect()
}

/// The same figure in other units a dyer may think in.
pub fn conversions(figure: &Figure) -> Option<String> {
    let symbols: &[&str] = match figure.dimension {
        Dimension::Temperature => &["°C", "°F"],
        Dimension::Mass => &["g", "oz"],
        Dimension::Volume => &["mL", "US fl oz", "L", "US gal"],
        _ => &[],
    };
    let size = figure.value.best;
    let fits = |unit: &&'static Unit| match unit.symbol {
        "g" | "oz" => size < 1.0,
        "L" | "US gal" => size >= 1e-3,
        "mL" | "US fl oz" => size < 1e-3,
        _ => true,
    };
    let own = figure.unit.symbol;
    let told: Vec<String> = symbols
        .iter()
        .filter_map(|symbol| unit_by_symbol(symbol))
        .filter(fits)
        .filter(|unit| unit.symbol != own)
        .map(|unit| show_in(figure.value, unit))
        .collect();
    (!told.is_empty()).then(|| format!("= {}", told.join(" = ")))
}
