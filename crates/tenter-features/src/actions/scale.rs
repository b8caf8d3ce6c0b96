//! A recipe for another number of pieces: what is written in all changes, what is relative follows by itself.

use tenter_quantity::{Basis, Dimension, Figure, Interval, Place, show_in, show_number};
use tenter_syntax::BlockKind;

use crate::actions::{Action, ActionKind, sheets_at};
use crate::analysis::{FileAnalysis, SheetView};
use crate::hover::ingredients;
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

/// The edits that make the recipe at an offset one for so many pieces in all; none where its pieces are not known.
pub fn scale(analysis: &FileAnalysis, offset: usize, pieces: f64) -> Option<Vec<Edit>> {
    let view = sheets_at(analysis, &(offset..offset))?;
    let recipe = view.recipe()?;
    let now = recipe.totals.pieces.as_ref()?.value.best;
    if !(now > 0.0 && pieces.is_finite() && pieces > 0.0) {
        return None;
    }
    let factor = pieces / now;
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
            let count = goods.pieces.value * factor;
            replace(number_of(view, place), show_number(count));
        }
        if goods.lots.is_none()
            && let Some(figure) = written_in_all(goods.dry_mass.as_ref(), goods.piece_mass.as_ref())
            && let Some(place) = figure.place()
        {
            replace(place, show_in(figure.value * factor, figure.unit));
        }
    }
    for ingredient in ingredients(recipe).filter(|ingredient| !ingredient.fixed) {
        let Some(amount) = &ingredient.amount else { continue };
        let absolute = amount.written.basis == Basis::Absolute
            && matches!(amount.written.dimension, Dimension::Mass | Dimension::Volume);
        if absolute {
            replace(amount.place, show_in(amount.written.value * factor, amount.unit));
        }
    }
    for figure in recipe.mixes.iter().filter_map(|mix| mix.made_up_to.as_ref()) {
        if let Some(place) = figure.place() {
            replace(place, show_in(figure.value * factor, figure.unit));
        }
    }
    edits.sort();
    edits.dedup();
    Some(edits)
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
