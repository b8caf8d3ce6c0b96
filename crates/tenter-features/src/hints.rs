//! The totals, beside the lines: at the end of a line, one a line, short; none on a line that could not be read.

use std::collections::{BTreeMap, BTreeSet};

use tenter_quantity::{Basis, Dimension, Figure, Place};
use tenter_resolve::recipe::{Ingredient, Substance};
use tenter_resolve::{ProblemKind, Recipe};

use crate::analysis::{FileAnalysis, SheetView};
use crate::state::{frame_at, goods_lines, mix_ph, short};
use crate::text::Range;

/// What a hint tells; each can be switched by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HintKind {
    /// An amount resolved to grams or millilitres.
    Amount,
    /// Volume of a mix and the share of it that is used.
    Mix,
    /// How wet the goods are after a step, and what they hold.
    State,
    /// What a step uses in all.
    Step,
    /// What a recipe comes to.
    Recipe,
}

/// A few words at the end of a line.
#[derive(Clone, Debug)]
pub struct Hint {
    /// Where: behind the last character of the line.
    pub offset: usize,
    /// The words, at most [`LONGEST`] characters.
    pub label: String,
    /// What it tells.
    pub kind: HintKind,
    /// The sheet its figures belong to.
    sheet: usize,
    figures: Vec<(String, Figure)>,
}

/// No hint is longer, in characters.
pub const LONGEST: usize = 25;

/// The hints of a stretch of a file, in order.
pub fn hints(analysis: &FileAnalysis, within: &Range, kinds: &dyn Fn(HintKind) -> bool) -> Vec<Hint> {
    let mut by_line: BTreeMap<u32, Hint> = BTreeMap::new();
    for view in analysis.sheets() {
        let Some(recipe) = view.recipe() else { continue };
        if !overlaps(analysis, view, within) {
            continue;
        }
        let broken = broken_lines(analysis, view, recipe);
        let mut add = |place: Place, kind: HintKind, label: String, figures: Vec<(String, Figure)>| {
            if !kinds(kind) || label.is_empty() || label.chars().count() > LONGEST {
                return;
            }
            let Some(range) = analysis.locate_here(view.sheet, place) else { return };
            let line = analysis.file.lines.line_of(range.end);
            let offset = analysis.file.line_range(range.end).end;
            if broken.contains(&line) || offset < within.start || offset > within.end {
                return;
            }
            let hint = Hint { offset, label, kind, sheet: view.index, figures };
            // A step with several amounts tells the sum, not the first of them.
            match by_line.get(&line) {
                Some(have) if have.kind >= kind => {}
                _ => {
                    by_line.insert(line, hint);
                }
            }
        };
        amounts(recipe, &mut add);
        mixes(view, recipe, &mut add);
        steps(recipe, &mut add);
        states(view, recipe, &mut add);
        whole(recipe, &mut add);
    }
    by_line.into_values().collect()
}

/// Where a hint's numbers come from, a line each.
pub fn explain(analysis: &FileAnalysis, hint: &Hint) -> String {
    let Some(view) = analysis.sheet(hint.sheet) else { return String::new() };
    if hint.kind == HintKind::State {
        let told = analysis.home_at(hint.offset).and_then(|(view, block, at)| {
            let (step, frame) = frame_at(view, block, at)?;
            Some(goods_lines(view.recipe()?, view.rehearsal()?, frame, step).join("\n"))
        });
        return told.unwrap_or_default();
    }
    let lines: Vec<String> = hint
        .figures
        .iter()
        .map(|(name, figure)| {
            let told = figure.derivation(&|place| analysis.written(view.sheet, place));
            if name.is_empty() { told } else { format!("{name}: {told}") }
        })
        .collect();
    lines.join("\n\n")
}

type Add<'a> = dyn FnMut(Place, HintKind, String, Vec<(String, Figure)>) + 'a;

fn overlaps(analysis: &FileAnalysis, view: SheetView<'_>, within: &Range) -> bool {
    view.sheet.blocks.iter().filter(|entry| entry.file.is_none()).any(|entry| {
        let start = analysis.file.block(entry.position).map_or(0, |placed| placed.start);
        start <= within.end && within.start <= start + entry.block.text.len()
    })
}

fn broken_lines(analysis: &FileAnalysis, view: SheetView<'_>, recipe: &Recipe) -> BTreeSet<u32> {
    let harmless = |kind: &ProblemKind| {
        matches!(
            kind,
            ProblemKind::AwkwardName { .. } | ProblemKind::AmbiguousMeasure { .. } | ProblemKind::Shares { .. }
        )
    };
    recipe
        .problems
        .iter()
        .filter(|problem| !harmless(&problem.kind))
        .filter_map(|problem| analysis.locate_here(view.sheet, problem.place))
        .map(|range| analysis.file.lines.line_of(range.end))
        .collect()
}

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

fn amounts(recipe: &Recipe, add: &mut Add<'_>) {
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

fn mixes(view: SheetView<'_>, recipe: &Recipe, add: &mut Add<'_>) {
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

fn steps(recipe: &Recipe, add: &mut Add<'_>) {
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
fn states(view: SheetView<'_>, recipe: &Recipe, add: &mut Add<'_>) {
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

fn whole(recipe: &Recipe, add: &mut Add<'_>) {
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

/// A share as a percentage.
pub(crate) fn percent(share: &Figure) -> String {
    if share.dimension == Dimension::None {
        format!("{}%", tenter_quantity::show_number(share.value * 100.0))
    } else {
        share.show()
    }
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
