//! The same amount in all, for each piece, on the weight of the goods, or for each litre.

use tenter_quantity::{Basis, Dimension, Figure, Interval, Unit, unit_by_symbol};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Amount, Goods, GoodsId, Ingredient};

use crate::actions::said::{digits, said};
use crate::actions::{Action, here, rewrite, sheets_at};
use crate::analysis::FileAnalysis;
use crate::hover::of_step;
use crate::text::{Edit, Range};

/// What an amount can be told on.
#[derive(Clone, Copy, Default)]
struct Ground<'a> {
    goods: Option<&'a Goods>,
    litres: Option<&'a Figure>,
    /// The share of the goods that goes through at a time: less than 1 where lots are done one after another.
    share: f64,
}

/// Offers the other bases for an amount whose numbers are exact.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some(view) = sheets_at(analysis, range) else { return };
    let Some(recipe) = view.recipe() else { return };
    let mut offer = |ingredient: &Ingredient, ground: Ground<'_>| {
        let Some(amount) = &ingredient.amount else { return };
        let Some(at) = here(analysis, view, amount.place, range) else { return };
        for text in ways(amount, ground) {
            let edit = Edit::new(&analysis.file.path, at.clone(), text.as_str());
            found.push(rewrite(format!("write `{text}`"), vec![edit]));
        }
    };
    for mix in &recipe.mixes {
        // A paste made up to a weight has no litres of its own.
        let litres = mix.made_up_to.as_ref().or(mix.liquid_in.as_ref());
        let litres = litres.filter(|litres| litres.dimension == Dimension::Volume);
        for ingredient in &mix.ingredients {
            offer(ingredient, Ground { goods: only(recipe), litres, share: 1.0 });
        }
    }
    let repeated: Vec<_> = recipe.steps().filter_map(|(_, step)| step.repeats_group).collect();
    for (group, step) in recipe.steps() {
        let goods = match step.goods.as_slice() {
            [GoodsId(index)] => recipe.goods.get(*index),
            _ => only(recipe),
        };
        let lots = goods.and_then(|goods| goods.lots.as_ref()).filter(|_| repeated.contains(&group));
        let share = lots.map_or(1.0, |lots| 1.0 / f64::from(lots.count.max(1)));
        for ingredient in of_step(step) {
            offer(ingredient, Ground { goods, litres: None, share });
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
fn ways(amount: &Amount, ground: Ground<'_>) -> Vec<String> {
    let mut ways = Vec::new();
    let written = amount.written;
    // Parts are told of each other: one of them by weight would leave the rest short of the whole.
    if amount.by_volume_of_solid || written.dimension == Dimension::Part {
        return ways;
    }
    let per_litre = written.dimension == Dimension::MassConcentration;
    let by_volume = matches!(written.dimension, Dimension::Volume | Dimension::VolumeFraction);
    let total = if by_volume { &amount.volume } else { &amount.mass };
    let Some(total) = total.as_ref().filter(|total| total.value.is_exact() && total.value.best > 0.0) else {
        return ways;
    };
    // What is written as an amount is for one lot already.
    let once = total.value.best * if written.basis == Basis::Absolute { 1.0 } else { ground.share };
    let absolute = written.basis == Basis::Absolute && !per_litre && written.dimension == total.dimension;
    if !absolute {
        ways.extend(handy(once, by_volume).map(|unit| said(Interval::exact(once), unit)));
    }
    let goods = ground.goods;
    let pieces = goods.map(|goods| goods.pieces.value * ground.share);
    let pieces = pieces.filter(|pieces| pieces.is_exact() && pieces.best > 1.0);
    if let Some(pieces) = pieces.filter(|_| written.basis != Basis::PerPiece) {
        let each = once / pieces.best;
        ways.extend(handy(each, by_volume).map(|unit| format!("{}/piece", said(Interval::exact(each), unit))));
    }
    let dry = goods.and_then(|goods| goods.dry_mass.as_ref()).map(|dry| dry.value * ground.share);
    let dry = dry.filter(|dry| dry.is_exact() && dry.best > 0.0);
    if let Some(dry) = dry.filter(|_| !by_volume && written.basis != Basis::PerGoods) {
        ways.push(format!("{}% owg", digits(100.0 * once / dry.best)));
    }
    let litres = ground.litres.filter(|litres| litres.value.is_exact() && litres.value.best > 0.0);
    if let Some(litres) = litres.filter(|_| !per_litre && !by_volume) {
        // kg/m³ are g/L.
        ways.push(format!("{} g/L", digits(once / litres.value.best)));
    }
    ways
}

/// The unit a dyer would weigh or measure so much in.
fn handy(si: f64, by_volume: bool) -> Option<&'static Unit> {
    let symbol = match (by_volume, si >= if by_volume { 1e-3 } else { 10.0 }) {
        (true, true) => "L",
        (true, false) => "mL",
        (false, true) => "kg",
        (false, false) => "g",
    };
    unit_by_symbol(symbol)
}
