//! The totals, beside the lines: at the end of a line, one a line, short; none on a line that could not be read.

mod told;

use std::collections::{BTreeMap, BTreeSet};

use tenter_quantity::{Dimension, Figure, Place};
use tenter_resolve::{ProblemKind, Recipe};

use crate::analysis::{FileAnalysis, SheetView};
use crate::hints::told::{amounts, changed, mixes, states, steps, whole};
use crate::state::{frame_at, goods_lines};
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
    let seen = analysis.sheets().filter(|view| overlaps(analysis, *view, within));
    for view in seen.flat_map(SheetView::each) {
        let Some(recipe) = view.recipe() else { continue };
        // A variant is told of on its own lines; all others are those of the recipe as written.
        let own = recipe.variant.as_ref().map(|name| name.place.block);
        let broken = broken_lines(analysis, view, recipe);
        let mut add = |place: Place, kind: HintKind, label: String, figures: Vec<(String, Figure)>| {
            let elsewhere = own.is_some_and(|block| block != place.block);
            if elsewhere || !kinds(kind) || label.is_empty() || label.chars().count() > LONGEST {
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
        match (own, view.recipes().first()) {
            (Some(_), Some(written)) => changed(written, recipe, &mut add),
            _ => whole(recipe, &mut add),
        }
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

/// A share as a percentage.
pub(crate) fn percent(share: &Figure) -> String {
    if share.dimension == Dimension::None {
        format!("{}%", tenter_quantity::show_number(share.value * 100.0))
    } else {
        share.show()
    }
}
