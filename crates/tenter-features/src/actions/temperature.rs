//! °C to °F and back.

use tenter_quantity::{Dimension, show_in, unit_by_symbol};

use crate::actions::{Action, here, rewrite, sheets_at};
use crate::analysis::FileAnalysis;
use crate::hover::written_figures;
use crate::text::{Edit, Range};

/// Offers the other scale for a temperature.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some(view) = sheets_at(analysis, range) else { return };
    let Some(recipe) = view.recipe() else { return };
    for (place, figure) in written_figures(recipe) {
        if figure.dimension != Dimension::Temperature {
            continue;
        }
        let Some(at) = here(analysis, view, place, range) else { continue };
        let other = if figure.unit.symbol == "°F" { "°C" } else { "°F" };
        let Some(unit) = unit_by_symbol(other) else { continue };
        let text = show_in(figure.value, unit);
        let edit = Edit::new(&analysis.file.path, at, text.as_str());
        found.push(rewrite(format!("write `{text}`"), vec![edit]));
        return;
    }
}
