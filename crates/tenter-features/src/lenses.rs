//! Lines above the text: what a recipe comes to, who uses a mix.

use tenter_rehearse::clock_line;

use crate::analysis::FileAnalysis;
use crate::names::SymbolKind;
use crate::navigation::references;
use crate::text::{Location, Range};
use crate::workspace::Snapshot;

/// Kinds of lens; each can be switched by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LensKind {
    /// What a recipe asks: time, work, water, money.
    Recipe,
    /// When on the clock a group of steps begins.
    Clock,
    /// Who uses a mix or a layout.
    Uses,
}

/// A lens.
#[derive(Clone, Debug, PartialEq)]
pub struct Lens {
    /// The name it stands over.
    pub range: Range,
    /// Its kind.
    pub kind: LensKind,
    /// The words; empty where they are worked out later.
    pub title: String,
    /// The places it leads to.
    pub places: Vec<Location>,
}

/// The lenses of a file; those that tell of uses are worked out one by one with [`resolve`].
pub fn lenses(analysis: &FileAnalysis, kinds: &dyn Fn(LensKind) -> bool) -> Vec<Lens> {
    let mut found = Vec::new();
    let file = &analysis.file;
    if kinds(LensKind::Recipe) {
        recipes(analysis, &mut found);
    }
    if kinds(LensKind::Clock) {
        clocks(analysis, &mut found);
    }
    if kinds(LensKind::Uses) {
        let mut symbols = crate::symbols::document(file);
        while let Some(symbol) = symbols.pop() {
            if matches!(symbol.kind, SymbolKind::Mix | SymbolKind::Layout) {
                let range = symbol.name_range.clone();
                found.push(Lens { range, kind: LensKind::Uses, title: String::new(), places: Vec::new() });
            }
            symbols.extend(symbol.children);
        }
    }
    found.sort_by_key(|lens| (lens.range.start, lens.kind));
    found
}

/// What a recipe asks of a dyer: time, work, water, money. Pieces and weight stand beside the line already.
fn recipes(analysis: &FileAnalysis, found: &mut Vec<Lens>) {
    for view in analysis.sheets() {
        let (Some(recipe), Some(rehearsal)) = (view.recipe(), view.rehearsal()) else { continue };
        let Some(range) = recipe.name.as_ref().and_then(|name| analysis.locate_here(view.sheet, name.place)) else {
            continue;
        };
        let mut parts = Vec::new();
        if !rehearsal.frames.is_empty() {
            parts.push(clock_line(&rehearsal.clock()));
        }
        parts.extend(recipe.totals.water.iter().map(|water| format!("{} water", water.show())));
        parts.extend(recipe.totals.cost.iter().map(|cost| cost.total.show()));
        if !parts.is_empty() {
            found.push(Lens { range, kind: LensKind::Recipe, title: parts.join(" · "), places: Vec::new() });
        }
    }
}

/// When each group of steps begins and ends, counted from the first step.
fn clocks(analysis: &FileAnalysis, found: &mut Vec<Lens>) {
    for view in analysis.sheets() {
        let (Some(recipe), Some(rehearsal)) = (view.recipe(), view.rehearsal()) else { continue };
        for group in &recipe.groups {
            let frames: Vec<_> = group.steps.iter().filter_map(|step| rehearsal.frames_at(step.place).next()).collect();
            let (Some(first), Some(last)) = (frames.first(), frames.last()) else { continue };
            let Some(range) = analysis.locate_here(view.sheet, group.place) else { continue };
            let title = format!("{} to {}", clock(first.start.elapsed.best), clock(last.end.elapsed.best));
            found.push(Lens { range, kind: LensKind::Clock, title, places: Vec::new() });
        }
    }
}

/// Hours and minutes since the first step: `1:35`.
fn clock(seconds: f64) -> String {
    let minutes = libm::round(seconds / 60.0) as u64;
    format!("{}:{:02}", minutes / 60, minutes % 60)
}

/// The words and places of a lens that tells of uses.
pub fn resolve(snapshot: &Snapshot, path: &str, range: Range) -> Lens {
    let places = references(snapshot, path, range.start, false);
    let title = match places.len() {
        0 => "not used".to_owned(),
        1 => "used once".to_owned(),
        more => format!("used {more} times"),
    };
    Lens { range, kind: LensKind::Uses, title, places }
}
