//! The same amount in all, for each piece, on the weight of the goods, or for each litre.

use tenter_quantity::{Basis, Dimension, Figure, Interval, show_in, show_number, unit_by_symbol};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Amount, Goods, GoodsId, Ingredient};

use crate::actions::{Action, here, rewrite, sheets_at};
use crate::analysis::FileAnalysis;
use crate::hover::of_step;
use crate::text::{Edit, Range};

/// Offers the other bases for an amount whose numbers are exact.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some(view) = sheets_at(analysis, range) else { return };
    let Some(recipe) = view.recipe() else { return };
    let mut offer = |ingredient: &Ingredient, goods: Option<&Goods>, litres: Option<&Figure>| {
        let Some(amount) = &ingredient.amount else { return };
        let Some(at) = here(analysis, view, amount.place, range) else { return };
        for text in ways(amount, goods, litres) {
            let edit = Edit::new(&analysis.file.path, at.clone(), text.as_str());
            found.push(rewrite(format!("write `{text}`"), vec![edit]));
        }
    };
    for mix in &recipe.mixes {
        let litres = mix.made_up_to.as_ref().or(mix.liquid_in.as_ref());
        for ingredient in &mix.ingredients {
            offer(ingredient, only(recipe), litres);
        }
    }
    for (_, step) in recipe.steps() {
        let goods = match step.goods.as_slice() {
            [GoodsId(index)] => recipe.goods.get(*index),
            _ => only(recipe),
        };
        for ingredient in of_step(step) {
            offer(ingredient, goods, None);
        }
    }
}

fn only(recipe: &Recipe) -> Option<&Goods> {
    match recipe.goods.as_slice() {
        [goods] => Some(goods),
        _ => None,
    }
}

/// The other ways to say an amount.
fn ways(amount: &Amount, goods: Option<&Goods>, litres: Option<&Figure>) -> Vec<String> {
    let mut ways = Vec::new();
    if amount.by_volume_of_solid {
        return ways;
    }
    let written = amount.written;
    let per_litre = written.dimension == Dimension::MassConcentration;
    let by_volume = matches!(written.dimension, Dimension::Volume | Dimension::VolumeFraction);
    let total = if by_volume { &amount.volume } else { &amount.mass };
    let Some(total) = total.as_ref().filter(|total| total.value.is_exact() && total.value.best > 0.0) else {
        return ways;
    };
    let symbol = if by_volume { "mL" } else { "g" };
    let Some(unit) = unit_by_symbol(symbol) else { return ways };
    let absolute = written.basis == Basis::Absolute && !per_litre && written.dimension == total.dimension;
    if !absolute {
        ways.push(total.show());
    }
    let pieces = goods.map(|goods| goods.pieces.value).filter(|pieces| pieces.is_exact() && pieces.best > 1.0);
    if let Some(pieces) = pieces.filter(|_| written.basis != Basis::PerPiece) {
        ways.push(format!("{}/piece", show_in(Interval::exact(total.value.best / pieces.best), unit)));
    }
    let dry =
        goods.and_then(|goods| goods.dry_mass.as_ref()).filter(|dry| dry.value.is_exact() && dry.value.best > 0.0);
    if let Some(dry) = dry.filter(|_| !by_volume && written.basis != Basis::PerGoods) {
        ways.push(format!("{}% owg", show_number(Interval::exact(100.0 * total.value.best / dry.value.best))));
    }
    let litres = litres.filter(|litres| litres.value.is_exact() && litres.value.best > 0.0);
    if let Some(litres) = litres.filter(|_| !per_litre && !by_volume) {
        // kg/m³ are g/L.
        ways.push(format!("{} g/L", show_number(Interval::exact(total.value.best / litres.value.best))));
    }
    ways
}
