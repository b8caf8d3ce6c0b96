//! A recipe for another number of pieces: what is written in all changes, what is relative follows by itself.

use std::collections::BTreeSet;

use tenter_quantity::{Basis, Dimension, Figure, Interval, Place, show_number};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::LotsUse;
use tenter_syntax::BlockKind;

use crate::actions::said::{digits, said};
use crate::actions::{Action, ActionKind, sheets_at};
use crate::analysis::{FileAnalysis, SheetView};
use crate::hover::{ingredients, of_step};
use crate::text::{Edit, Range};

/// On the line that opens a recipe, offers it for half and for twice the pieces.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some((view, number, at)) = analysis.home_at(range.start) else { return };
    let Some(block) = view.sheet.blocks.get(number as usize).map(|entry| &entry.block) else { return };
    if block.kind != BlockKind::Recipe || at > block.name.end {
        return;
    }
    let Some(pieces) = view.recipe().and_then(|recipe| recipe.totals.pieces.as_ref()) else { return };
    for (factor, word) in [(2.0, "double"), (0.5, "half")] {
        let wanted = pieces.value.best * factor;
        if wanted < 1.0 || wanted != libm::floor(wanted) {
            continue;
        }
        let edits = scale(analysis, range.start, wanted).unwrap_or_default();
        let title = format!("scale to {} pieces ({word})", show_number(Interval::exact(wanted)));
        found.push(Action { title, kind: ActionKind::Rewrite, settles: None, preferred: false, edits, creates: None });
    }
}

/// The edits that make the recipe at an offset one for so many pieces in all; none where its pieces are not known, and
/// where they would be no whole number of lots.
pub fn scale(analysis: &FileAnalysis, offset: usize, pieces: f64) -> Option<Vec<Edit>> {
    let view = sheets_at(analysis, &(offset..offset))?;
    let recipe = view.recipe()?;
    let now = recipe.totals.pieces.as_ref()?.value.best;
    if !(now > 0.0 && pieces.is_finite() && pieces > 0.0) {
        return None;
    }
    let factor = pieces / now;
    // What one lot takes stays as it is: what fits a tray does not grow.
    let of_a_lot = of_a_lot(recipe)?;
    let mut edits = Vec::new();
    let mut replace = |place: Place, text: String| {
        // What a shared file or the part before the first recipe says belongs to other recipes too.
        let shared = view.sheet.blocks.get(place.block as usize).is_none_or(|entry| entry.shared);
        if !shared && let Some(at) = analysis.locate_here(view.sheet, place) {
            edits.push(Edit::new(&analysis.file.path, at, text));
        }
    };
    for goods in &recipe.goods {
        if let Some(place) = goods.pieces.place() {
            replace(number_of(view, place), digits(goods.pieces.value.best * factor));
        }
        if let Some(lots) = &goods.lots {
            let count = f64::from(lots.count) * factor;
            if count < 1.0 || count != libm::floor(count) {
                return None;
            }
            replace(lots_of(view, lots.place)?, digits(count));
        }
        if let Some(figure) = written_in_all(goods.dry_mass.as_ref(), goods.piece_mass.as_ref())
            && let Some(place) = figure.place()
        {
            replace(place, said(figure.value * factor, figure.unit));
        }
    }
    // The shelf holds what it holds.
    let on_the_shelf: BTreeSet<Place> =
        recipe.shelf.iter().filter_map(|line| Some(line.item.amount.as_ref()?.place)).collect();
    for ingredient in ingredients(recipe).filter(|ingredient| !ingredient.fixed) {
        let Some(amount) = &ingredient.amount else { continue };
        if of_a_lot.contains(&amount.place) || on_the_shelf.contains(&amount.place) {
            continue;
        }
        let absolute = amount.written.basis == Basis::Absolute
            && matches!(amount.written.dimension, Dimension::Mass | Dimension::Volume);
        if absolute {
            replace(amount.place, said(amount.written.value * factor, amount.unit));
        }
    }
    for figure in recipe.mixes.iter().filter_map(|mix| mix.made_up_to.as_ref()) {
        if let Some(place) = figure.place() {
            replace(place, said(figure.value * factor, figure.unit));
        }
    }
    edits.sort();
    edits.dedup();
    Some(edits)
}

/// Where the amounts of steps stand that are done with one lot at a time; none where a step names a lot by its number,
/// for more lots would need more such steps.
fn of_a_lot(recipe: &Recipe) -> Option<BTreeSet<Place>> {
    let mut places = BTreeSet::new();
    if recipe.goods.iter().all(|goods| goods.lots.is_none()) {
        return Some(places);
    }
    for group in recipe.steps().filter_map(|(_, step)| Some((step.repeats_group?, step.lots))) {
        if group.1 != Some(LotsUse::Each) {
            return None;
        }
        let steps = recipe.steps().filter(|(own, _)| *own == group.0).flat_map(|(_, step)| of_step(step));
        places.extend(steps.filter_map(|ingredient| Some(ingredient.amount.as_ref()?.place)));
    }
    Some(places)
}

/// The number in front of `lots`.
fn lots_of(view: SheetView<'_>, place: Place) -> Option<Place> {
    let text = view.sheet.text(place);
    let end = text.get(..text.find("lot")?)?.trim_end().len();
    let start = text.get(..end)?.rfind(|c: char| !c.is_ascii_digit()).map_or(0, |at| at + 1);
    let at = |offset: usize| place.start + offset as u32;
    (start < end).then(|| Place { start: at(start), end: at(end), ..place })
}

/// `990 g in all`: a weight written of all pieces together.
fn written_in_all<'a>(all: Option<&'a Figure>, each: Option<&Figure>) -> Option<&'a Figure> {
    all.filter(|all| all.place().is_some() && each.is_none_or(|each| each.place().is_none()))
}

/// The number at the front of a place: `6 pieces` is changed in its number only.
fn number_of(view: SheetView<'_>, place: Place) -> Place {
    let text = view.sheet.text(place);
    let digits = text.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(text.len());
    if digits == 0 { place } else { Place { end: place.start + digits as u32, ..place } }
}
