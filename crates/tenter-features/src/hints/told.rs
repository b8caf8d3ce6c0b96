//! What each kind of hint says, and on which line.

use tenter_quantity::{Basis, Figure};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Ingredient, Substance};

use crate::analysis::SheetView;
use crate::hints::{Add, HintKind, LONGEST, percent};
use crate::state::{mix_ph, short};

/// The amount in all, where it says more than what is written.
fn amount(recipe: &Recipe, ingredient: &Ingredient) -> Option<Figure> {
    let amount = ingredient.amount.as_ref()?;
    let liquid = match ingredient.what {
        Substance::Material(id) => {
            let material = recipe.materials.get(id.0)?;
            material.liquid || material.is_water()
        }
        Substance::Mix(id) => !recipe.mixes.get(id.0)?.is_dry(),
    };
    let (first, second) = if liquid { (&amount.volume, &amount.mass) } else { (&amount.mass, &amount.volume) };
    let figure = first.as_ref().or(second.as_ref())?;
    let absolute = amount.written.basis == Basis::Absolute;
    let same = absolute && amount.written.dimension == figure.dimension;
    (!same).then(|| figure.clone())
}

pub(super) fn amounts(recipe: &Recipe, add: &mut Add<'_>) {
    for ingredient in recipe.mixes.iter().flat_map(|mix| &mix.ingredients) {
        if let Some(figure) = amount(recipe, ingredient) {
            add(ingredient.place, HintKind::Amount, figure.show(), vec![("in all".to_owned(), figure)]);
        }
    }
    for goods in &recipe.goods {
        let several = goods.pieces.value.best > 1.0;
        if let (Some(mass), Some(piece), true) = (&goods.dry_mass, &goods.piece_mass, several)
            && let Some(place) = piece.place()
        {
            add(
                place,
                HintKind::Amount,
                format!("{} in all", mass.show()),
                vec![("dry weight".to_owned(), mass.clone())],
            );
        }
    }
}

pub(super) fn mixes(view: SheetView<'_>, recipe: &Recipe, add: &mut Add<'_>) {
    for total in &recipe.totals.mixes {
        let Some(mix) = recipe.mixes.get(total.mix.0) else { continue };
        let mut parts = Vec::new();
        let mut figures = Vec::new();
        if let Some(made) = total.volume.as_ref().or(total.mass.as_ref()) {
            parts.push(made.show());
            figures.push(("made".to_owned(), made.clone()));
        }
        if let Some((ph, _)) = view.rehearsal().and_then(|rehearsal| mix_ph(rehearsal, total.mix)) {
            parts.push(ph);
        }
        if let Some(used) = &total.used_share {
            parts.push(format!("{} used", percent(used)));
            figures.push(("used".to_owned(), used.clone()));
        }
        figures.extend(total.left.iter().map(|left| ("left over".to_owned(), left.clone())));
        add(mix.name.place, HintKind::Mix, fitted(parts), figures);
    }
}

pub(super) fn steps(recipe: &Recipe, add: &mut Add<'_>) {
    let written = recipe.steps().map(|(_, step)| step);
    for (total, step) in recipe.totals.steps.iter().zip(written) {
        if total.place != step.place || total.uses.is_empty() {
            continue;
        }
        let mut parts: Vec<String> = total.uses.iter().map(|used| used.amount.show()).collect();
        if let [only] = total.uses.as_slice() {
            parts.extend(only.owg.as_ref().map(Figure::show));
            let ingredients = step.applied.iter().chain(&step.with);
            let nothing_new = ingredients
                .filter(|ingredient| ingredient.amount.is_some())
                .all(|ingredient| amount(recipe, ingredient).is_none() && only.owg.is_none());
            if nothing_new && step.liquor.is_none() {
                continue;
            }
        }
        let figures = total
            .uses
            .iter()
            .flat_map(|used| {
                let owg = used.owg.iter().map(|owg| (format!("{} on weight of goods", used.name), owg.clone()));
                std::iter::once((used.name.to_string(), used.amount.clone())).chain(owg)
            })
            .collect();
        let separator = if total.uses.len() > 1 { " + " } else { " · " };
        add(step.place, HintKind::Step, joined(parts, separator), figures);
    }
}

/// Told where it changes: a step that leaves the goods as they were says nothing.
pub(super) fn states(view: SheetView<'_>, recipe: &Recipe, add: &mut Add<'_>) {
    let Some(rehearsal) = view.rehearsal() else { return };
    let mut before: Option<String> = None;
    for (_, step) in recipe.steps() {
        let Some(frame) = rehearsal.frame_at(step.place) else { continue };
        let Some(told) = short(rehearsal, frame, step) else { continue };
        if before.as_ref() != Some(&told) && wets(step.verb.map_or("", |verb| verb.name)) {
            add(step.place, HintKind::State, told.clone(), Vec::new());
        }
        before = Some(told);
    }
}

/// Whether a step is about how much liquor the goods hold. What little dries off meanwhile is no news.
fn wets(verb: &str) -> bool {
    matches!(
        verb,
        "soak"
            | "wet out"
            | "dip"
            | "immerse"
            | "spin"
            | "squeeze"
            | "wring"
            | "hang"
            | "drain"
            | "lift"
            | "rinse"
            | "dry"
    )
}

pub(super) fn whole(recipe: &Recipe, add: &mut Add<'_>) {
    let Some(name) = &recipe.name else { return };
    let totals = &recipe.totals;
    let mut parts = Vec::new();
    let mut figures = Vec::new();
    if let Some(pieces) = &totals.pieces {
        let word = if pieces.value.best == 1.0 { "piece" } else { "pieces" };
        let shown = pieces.show();
        parts.push(if shown.contains("piece") { shown } else { format!("{shown} {word}") });
        figures.push(("pieces".to_owned(), pieces.clone()));
    }
    if let [cost] = totals.cost.as_slice()
        && let Some(each) = &cost.per_piece
    {
        let from = if totals.unpriced.is_empty() { "" } else { "from " };
        parts.push(format!("{from}{} each", each.show()));
        figures.push(("cost of a piece".to_owned(), each.clone()));
    } else if let Some(mass) = &totals.dry_mass {
        parts.push(mass.show());
        figures.push(("dry weight".to_owned(), mass.clone()));
    }
    figures.extend(totals.water.iter().map(|water| ("water".to_owned(), water.clone())));
    add(name.place, HintKind::Recipe, fitted(parts), figures);
}

/// What a variant needs another amount of.
pub(super) fn changed(written: &Recipe, variant: &Recipe, add: &mut Add<'_>) {
    let Some(name) = &variant.variant else { return };
    let shown = |recipe: &Recipe| -> Vec<(String, Figure)> {
        let totals = recipe.totals.materials.iter();
        let amounts = totals.filter_map(|total| {
            let name = recipe.materials.get(total.material.0)?.name.to_string();
            Some((name, total.mass.as_ref().or(total.volume.as_ref())?.clone()))
        });
        amounts.collect()
    };
    let before = shown(written);
    let same = |name: &str, amount: &Figure| before.iter().any(|(had, was)| had == name && was.show() == amount.show());
    let figures: Vec<(String, Figure)> =
        shown(variant).into_iter().filter(|(name, amount)| !same(name, amount)).collect();
    let parts = figures.iter().map(|(name, amount)| format!("{name} {}", amount.show())).collect();
    add(name.place, HintKind::Recipe, fitted(parts), figures);
}

fn fitted(parts: Vec<String>) -> String {
    joined(parts, " · ")
}

/// As many parts as fit.
fn joined(parts: Vec<String>, separator: &str) -> String {
    let mut label = String::new();
    for part in parts {
        let longer = if label.is_empty() { part } else { format!("{label}{separator}{part}") };
        if longer.chars().count() > LONGEST {
            if separator == " + " && !label.is_empty() && label.chars().count() + 4 <= LONGEST {
                label.push_str(" + …");
            }
            break;
        }
        label = longer;
    }
    label
}
