//! Money.

use super::*;

pub(super) fn cost(recipe: &Recipe, totals: &mut Totals) {
    let mut sums: BTreeMap<Arc<str>, Vec<Figure>> = BTreeMap::new();
    let mut unpriced = Vec::new();
    for entry in &mut totals.materials {
        let material = recipe.material(entry.material);
        let Some(price) = &material.price else {
            unpriced.push(entry.material);
            continue;
        };
        let amount = if price.by_volume { entry.volume.as_ref() } else { entry.mass.as_ref() };
        let (Some(amount), Some(unit)) = (amount, tenter_quantity::lookup_currency(&price.currency)) else {
            continue;
        };
        let total = amount.times(&price.rate, unit);
        sums.entry(price.currency.clone()).or_default().push(total.clone());
        let per_piece = totals.pieces.as_ref().map(|pieces| total.over(pieces, unit));
        entry.cost = Some(Cost { currency: price.currency.clone(), total, per_piece });
    }
    for goods in &recipe.goods {
        if let Some(price) = &goods.price {
            let code: Arc<str> = price.unit.symbol.into();
            let total = price.times(&goods.pieces, price.unit);
            sums.entry(code).or_default().push(total);
        }
    }
    totals.cost = sums
        .into_iter()
        .filter_map(|(currency, terms)| {
            let unit = tenter_quantity::lookup_currency(&currency)?;
            let total = Figure::sum(terms, unit);
            let per_piece = totals.pieces.as_ref().map(|pieces| total.over(pieces, unit));
            Some(Cost { currency, total, per_piece })
        })
        .collect();
    if !totals.cost.is_empty() {
        totals.unpriced = unpriced;
    }
}
